import type { Fault, Written } from "../yaml/yaml.ts";
import { plainWord } from "./slips.ts";

/** What `config/glossary.txt` says, in capitals without accents. */
export interface Glossary {
  /** Words of legends; true for the common ones. */
  readonly words: ReadonlyMap<string, boolean>;
  readonly abbreviations: ReadonlyMap<string, readonly string[]>;
  /** Words that may have a single letter behind them. */
  readonly lettered: ReadonlySet<string>;
  /** Words that often stand behind a word. Under "*" those that stand behind any word. */
  readonly followers: ReadonlyMap<string, readonly string[]>;
  /** Confirmed words by project. */
  readonly projects: ReadonlyMap<string, ReadonlySet<string>>;
}

/** The glossary's text → what it says, or every line of it that means nothing. */
export function readGlossary(text: string, file: string): Written<Glossary> {
  const words = new Map<string, boolean>();
  const abbreviations = new Map<string, string[]>();
  const lettered = new Set<string>();
  const followers = new Map<string, string[]>();
  const projects = new Map<string, Set<string>>();
  const faults: Fault[] = [];
  let section = "";
  for (const [i, raw] of text.split(/\r?\n/).entries()) {
    const line = raw.replace(/#.*/, "").trim();
    const fault = (what: string): unknown => faults.push({ file, line: i + 1, column: 1, path: "", what });
    const heading = /^\[(.+)\]$/.exec(line)?.[1];
    if (line === "") continue;
    if (heading !== undefined) {
      section = heading.trim();
      if (!/^(common words|words|lettered|followers|abbreviations|project .+)$/.test(section))
        fault(`no section is named “${section}”`);
    } else if (section === "abbreviations") {
      const [short = "", long = ""] = line.split("=");
      const meanings = long.split(",").map(plainWord).filter(Boolean);
      if (short.trim() === "" || meanings.length === 0) fault("an abbreviation is written RM = ROOM");
      else abbreviations.set(plainWord(short), meanings);
    } else if (section === "followers") {
      const [heads = [], tails = []] = line.split("=").map(wordsIn);
      if (heads.length === 0 || tails.length === 0) fault("followers are written SHADE SHADES = UP DOWN");
      for (const head of heads) followers.set(head, [...(followers.get(head) ?? []), ...tails]);
    } else if (section === "lettered") {
      for (const word of wordsIn(line)) lettered.add(word);
    } else if (section === "words" || section === "common words") {
      for (const word of wordsIn(line))
        words.set(word, section === "common words" || (words.get(word) ?? false));
    } else if (section.startsWith("project ")) {
      const project = projectKey(section.slice("project ".length));
      const known = projects.get(project) ?? new Set();
      for (const word of wordsIn(line)) known.add(word);
      projects.set(project, known);
    } else fault("stands under no section");
  }
  return faults.length > 0
    ? { ok: false, faults }
    : { ok: true, value: { words, abbreviations, lettered, followers, projects } };
}

function wordsIn(line: string): string[] {
  return line.split(/\s+/).map(plainWord).filter(Boolean);
}

/** The key of a project's name, however the name is typed. */
export function projectKey(project: string): string {
  return plainWord(project).replace(/[^\p{L}\p{N}]/gu, "");
}

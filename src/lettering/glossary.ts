import type { Fault, Written } from "../yaml/yaml.ts";
import { plainWord } from "./slips.ts";

/** What a glossary says of words, in capitals without accents. */
export interface Glossary {
  /** Words of legends; true for the common ones. */
  readonly words: ReadonlyMap<string, boolean>;
  readonly abbreviations: ReadonlyMap<string, readonly string[]>;
  /** Words that may have a single letter behind them. */
  readonly lettered: ReadonlySet<string>;
  /** Words that often stand behind a word. Under "*" those that stand behind any word. */
  readonly followers: ReadonlyMap<string, readonly string[]>;
  /** Words, and what makes the name of a room or a thing behind them: JURY BOX. */
  readonly phrases: ReadonlyMap<string, readonly string[]>;
  /** Words that stand side by side on the buttons of a device: MORNING, NOON, EVENING. */
  readonly company: readonly (readonly string[])[];
  /** Right words that no wall bears, and what is meant by them: BORED for BOARD. */
  readonly never: ReadonlyMap<string, readonly string[]>;
  /** Right words that are typed for others: COUNCIL for COUNSEL. */
  readonly confused: ReadonlyMap<string, readonly string[]>;
  /** Right words that no wall bears. What is meant by them is whatever word of legends they are near. */
  readonly odd: ReadonlySet<string>;
  /** Words of languages that need not be named: right as they stand, and never offered for others. */
  readonly foreign: ReadonlySet<string>;
  /** What people are called. */
  readonly names: ReadonlySet<string>;
  /** Confirmed words by project. */
  readonly projects: ReadonlyMap<string, ReadonlySet<string>>;
}

/** The sections that are neither a table nor a set. */
const others = /^(common words|words|company|abbreviations|project .+)$/;

/** How a line of a table is written. */
const examples = {
  followers: "followers are written SHADE SHADES = UP DOWN",
  phrases: "phrases are written JURY = BOX ROOM",
  never: "a word that is never meant is written BORED = BOARD",
  confused: "a word typed for another is written COUNCIL = COUNSEL",
} as const;

/** The glossary's text → what it says, or every line of it that means nothing. */
export function readGlossary(text: string, file: string): Written<Glossary> {
  const words = new Map<string, boolean>();
  const abbreviations = new Map<string, string[]>();
  const sets = {
    lettered: new Set<string>(),
    names: new Set<string>(),
    foreign: new Set<string>(),
    odd: new Set<string>(),
  };
  const company: string[][] = [];
  const tables = {
    followers: new Map<string, string[]>(),
    phrases: new Map<string, string[]>(),
    never: new Map<string, string[]>(),
    confused: new Map<string, string[]>(),
  };
  const projects = new Map<string, Set<string>>();
  const faults: Fault[] = [];
  let section = "";
  for (const [i, raw] of text.split(/\r?\n/).entries()) {
    const line = raw.replace(/#.*/, "").trim();
    const fault = (what: string): unknown => faults.push({ file, line: i + 1, column: 1, path: "", what });
    const heading = /^\[(.+)\]$/.exec(line)?.[1];
    if (line === "") continue;
    const table = keyOf(tables, section);
    const set = keyOf(sets, section);
    if (heading !== undefined) {
      section = heading.trim();
      const isOne = keyOf(tables, section) ?? keyOf(sets, section) ?? others.exec(section);
      if (!isOne) fault(`no section is named “${section}”`);
    } else if (section === "abbreviations") {
      const [short = "", long = ""] = line.split("=");
      const meanings = long.split(",").map(plainWord).filter(Boolean);
      if (short.trim() === "" || meanings.length === 0) fault("an abbreviation is written RM = ROOM");
      else abbreviations.set(plainWord(short), meanings);
    } else if (table !== undefined) {
      const [heads = [], tails = []] = line.split("=").map(wordsIn);
      if (heads.length === 0 || tails.length === 0) fault(examples[table]);
      for (const head of heads) tables[table].set(head, [...(tables[table].get(head) ?? []), ...tails]);
    } else if (section === "company") company.push(wordsIn(line));
    else if (set !== undefined) {
      for (const word of wordsIn(line)) sets[set].add(word);
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
    : { ok: true, value: { words, abbreviations, company, projects, ...tables, ...sets } };
}

function keyOf<K extends string>(all: Readonly<Record<K, unknown>>, name: string): K | undefined {
  return (Object.keys(all) as K[]).find((key) => key === name);
}

function wordsIn(line: string): string[] {
  return line
    .split(/[\s,]+/)
    .map(plainWord)
    .filter(Boolean);
}

/** The key of a project's name, however the name is typed. */
export function projectKey(project: string): string {
  return plainWord(project).replace(/[^\p{L}\p{N}]/gu, "");
}

import { once } from "../../trade/once.ts";
import { answerWords } from "./answer-words.ts";
import { reasonWords } from "./reason-words.ts";

/** Kinds of words. A sentence that has a word of no kind is for a person. */
const listed = { ...answerWords, ...reasonWords };
const computed = ["Num", "Count", "Nth", "Mark", "Stop", "Smile", "Sender", "Other"] as const;
export type Kind = keyof typeof listed | (typeof computed)[number];

/** "as (it/they) (is/are)" → the four phrases. "[x]" may be left out. */
export function expanded(template: string): string[] {
  const [whole, inner = "", more = ""] = /\(([^()[\]]*)\)|\[([^()[\]]*)\]/u.exec(template) ?? [];
  if (whole === undefined) return [template.replace(/\s+/gu, " ").trim()];
  const parts = inner === "" ? [...more.split("/"), ""] : inner.split("/");
  return parts.flatMap((part) => expanded(template.replace(whole, () => part)));
}

/** The kind of each word and phrase, and how many words the longest has. */
const known = once(() => {
  const kinds = new Map<string, Kind>();
  for (const [kind, templates] of Object.entries(listed) as [Kind, string][])
    for (const phrase of templates.split(",").flatMap(expanded))
      if (!kinds.has(phrase)) kinds.set(phrase, kind);
  return { kinds, longest: Math.max(...[...kinds.keys()].map((phrase) => phrase.split(" ").length)) };
});

/** The kind of a word or of a phrase in small letters. */
export function kindOf(phrase: string): Kind | undefined {
  return known().kinds.get(phrase);
}

/** In words. */
export function longestPhrase(): number {
  return known().longest;
}

/** One letter a kind, so that a pattern of kinds is a pattern of letters. */
const letters = new Map<string, string>(
  [...Object.keys(listed), ...computed].map((kind, i) => [kind, String.fromCodePoint(0x4e00 + i)]),
);

export function letterOf(kind: Kind): string {
  const letter = letters.get(kind);
  if (letter === undefined) throw new Error(`no kind ${kind}`);
  return letter;
}

/** "(The|My)? Word Is" → a pattern of the letters of these kinds. Names in `parts` stand for patterns of their own. */
export function patternOf(source: string, parts: Readonly<Record<string, string>> = {}): string {
  return source
    .replace(/[A-Z]\w*/gu, (name) => parts[name] ?? letterOf(name as Kind))
    .replace(/\s+/gu, "")
    .replace(/\((?!\?)/gu, "(?:");
}

import type { Glossary } from "./glossary.ts";
import { plainWord } from "./slips.ts";

/** What is known of two words that stand one behind the other. */
export interface Phrases {
  /** Whether the two make the name of a room or a thing. */
  readonly isOne: (head: string, tail: string) => boolean;
  /** What makes a name behind this word, and before it. */
  readonly behind: (head: string) => readonly string[];
  readonly before: (tail: string) => readonly string[];
}

/** Names by one key for one and many, with and without an apostrophe. `readings` are what a short form stands for. */
export function makePhrases({ phrases }: Glossary, readings: (text: string) => readonly string[]): Phrases {
  const tails = new Map<string, string[]>();
  const heads = new Map<string, string[]>();
  const add = (to: Map<string, string[]>, key: string, word: string): unknown =>
    to.set(key, [...(to.get(key) ?? []), word]);
  for (const [head, all] of phrases)
    for (const tail of all) {
      add(tails, stemOf(head), tail);
      add(heads, stemOf(tail), head);
    }
  const from = (map: ReadonlyMap<string, readonly string[]>, text: string): string[] =>
    readings(text).flatMap((one) => map.get(stemOf(one)) ?? []);
  return {
    isOne: (head, tail) => {
      const ends = new Set(readings(tail).map(stemOf));
      return from(tails, head).some((word) => ends.has(stemOf(word)));
    },
    behind: (head) => from(tails, head),
    before: (tail) => from(heads, tail),
  };
}

/** A word without the sign of many or of whose it is. */
export function stemOf(text: string): string {
  const word = plainWord(text).replaceAll("'", "");
  return word.length > 3 && /[^S]S$/.test(word) ? word.slice(0, -1) : word;
}

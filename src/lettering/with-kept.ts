import type { Words } from "../catalogue/words.ts";
import type { KeptWord } from "../trade/kept-word.ts";
import { remember } from "../trade/remember.ts";
import { projectKey } from "./glossary.ts";
import { plainWord } from "./slips.ts";

/** So many buyers' words are remembered. */
const most = 50;

/** The same with words added, by those words. The same words give the same object, by which others remember things. */
const remembered = new WeakMap<object, Map<string, unknown>>();

/** Something that knows words, with the words added that a buyer has confirmed. */
export function withKept<K extends { readonly words: Words }>(knows: K, kept: readonly KeptWord[]): K {
  if (kept.length === 0) return knows;
  const keys = new Set(kept.map(keyOf));
  const made = remembered.get(knows) ?? new Map<string, unknown>();
  remembered.set(knows, made);
  return remember(made, [...keys].toSorted().join("\n"), most, () => adding(knows, keys)) as K;
}

function keyOf({ word, project }: KeptWord): string {
  return `${plainWord(word)} ${projectKey(project)}`;
}

function adding<K extends { readonly words: Words }>(knows: K, keys: ReadonlySet<string>): K {
  const { words } = knows;
  const isConfirmed: Words["isConfirmed"] = (word, project) =>
    words.isConfirmed(word, project) || keys.has(keyOf({ word, project }));
  return { ...knows, words: { ...words, isConfirmed } };
}

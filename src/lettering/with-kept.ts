import type { Words } from "../catalogue/words.ts";
import type { KeptWord } from "../trade/kept-word.ts";
import { projectKey } from "./glossary.ts";
import { plainWord } from "./slips.ts";

/** Something that knows words, with the words added that a buyer has confirmed. */
export function withKept<K extends { readonly words: Words }>(knows: K, kept: readonly KeptWord[]): K {
  if (kept.length === 0) return knows;
  const key = ({ word, project }: KeptWord): string => `${plainWord(word)} ${projectKey(project)}`;
  const keys = new Set(kept.map(key));
  const { words } = knows;
  const isConfirmed: Words["isConfirmed"] = (word, project) =>
    words.isConfirmed(word, project) || keys.has(key({ word, project }));
  return { ...knows, words: { ...words, isConfirmed } };
}

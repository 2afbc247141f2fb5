import { readFile } from "node:fs/promises";
import type { Hunspell } from "../lettering/dictionary.ts";
import type { Language } from "../lettering/languages.ts";

/** Dictionaries are packages. Only those of the languages that are named are read. */
const dictionaries = {
  "en-US": () => import("dictionary-en"),
  "en-GB": () => import("dictionary-en-gb"),
  "en-CA": () => import("dictionary-en-ca"),
  fr: () => import("dictionary-fr"),
  es: () => import("dictionary-es"),
} satisfies Record<Language, () => Promise<{ default: Record<"aff" | "dic", Uint8Array> }>>;

export async function dictionariesOf(
  languages: readonly Language[],
): Promise<Partial<Record<Language, Hunspell>>> {
  const read = languages.map(async (language) => {
    const { aff, dic } = (await dictionaries[language]()).default;
    return [language, { aff: new TextDecoder().decode(aff), dic: new TextDecoder().decode(dic) }] as const;
  });
  return Object.fromEntries(await Promise.all(read));
}

/** Names of people, one a line. Their package says where it lies, and has no module to import. */
export async function namesOfPeople(): Promise<string> {
  const list = new URL(
    "dict/people-names.txt",
    import.meta.resolve("@cspell/dict-people-names/cspell-ext.json"),
  );
  return readFile(list, "utf8");
}

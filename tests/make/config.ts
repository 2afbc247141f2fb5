import { globSync, readFileSync } from "node:fs";
import { type Catalogue, readCatalogue } from "../../src/catalogue/catalogue.ts";
import { knownForms } from "../../src/commands/forms.ts";
import type { Hunspell } from "../../src/lettering/dictionary.ts";
import { readGlossary } from "../../src/lettering/glossary.ts";
import { makeWords } from "../../src/lettering/words.ts";
import { type Edition, readEdition } from "../../src/reading/edition.ts";
import type { EditionFile } from "../../src/reading/editions.ts";
import type { KnownForms } from "../../src/reading/page/known-forms.ts";
import { faultLine, type Written } from "../../src/yaml/yaml.ts";

function must<T>(written: Written<T>): T {
  if (!written.ok) throw new Error(written.faults.map(faultLine).join("\n"));
  return written.value;
}

/** The words of legends that come with the project. */
export const glossary = must(
  readGlossary(readFileSync("config/glossary.txt", "utf8"), "config/glossary.txt"),
);

/** A dictionary that comes as a package. */
export function dictionary(name: string): Hunspell {
  const read = (part: string): string => readFileSync(`node_modules/${name}/index.${part}`, "utf8");
  return { aff: read("aff"), dic: read("dic") };
}

/** The catalogue that comes with the project. */
export const catalogue: Catalogue = {
  ...must(readCatalogue(readFileSync("config/catalogue.yaml", "utf8"), "config/catalogue.yaml")),
  words: makeWords(glossary, { "en-US": dictionary("dictionary-en") }),
};

const editionFiles: readonly EditionFile[] = globSync("config/editions/*.yaml")
  .toSorted()
  .map((file) => {
    const text = readFileSync(file, "utf8");
    return { file, text, edition: must(readEdition(text, file, catalogue)) };
  });

/** The editions that come with the project. */
export const editions: readonly Edition[] = editionFiles.map(({ edition }) => edition);

let known: Promise<KnownForms> | undefined;

/** The forms that pages are compared with: those that the project draws. */
export function forms(): Promise<KnownForms> {
  known ??= knownForms(editionFiles, editionFiles, catalogue).then((made) => made.forms);
  return known;
}

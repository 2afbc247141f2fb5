import { globSync, readFileSync } from "node:fs";
import { basename } from "node:path";
import { type Catalogue, readCatalogue } from "../../src/catalogue/catalogue.ts";
import { namesOfPeople } from "../../src/commands/dictionaries.ts";
import { knownForms } from "../../src/commands/forms.ts";
import { readSheetDescription, type SheetDescription } from "../../src/demo/describe.ts";
import { withBuildings } from "../../src/lettering/buildings/known.ts";
import type { Hunspell } from "../../src/lettering/dictionary.ts";
import { readGlossary } from "../../src/lettering/glossary.ts";
import { makeWords } from "../../src/lettering/words.ts";
import { type Edition, readEdition } from "../../src/reading/edition.ts";
import type { EditionFile } from "../../src/reading/editions.ts";
import type { KnownForms } from "../../src/reading/page/known-forms.ts";
import { faultLine, type Written } from "../../src/yaml/yaml.ts";

/** The value of what was written, or every fault in it. */
export function must<T>(written: Written<T>): T {
  if (!written.ok) throw new Error(written.faults.map(faultLine).join("\n"));
  return written.value;
}

/** The desk's own glossary of the demonstration, and with it the words of all kinds of buildings. */
export const ownGlossary = must(
  readGlossary(readFileSync("config/glossary.txt", "utf8"), "config/glossary.txt"),
);
export const glossary = withBuildings(ownGlossary, await namesOfPeople());

/** A dictionary that comes as a package. */
export function dictionary(name: string): Hunspell {
  const read = (part: string): string => readFileSync(`node_modules/${name}/index.${part}`, "utf8");
  return { aff: read("aff"), dic: read("dic") };
}

/** What a maker sells, the forms that its desk reads, and what their pages are compared with. */
export interface Shop {
  readonly catalogue: Catalogue;
  readonly editions: readonly Edition[];
  readonly forms: () => Promise<KnownForms>;
}

const words = makeWords(glossary, { "en-US": dictionary("dictionary-en") });

function shopIn(folder: string): Shop {
  const read = <T>(file: string, reader: (text: string, file: string) => Written<T>): T =>
    must(reader(readFileSync(file, "utf8"), file));
  const catalogue: Catalogue = { ...read(`${folder}/catalogue.yaml`, readCatalogue), words };
  const files: readonly EditionFile[] = globSync(`${folder}/editions/*.yaml`)
    .toSorted()
    .map((file) => {
      const text = readFileSync(file, "utf8");
      return { file, text, edition: must(readEdition(text, file, catalogue)) };
    });
  const editions = files.map(({ edition }) => edition);
  let known: Promise<KnownForms> | undefined;
  const forms = (): Promise<KnownForms> => {
    known ??= knownForms(files, files, catalogue).then((made) => made.forms);
    return known;
  };
  return { catalogue, editions, forms };
}

/** Bare facts of the trade, which the tests go by. */
export const trade = shopIn("fixtures/trade");
export const { catalogue, editions, forms } = trade;

/** What buyers type on its sheets. */
export const sheets: ReadonlyMap<string, SheetDescription> = new Map(
  globSync("fixtures/trade/sheets/*.yaml").map((file) => [
    basename(file, ".yaml"),
    must(readSheetDescription(readFileSync(file, "utf8"), file)),
  ]),
);

/** The maker of the demonstration, which sells other things. */
export const maker = shopIn("config");

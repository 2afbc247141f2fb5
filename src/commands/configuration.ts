import { readdir, readFile } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";
import { type Catalogue, readCatalogue, readMakes } from "../catalogue/catalogue.ts";
import { withBuildings } from "../lettering/buildings/known.ts";
import { readGlossary } from "../lettering/glossary.ts";
import { makeWords } from "../lettering/words.ts";
import type { Edition } from "../reading/edition.ts";
import { type EditionFile, type EditionText, readEditions } from "../reading/editions.ts";
import type { KnownForms } from "../reading/page/known-forms.ts";
import { readPaths, readSettings, type Settings } from "../settings/settings.ts";
import { faultLine, type Written } from "../yaml/yaml.ts";
import { CannotRun, reasonOf } from "./command.ts";
import { dictionariesOf, namesOfPeople } from "./dictionaries.ts";
import { knownForms } from "./forms.ts";

/** The option that every command with settings has. */
export const settingsOption = {
  settings: {
    type: "string",
    takes: "FILE",
    tells: "the settings (default config/burin.yaml of the checkout)",
  },
} as const;

const projectFolder = join(import.meta.dirname, "../..");

/** A file that comes with the project. */
export function projectFile(...parts: readonly string[]): string {
  return join(projectFolder, ...parts);
}

export interface Configuration {
  /** The settings file. */
  readonly file: string;
  readonly catalogueFile: string;
  readonly glossaryFile: string;
  readonly settings: Settings;
  readonly catalogue: Catalogue;
  readonly editions: readonly Edition[];
  /** The same editions, each with its file. */
  readonly editionFiles: readonly EditionFile[];
  /** What the pages of sheets are compared with. */
  readonly forms: KnownForms;
}

/** Reads settings, catalogue, glossary, editions and blank forms. Throws CannotRun with every fault in all of them. */
export async function configure(file = projectFile("config", "burin.yaml")): Promise<Configuration> {
  const trouble: string[] = [];
  const { text, value: settings } = await open(file, readSettings, trouble);
  if (text === undefined) throw new CannotRun(trouble.join("\n"));
  // Faulty settings may still say where the rest lies.
  const paths = settings ?? readPaths(text);
  const catalogueFile = paths.catalogue && beside(file, paths.catalogue);
  // The glossary belongs to the catalogue: if none is named, it stands beside it.
  const glossaryFile = paths.glossary
    ? beside(file, paths.glossary)
    : catalogueFile && beside(catalogueFile, "glossary.txt");
  const made = await open(catalogueFile, readCatalogue, trouble);
  const glossary = await open(glossaryFile, readGlossary, trouble);
  const texts = paths.editions ? await editionTexts(beside(file, paths.editions), trouble) : [];
  const { editions, faults } = readEditions(texts, made.value ?? readMakes(made.text ?? ""));
  const catalogue = made.value &&
    glossary.value && {
      ...made.value,
      words: makeWords(
        withBuildings(glossary.value, await namesOfPeople()),
        await dictionariesOf(settings?.languages ?? []),
      ),
    };
  const { forms, faults: missing } = await knownForms(texts, editions, catalogue);
  trouble.push(...[...faults, ...missing].map(faultLine));
  if (trouble.length > 0 || !settings || !catalogue || !catalogueFile || !glossaryFile)
    throw new CannotRun(trouble.join("\n"));
  return {
    file,
    catalogueFile,
    glossaryFile,
    settings,
    catalogue,
    editions: forms.editions,
    editionFiles: editions,
    forms,
  };
}

/** The text of a file and what it says, as far as there is any. Faults are added to `trouble`. */
async function open<T>(
  file: string | undefined,
  read: (text: string, file: string) => Written<T>,
  trouble: string[],
): Promise<{ readonly text?: string; readonly value?: T }> {
  const text = file && (await readText(file, trouble));
  if (!file || text === undefined) return {};
  const written = read(text, file);
  if (written.ok) return { text, value: written.value };
  trouble.push(...written.faults.map(faultLine));
  return { text };
}

async function editionTexts(folder: string, trouble: string[]): Promise<EditionText[]> {
  const names = await readdir(folder).catch((cause: unknown) => {
    trouble.push(`cannot read the folder of editions ${folder}: ${reasonOf(cause)}`);
  });
  const files = names?.filter((name) => name.endsWith(".yaml")).toSorted() ?? [];
  if (names !== undefined && files.length === 0) trouble.push(`no edition (.yaml) is in ${folder}`);
  const texts: EditionText[] = [];
  for (const name of files) {
    const file = join(folder, name);
    const text = await readText(file, trouble);
    if (text !== undefined) texts.push({ file, text });
  }
  return texts;
}

async function readText(file: string, trouble: string[]): Promise<string | undefined> {
  return readFile(file, "utf8").catch((cause: unknown) => {
    trouble.push(`cannot read ${file}: ${reasonOf(cause)}`);
    return undefined;
  });
}

/** A path of the settings → where it is. Such paths are relative to the settings file. */
export function beside(file: string, path: string): string {
  return resolve(dirname(file), path);
}

import { readdir, readFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { faultLine, type Written } from "../yaml/yaml.ts";
import type { Workshop } from "./build.ts";
import {
  type LetterDescription,
  type NoteDescription,
  readLetterDescriptions,
  readSheetDescription,
  type SheetDescription,
} from "./describe.ts";

/** The demonstration's letters in the order in which they came, and what they are built from. */
export interface Scenario extends Pick<Workshop, "sheets" | "raw"> {
  readonly letters: readonly LetterDescription[];
  /** What our own people do meanwhile, in the order in which they do it. */
  readonly notes: readonly NoteDescription[];
}

/** Reads the descriptions below a folder: letters/*.yaml, sheets/*.yaml, raw/. Throws with every fault in a file. */
export async function loadScenario(folder: string): Promise<Scenario> {
  const texts = async (name: string): Promise<{ file: string; text: string }[]> => {
    const names = (await readdir(join(folder, name))).filter((file) => file.endsWith(".yaml")).toSorted();
    return Promise.all(
      names.map(async (file) => ({ file, text: await readFile(join(folder, name, file), "utf8") })),
    );
  };
  const described = (await texts("letters")).map(({ file, text }) =>
    must(readLetterDescriptions(text, file)),
  );
  const sheets = (await texts("sheets")).map(({ file, text }): [string, SheetDescription] => [
    basename(file, ".yaml"),
    must(readSheetDescription(text, file)),
  ]);
  return {
    letters: described.flatMap(({ letters }) => letters).toSorted(byDate),
    notes: described.flatMap(({ notes }) => notes).toSorted(byDate),
    sheets: new Map(sheets),
    raw: async (file) => new Uint8Array(await readFile(join(folder, "raw", basename(file)))),
  };
}

function byDate(one: { readonly date: string }, other: { readonly date: string }): number {
  return Date.parse(one.date) - Date.parse(other.date);
}

function must<T>(written: Written<T>): T {
  if (!written.ok) throw new Error(written.faults.map(faultLine).join("\n"));
  return written.value;
}

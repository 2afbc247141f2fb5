import { readFile } from "node:fs/promises";
import { resolve } from "node:path";
import type { Catalogue } from "../catalogue/catalogue.ts";
import { blankSheet } from "../drawing/blank-sheet.ts";
import type { Edition } from "../reading/edition.ts";
import type { KnownForms } from "../reading/page/known-forms.ts";
import { isPdf } from "../reading/pdf/pdf.ts";
import { CannotRun, reasonOf } from "./command.ts";

/**
 * The forms that sheets are compared with: those that Burin draws, and those whose edition names a PDF. Throws
 * CannotRun for one that is not there. `folder` is that of the editions.
 */
export async function knownForms(
  editions: readonly Edition[],
  catalogue: Catalogue,
  folder: string,
): Promise<KnownForms> {
  const blanks = new Map<string, Uint8Array>();
  for (const edition of editions) {
    const { name, drawn, blank } = edition;
    if (drawn) blanks.set(name, await blankSheet(edition, catalogue));
    else if (blank !== undefined) blanks.set(name, await readBlank(resolve(folder, blank)));
  }
  return { editions, blanks };
}

async function readBlank(path: string): Promise<Uint8Array> {
  const bytes = await readFile(path).catch((cause: unknown) => {
    throw new CannotRun(`cannot read the blank form ${path}: ${reasonOf(cause)}`, { cause });
  });
  if (!isPdf(bytes)) throw new CannotRun(`the blank form ${path} is no PDF`);
  return bytes;
}

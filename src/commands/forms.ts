import { readFile } from "node:fs/promises";
import { dirname, resolve } from "node:path";
import { z } from "zod";
import type { Catalogue } from "../catalogue/catalogue.ts";
import { blankSheet } from "../drawing/blank-sheet.ts";
import type { EditionFile, EditionText } from "../reading/editions.ts";
import type { KnownForms } from "../reading/page/known-forms.ts";
import { isPdf } from "../reading/pdf/is-pdf.ts";
import { type Fault, faultIn, readInSpiteOfFaults } from "../yaml/yaml.ts";
import { reasonOf } from "./command.ts";

/** What an edition says of its blank form. It is read even if the rest of the file is faulty. */
const sourceSchema = z.object({
  drawn: z.boolean().catch(false),
  blank: z.string().optional().catch(undefined),
});

/**
 * The forms that sheets are compared with, and what is wrong with any. Burin draws some; for the others the edition
 * names a PDF. `written` are the texts of all editions, `editions` those without a fault.
 */
export async function knownForms(
  written: readonly EditionText[],
  editions: readonly EditionFile[],
  catalogue: Catalogue | undefined,
): Promise<{ readonly forms: KnownForms; readonly faults: readonly Fault[] }> {
  const blanks = new Map<string, Uint8Array>();
  const faults: Fault[] = [];
  for (const { text, file } of written) {
    const edition = editions.find((one) => one.file === file)?.edition;
    const { drawn = false, blank } = readInSpiteOfFaults(text, sourceSchema) ?? {};
    const fault = (key: "drawn" | "blank", what: string): unknown =>
      faults.push(faultIn(text, file, [key], what));
    if (drawn) {
      if (edition === undefined || catalogue === undefined) continue;
      await blankSheet(edition, catalogue).then(
        (bytes) => blanks.set(edition.name, bytes),
        (cause: unknown) => fault("drawn", `cannot be drawn: ${reasonOf(cause)}`),
      );
    } else if (blank !== undefined) {
      const path = resolve(dirname(file), blank);
      const bytes = await readFile(path).catch((cause: unknown) => {
        fault("blank", `cannot read ${path}: ${reasonOf(cause)}`);
      });
      if (bytes && !isPdf(bytes)) fault("blank", `${path} is no PDF`);
      else if (bytes && edition) blanks.set(edition.name, bytes);
    }
  }
  return { forms: { editions: editions.map(({ edition }) => edition), blanks }, faults };
}

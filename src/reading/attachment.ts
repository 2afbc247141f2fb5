import type { Catalogue } from "../catalogue/catalogue.ts";
import type { Attachment, FileKind, ReadFile } from "../trade/attachment.ts";
import type { Sheet } from "../trade/sheet.ts";
import { compareForms } from "./compare.ts";
import type { Edition } from "./edition.ts";
import { isFillable, type ReadField } from "./form.ts";
import { readPageText } from "./page-text.ts";
import { isCutOff, isPdf, wantsPassword, withPdf } from "./pdf.ts";
import { readFormByPdfjs } from "./pdfjs-form.ts";
import { carriesLabels, recognise } from "./recognise.ts";
import { readSheet } from "./sheet.ts";
import { readFormByWalking } from "./walked-form.ts";

/** What is needed to make sense of a form. */
export interface Known {
  readonly editions: readonly Edition[];
  readonly catalogue: Catalogue;
}

/** What became of an attachment, with its sheet if it is one. Never throws, whatever the bytes. */
export async function readAttachment(
  { bytes, ...file }: Attachment,
  { editions, catalogue }: Known,
): Promise<{ file: ReadFile; sheet?: Sheet }> {
  const is = (kind: FileKind): { file: ReadFile } => ({ file: { ...file, kind } });
  if (!isPdf(bytes)) return is("other");
  const form = await readForm(bytes);
  if ("trouble" in form) return is(form.trouble);
  if (!form.fields.some(isFillable))
    return is(carriesLabels(form.pageText, editions) ? "printed" : "no-form");
  const { edition, nearest } = recognise(form.fields, editions);
  if (edition === undefined)
    return { file: { ...file, kind: "unknown-form", ...(nearest === undefined ? {} : { nearest }) } };
  const newer = editions.find(({ name }) => name === edition.replacedBy)?.title;
  return { ...is("sheet"), sheet: readSheet(form.fields, edition, file, catalogue, newer) };
}

type Form =
  | { readonly fields: readonly ReadField[]; readonly pageText: string }
  | { readonly trouble: "locked" | "damaged" };

async function readForm(bytes: Uint8Array): Promise<Form> {
  try {
    const { one, pageText } = await withPdf(bytes, async (pdf) => {
      const fields = await readFormByPdfjs(pdf);
      return { one: fields, pageText: fields.some(isFillable) ? "" : await readPageText(pdf) };
    });
    // Only now, so that a missing end is not mistaken for the reason why a locked file does not open.
    if (isCutOff(bytes)) return { trouble: "damaged" };
    return { fields: compareForms(one, await readFormByWalking(bytes)), pageText };
  } catch (error) {
    // What a reader throws says nothing to the sender but that the file must be saved again.
    return { trouble: wantsPassword(error) ? "locked" : "damaged" };
  }
}

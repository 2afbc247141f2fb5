import type { FormField } from "../../src/reading/form.ts";
import { withPdf } from "../../src/reading/pdf/pdf.ts";
import { readAnnotations } from "../../src/reading/pdf/pdfjs-annotations.ts";
import { readFormByPdfjs } from "../../src/reading/pdf/pdfjs-form.ts";
import { readFormByWalking } from "../../src/reading/pdf/walked-form.ts";
import { openForWalking } from "../../src/reading/pdf/walked-pdf.ts";

/** The fields of a form as each of the two readers sees them. */
export async function readBoth(
  bytes: Uint8Array,
): Promise<{ readonly one: FormField[]; readonly other: FormField[] }> {
  return {
    one: await withPdf(bytes, async (pdf) => readFormByPdfjs(pdf, await readAnnotations(pdf))),
    other: readFormByWalking(await openForWalking(bytes)),
  };
}

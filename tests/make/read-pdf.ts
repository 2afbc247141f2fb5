import { type Judged, judge } from "../../src/reading/judge.ts";
import type { KnownForms } from "../../src/reading/page/known-forms.ts";
import { openPdf } from "../../src/reading/pdf/open-pdf.ts";
import { catalogue, editions, forms } from "./config.ts";

/** What a PDF is by the project's own editions, with its sheet if it is one. */
export async function readPdf(
  bytes: Uint8Array,
  file = { id: "1/1", file: "a.pdf" },
  known?: KnownForms,
): Promise<Judged> {
  return judge(await openPdf(bytes, undefined, known ?? (await forms())), file, { catalogue, editions });
}

import { type Judged, judge } from "../../src/reading/judge.ts";
import { openPdf } from "../../src/reading/pdf/open-pdf.ts";
import { type Shop, trade } from "./config.ts";

/** What a PDF is by the trade's editions or another shop's, with its sheet if it is one. */
export async function readPdf(
  bytes: Uint8Array,
  file = { id: "1/1", file: "a.pdf" },
  other: Partial<Shop> = {},
): Promise<Judged> {
  const shop = { ...trade, ...other };
  return judge(await openPdf(bytes, undefined, await shop.forms()), file, shop);
}

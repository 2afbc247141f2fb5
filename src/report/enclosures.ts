import type { Catalogue } from "../catalogue/catalogue.ts";
import { proofPdf } from "../drawing/proof.ts";
import type { Enclosure } from "./message.ts";
import { everyProblem, type Report } from "./report.ts";

/** How often an order has been changed, by its number as typed; none where that is not known. */
export type Revisions = ReadonlyMap<string, number>;

/** The proofs that go with an answer: a PDF for each order that has something to cut, faulty faces outlined. */
export async function proofsFor(
  report: Report,
  catalogue: Catalogue,
  revisions: Revisions = new Map(),
): Promise<Enclosure[]> {
  const problems = everyProblem(report);
  const proofs: Enclosure[] = [];
  for (const { order } of report.orders) {
    if (order.sheets.length === 0) continue;
    const revision = revisions.get(order.number);
    const bytes = await proofPdf(order, catalogue, {
      problems,
      ...(revision === undefined ? {} : { revision }),
    });
    proofs.push({ file: `proof ${fileWords(order.number)}.pdf`, type: "application/pdf", bytes });
  }
  return proofs;
}

/** An order number as part of a file name: what strangers type there becomes no path. */
function fileWords(number: string): string {
  return (
    number
      .replaceAll(/[^\p{L}\p{N}._-]+/gu, "-")
      .replace(/^[.-]+/, "")
      .slice(0, 60) || "without a number"
  );
}

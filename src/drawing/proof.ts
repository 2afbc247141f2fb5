import type { Catalogue } from "../catalogue/catalogue.ts";
import type { Order } from "../trade/order.ts";
import { leavesOf, type ProofDetails, proofPage } from "./proof/page.ts";
import { pdfOf } from "./proof/pdf.ts";
import { type Drawing, inOneLine } from "./proof/shapes.ts";
import { svgOf } from "./proof/svg.ts";
import { viewsOf } from "./proof/view.ts";

/**
 * One PDF of an order for the buyer and the engraver: each station on pages of its own, at true scale. The same
 * order, catalogue and details always make the same bytes.
 */
export async function proofPdf(
  order: Order,
  catalogue: Catalogue,
  details: ProofDetails = {},
): Promise<Uint8Array> {
  return pdfOf(proofPages(order, catalogue, details), inOneLine(`Proof of order ${order.number}`));
}

/** The same pages as SVG files, in the same order. */
export function proofSvgs(order: Order, catalogue: Catalogue, details: ProofDetails = {}): string[] {
  return proofPages(order, catalogue, details).map(svgOf);
}

function proofPages(order: Order, catalogue: Catalogue, details: ProofDetails): Drawing[] {
  const leaves = viewsOf(order, catalogue).flatMap((view) => leavesOf(view, catalogue, order.aside));
  return leaves.map((leaf, i) =>
    proofPage(leaf, order, catalogue, { ...details, page: i + 1, of: leaves.length }),
  );
}

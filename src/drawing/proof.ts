import type { Catalogue } from "../catalogue/catalogue.ts";
import type { Order } from "../trade/order.ts";
import { type ProofDetails, proofPage } from "./proof/page.ts";
import { pdfOf } from "./proof/pdf.ts";
import { type Drawing, inOneLine } from "./proof/shapes.ts";
import { svgOf } from "./proof/svg.ts";
import { viewsOf } from "./proof/view.ts";

/** The drawing of one station as an SVG file. */
export interface ProofFile {
  /** The station's mark; "" for a station that has none. */
  readonly mark: string;
  readonly svg: string;
}

/**
 * One PDF of an order for the buyer and the engraver: each station on a page of its own, at true scale. The same
 * order, catalogue and details always make the same bytes.
 */
export async function proofPdf(
  order: Order,
  catalogue: Catalogue,
  details: ProofDetails = {},
): Promise<Uint8Array> {
  return pdfOf(
    proofPages(order, catalogue, details).map(({ drawing }) => drawing),
    inOneLine(`Proof of order ${order.number}`),
  );
}

/** The same pages as SVG files, in the same order. */
export function proofSvgs(order: Order, catalogue: Catalogue, details: ProofDetails = {}): ProofFile[] {
  return proofPages(order, catalogue, details).map(({ mark, drawing }) => ({ mark, svg: svgOf(drawing) }));
}

function proofPages(
  order: Order,
  catalogue: Catalogue,
  details: ProofDetails,
): { mark: string; drawing: Drawing }[] {
  const views = viewsOf(order, catalogue);
  return views.map((view, i) => ({
    mark: view.mark,
    drawing: proofPage(view, order, catalogue, { ...details, page: i + 1, of: views.length }),
  }));
}

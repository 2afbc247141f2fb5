import type { Catalogue } from "../catalogue/catalogue.ts";
import type { ProofDetails } from "../drawing/proof/page.ts";
import { proofPdf, proofSvgs } from "../drawing/proof.ts";
import { everyProblem, type OrderReport, type Report } from "../judging/report.ts";
import type { Order } from "../trade/order.ts";
import type { Enclosure } from "./message.ts";
import { numbersIn } from "./numbered.ts";
import { type Shown, shownOf } from "./shown-stations.ts";

/** How often an order has been changed, by its number as typed; none where that is not known. */
export type Revisions = ReadonlyMap<string, number>;

const whole = ({ order }: OrderReport): Shown => ({ order, left: 0 });

/** A PDF for each order that has something to cut, faulty faces outlined. */
export function proofsFor(
  report: Report,
  catalogue: Catalogue,
  revisions: Revisions = new Map(),
): Promise<Enclosure[]> {
  return proofPdfs(report, catalogue, revisions, whole);
}

/** The proofs that go with an answer. Of a large order they have no station that has not changed. */
export function answeredProofs(
  report: Report,
  catalogue: Catalogue,
  revisions: Revisions = new Map(),
): Promise<Enclosure[]> {
  return proofPdfs(report, catalogue, revisions, (order) => shownOf(order, report));
}

function proofPdfs(
  report: Report,
  catalogue: Catalogue,
  revisions: Revisions,
  shown: (order: OrderReport) => Shown,
): Promise<Enclosure[]> {
  return Promise.all(
    drawn(report, revisions, shown).map(async ({ order, file, details }) => ({
      file: `${file}.pdf`,
      type: "application/pdf",
      bytes: await proofPdf(order, catalogue, details),
    })),
  );
}

/** The same drawings as pictures, one for each page. */
export function proofPictures(
  report: Report,
  catalogue: Catalogue,
  revisions: Revisions = new Map(),
): Pick<Enclosure, "file" | "bytes">[] {
  return drawn(report, revisions, whole).flatMap(({ order, file, details }) =>
    proofSvgs(order, catalogue, details).map((svg, i) => ({
      file: `${file} page ${i + 1}.svg`,
      bytes: Buffer.from(svg),
    })),
  );
}

/** The orders that have something to cut. */
function drawn(
  report: Report,
  revisions: Revisions,
  shown: (order: OrderReport) => Shown,
): { readonly order: Order; readonly file: string; readonly details: ProofDetails }[] {
  // A sheet that only waits for its sisters has nothing wrong.
  const problems = everyProblem(report).filter(({ verdict }) => verdict !== "waiting");
  const numbers = numbersIn(report);
  const orders = report.orders.filter(({ order }) => order.sheets.length > 0);
  return orders.map(shown).map(({ order, left }) => {
    const revision = revisions.get(order.number);
    return {
      order,
      file: `proof ${fileWords(order.number)}`,
      details: { problems, numbers, left, ...(revision === undefined ? {} : { revision }) },
    };
  });
}

/** An order number as part of a file name. What strangers type there becomes no path. */
export function fileWords(number: string): string {
  return (
    number
      .replaceAll(/[^\p{L}\p{N}._-]+/gu, "-")
      .replace(/^[.-]+/, "")
      .slice(0, 60) || "without a number"
  );
}

import type { Catalogue } from "../catalogue/catalogue.ts";
import { blankSheet } from "../drawing/blank-sheet.ts";
import { listFiles } from "../drawing/list/list-files.ts";
import { listWorkbook } from "../drawing/list/list-workbook.ts";
import type { ProofDetails } from "../drawing/proof/page.ts";
import { proofPdf, proofSvgs } from "../drawing/proof.ts";
import { everyProblem, type Report } from "../judging/report.ts";
import type { Edition } from "../reading/edition.ts";
import { listForm } from "../reading/list/list-form.ts";
import type { Order } from "../trade/order.ts";
import { knowsNoSheet } from "./make-outline.ts";
import { type Enclosure, workbookType } from "./message.ts";

/** How often an order has been changed, by its number as typed; none where that is not known. */
export type Revisions = ReadonlyMap<string, number>;

/** The proofs that go with an answer: a PDF for each order that has something to cut, faulty faces outlined. */
export async function proofsFor(
  report: Report,
  catalogue: Catalogue,
  revisions: Revisions = new Map(),
): Promise<Enclosure[]> {
  return Promise.all(
    drawn(report, revisions).map(async ({ order, file, details }) => ({
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
  return drawn(report, revisions).flatMap(({ order, file, details }) =>
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
): { readonly order: Order; readonly file: string; readonly details: ProofDetails }[] {
  // A sheet that only waits for its sisters has nothing wrong.
  const problems = everyProblem(report).filter(({ verdict }) => verdict !== "waiting");
  const orders = report.orders.map(({ order }) => order).filter(({ sheets }) => sheets.length > 0);
  return orders.map((order) => {
    const revision = revisions.get(order.number);
    return {
      order,
      file: `proof ${fileWords(order.number)}`,
      details: { problems, ...(revision === undefined ? {} : { revision }) },
    };
  });
}

/**
 * Blank sheets of ours: both kinds for a sender who seems to have none, with an empty station list, and the newer
 * edition for one who used an old one.
 */
export async function blanksFor(
  report: Report,
  catalogue: Catalogue,
  editions: readonly Edition[],
): Promise<Enclosure[]> {
  const outdated = new Set(
    report.sheets
      .filter(({ sheet }) => sheet.edition.replacedBy !== undefined)
      .map(({ sheet }) => sheet.kind),
  );
  const wanted = editions.filter(
    ({ drawn, replacedBy, form }) =>
      drawn && replacedBy === undefined && (knowsNoSheet(report) || outdated.has(form)),
  );
  const form = knowsNoSheet(report) ? listForm(editions) : undefined;
  const list: Enclosure[] =
    form === undefined
      ? []
      : [{ file: listFiles.workbook, type: workbookType, bytes: await listWorkbook(form, catalogue) }];
  const sheets = await Promise.all(
    wanted.map(
      async (edition): Promise<Enclosure> => ({
        file: `${edition.name}.pdf`,
        type: "application/pdf",
        bytes: await blankSheet(edition, catalogue),
      }),
    ),
  );
  return [...sheets, ...list];
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

import { expect, test } from "vitest";
import { sheetReplaced } from "../../src/checks/order/sheet-replaced.ts";
import { outlineLooks } from "../../src/drawing/kinds.ts";
import { changed } from "../../src/drawing/proof/marks.ts";
import { proofSvgs } from "../../src/drawing/proof.ts";
import { gatherOrders } from "../../src/orders/gather.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { completeOrder, deviceAt } from "../make/sample.ts";

/** The proof of the sample order after a sheet has taken the place of another. */
function proofAfter(now: Sheet): string {
  const old = deviceAt(2);
  const sheets = completeOrder().map((sheet) => (sheet.id === old.id ? now : sheet));
  const [order] = gatherOrders(sheets);
  if (order === undefined) throw new Error("no order");
  const replaced = [{ old, now, how: "place" as const }];
  const problems = [...sheetReplaced.find({ order, others: [], replaced }, catalogue)];
  return proofSvgs(order, catalogue, { problems }).join("");
}
const outlines = (svg: string, colour: string): number =>
  [...svg.matchAll(/stroke="(#\w+)"/g)].filter(([, stroke]) => stroke === colour).length;

test("a proof outlines the faces that a newer sheet has changed, and says so", () => {
  const again = deviceAt(2, { id: "2/1", file: "again.pdf" });
  const legends = again.legends.map((legend) =>
    legend.face === "1" || legend.face === "3" ? { ...legend, rows: ["NORTH", ""] } : legend,
  );
  const svg = proofAfter({ ...again, legends });
  expect(outlines(svg, changed)).toBe(2);
  expect(outlines(svg, outlineLooks.fail.colour)).toBe(0);
  expect(svg).toContain("Outlined in blue: changed by a newer sheet.");
});

test("a sheet that came again and changed nothing is not outlined", () => {
  const svg = proofAfter(deviceAt(2, { id: "2/1", file: "again.pdf" }));
  expect(outlines(svg, changed)).toBe(0);
  expect(svg).not.toContain("Outlined");
});

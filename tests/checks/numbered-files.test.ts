import { expect, test } from "vitest";
import { numberedBeyond } from "../../src/checks/numbered-files.ts";
import { gatherOrders } from "../../src/orders/gather.ts";
import type { Order } from "../../src/trade/order.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { aloneDevice, completeOrder, deviceAt, plate } from "../make/sample.ts";

const alone = (n: number, file: string, notes = ""): Sheet =>
  aloneDevice({ id: `1/${n}`, mark: `S-11${n}`, file, ...(notes === "" ? {} : { notes }) });

/** What is numbered beyond what came with one letter, of the order of its first sheet. */
function beyond(
  sheets: readonly Sheet[],
  { files = [] as string[], earlier = [] as Sheet[] } = {},
): string[] {
  const order = gatherOrders([...earlier, ...sheets])[0] as Order;
  const names = [...sheets.map(({ file }) => file), ...files];
  const own = order.sheets.filter((sheet) => sheets.includes(sheet));
  return numberedBeyond(order, { own, came: sheets, names, replaced: [] });
}

test.each([["FM-72 (2 of 2).pdf"], ["BW-2207 2of3.pdf"], ["sheet 3 of 3.pdf"], ["S-111_1_of_2.pdf"]])(
  "by its name %s is one of more sheets than came",
  (file) => {
    expect(beyond([alone(1, file)])).toEqual([file]);
  },
);

test("a note may say so too", () => {
  expect(beyond([alone(1, "S-111.pdf", "Sheet 3 of 3"), alone(2, "S-112.pdf")])).toEqual(["Sheet 3 of 3"]);
  expect(beyond([alone(1, "S-111.pdf", "feeds lamp 3 of 3"), alone(2, "S-112.pdf")])).toEqual([]);
});

test.each<[string, readonly Sheet[], { files?: string[]; earlier?: Sheet[] }?]>([
  ["all numbers are there", [alone(1, "A 1 of 2.pdf"), alone(2, "B 2 of 2.pdf")]],
  [
    "the other number is a file that is no sheet",
    [alone(1, "doc 2 of 2.pdf")],
    { files: ["doc 1 of 2.pdf"] },
  ],
  ["so many came with earlier letters", [alone(2, "A 2 of 2.pdf")], { earlier: [alone(1, "S-111.pdf")] }],
  ["so many devices came", completeOrder().map((one) => ({ ...one, file: `${one.kind} 2 of 4.pdf` }))],
  ["it is the position in a plate", [plate(), deviceAt(2, { file: "S-104 2 of 4.pdf" })]],
  [
    "it is a revision, a part of a mark or a measure",
    [alone(1, "S-111 rev 2 of 3.pdf"), alone(2, "A-1/2 of 3.pdf")],
  ],
])("nothing is said where %s", (_, sheets, beside) => {
  expect(beyond(sheets, beside)).toEqual([]);
});

import { expect, test } from "vitest";
import { composeAnswer } from "../../src/answer/answer.ts";
import { marksOf } from "../../src/answer/numbered.ts";
import { mendingsIn } from "../../src/judging/mendings.ts";
import { gatherOrders } from "../../src/orders/gather.ts";
import { standingAfter } from "../../src/orders/stand.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { growthOf, mostGrowth } from "../make/growth.ts";
import { reportOn } from "../make/report.ts";
import { aloneDevice, device, plate } from "../make/sample.ts";

const many = (size: number, make: (n: number) => Sheet): Sheet[] =>
  Array.from({ length: size }, (_, n) => ({ ...make(n), id: `1/${n + 1}`, file: `${n}.pdf` }));
const words = (n: number): string =>
  [n % 26, Math.floor(n / 26) % 26, Math.floor(n / 676)].map((i) => String.fromCharCode(65 + i)).join("");

/** Sheets of one letter that grow in number, each in a way of its own. */
const letters: Readonly<Record<string, (n: number) => Sheet>> = {
  "plates of their own stations": (n) => plate({ mark: `S-${n}` }),
  "devices that wait for their plates": (n) => device({ mark: `S-${n}` }),
  "devices of one station": () => device({ mark: "S-1" }),
  "devices without a mark whose notes name many": (n) =>
    device({ mark: "", notes: Array.from({ length: 40 }, (_, i) => `plate S-${n + i} pos 2`).join(", ") }),
  "stations of which each has a long mark": (n) => device({ mark: `${"LONG".repeat(30)}${words(n)}` }),
  "orders of their own": (n) => device({ order: `BW-${words(n)}`, mark: `S-${n % 7}` }),
  "orders with long numbers": (n) => device({ order: `${"BW".repeat(60)}${words(n)}`, mark: `S-${n % 7}` }),
  "sheets that say different things": (n) =>
    aloneDevice(
      { mark: `S-${n}`, project: `Larkspur ${words(n)}`, billTo: { name: words(n) } },
      { "1": [`WRNG${words(n)}`, ""] },
    ),
  "sheets that are all the same": () => aloneDevice(),
  "sheets that leave their header to the first": (n) =>
    aloneDevice({ mark: `S-${n}`, ...(n === 0 ? {} : { contact: {}, billTo: {}, shipSame: false }) }),
  "orders of their own without a header": (n) =>
    device({ order: `BW-${words(n)}`, mark: `S-${n}`, contact: {}, billTo: {} }),
  "sheets that lack the same": (n) => aloneDevice({ mark: `S-${n}`, contact: {}, finish: "PURPLE" }),
};

test.each(Object.entries(letters))("orders are gathered of %s in pace with their number", async (_, make) => {
  expect(
    await growthOf(
      (size) => many(size, make),
      30,
      (all) => gatherOrders(all),
    ),
  ).toBeLessThan(mostGrowth);
});

test.each(Object.entries(letters))("%s are replaced in pace with their number", async (_, make) => {
  const twice = (size: number): Sheet[][] => [
    many(size, make),
    many(size, make).map((sheet) => ({ ...sheet, id: `2/${sheet.id}` })),
  ];
  expect(
    await growthOf(twice, 30, ([earlier = [], sheets = []]) => standingAfter(earlier, sheets)),
  ).toBeLessThan(mostGrowth);
});

test.each(Object.entries(letters))("a letter of %s is judged in pace with their number", async (_, make) => {
  expect(
    await growthOf(
      (size) => many(size, make),
      25,
      (sheets) => reportOn(sheets, { knows: { ...catalogue } }),
    ),
  ).toBeLessThan(mostGrowth);
});

test.each(Object.entries(letters))(
  "a letter of %s is answered in pace with their number",
  async (_, make) => {
    const report = (size: number) => reportOn(many(size, make));
    expect(
      await growthOf(report, 25, (one) => [composeAnswer(one, catalogue), marksOf(one), mendingsIn(one)]),
    ).toBeLessThan(mostGrowth);
  },
);

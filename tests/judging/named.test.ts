import { expect, test } from "vitest";
import { numbersPerhapsIn, ordersNamedIn } from "../../src/judging/named.ts";
import { deviceAt } from "../make/sample.ts";
import { stateWith } from "../make/state.ts";

test.each<[string, string[]]>([
  ["About BW-2207, please", ["BW-2207"]],
  ["about bw 2207", ["BW-2207"]],
  ["BW-2207 and PO 4512", ["BW-2207", "PO # 4512"]],
  ["4512", ["PO # 4512"]],
  ["BW-22071", []],
  ["BW 2208", []],
  ["77 sheets", []],
  ["", []],
])("of the buyer's orders, “%s” names %j", (text, numbers) => {
  const orders = ["BW-2207", "PO # 4512", "77", "LIBRARY", ""].map((number, n) => ({
    number,
    sheets: [deviceAt(1, { id: `1/${n}`, order: number })],
    carried: [],
    questions: [],
  }));
  expect(ordersNamedIn(text, stateWith([], { orders }))).toEqual(numbers);
});

test("what may be a number has four words at most, four characters and two digits in a row", () => {
  const perhaps = numbersPerhapsIn("see kf 1001 a b c");
  expect(perhaps).toEqual(
    expect.arrayContaining(["kf 1001", "1001", "see kf 1001", "kf 1001 a b", "1001 a b c"]),
  );
  expect(perhaps).not.toContain("see kf 1001 a b");
  expect(perhaps).not.toContain("kf");
  expect(numbersPerhapsIn("100")).toEqual([]);
  expect(numbersPerhapsIn("a1b2c3")).toEqual([]);
  expect(numbersPerhapsIn("")).toEqual([]);
});

test("however long a text, some five hundred numbers are looked for", () => {
  const found = numbersPerhapsIn(Array.from({ length: 2_000 }, (_, n) => `${n + 1_000}`).join(" "));
  expect(found.length).toBeGreaterThanOrEqual(500);
  expect(found.length).toBeLessThan(504);
});

import { expect, test } from "vitest";
import { listNotTaken } from "../../src/checks/file/list-not-taken.ts";
import { listAs } from "../../src/checks/sample.ts";
import type { ListFault } from "../../src/trade/list-fault.ts";
import { catalogue } from "../make/config.ts";

/** The places that the check names where so many cells are hidden. */
const named = (...faults: ListFault[]) =>
  [...listNotTaken.find(listAs(...faults), catalogue)].map(({ facts }) => facts["places"]);
const cells = (count: number) =>
  Array.from({ length: count }, (_, i): ListFault => ({ what: "hidden", where: `A${i + 1}` }));

test("of many cells twelve are named, and how many more there are", () => {
  const twelve = cells(12).map(({ where }) => where);
  expect(named(...cells(12))).toEqual([twelve]);
  expect(named(...cells(13))).toEqual([[...twelve, "1 more"]]);
  expect(named(...cells(14))).toEqual([[...twelve, "2 more"]]);
});

test("of a long text in a cell sixty characters are shown", () => {
  expect(named({ what: "unplaced", where: "B2", text: "x".repeat(61) })).toEqual([
    [`B2 “${"x".repeat(60)}”`],
  ]);
});

import { expect, test } from "vitest";
import { problemFrom, problemShape, sheetFrom, sheetShape } from "../../src/store/shapes.ts";
import { device } from "../make/sample.ts";

test("a sheet and a problem of today's shape are read as they were stored", () => {
  const content = JSON.stringify(device());
  expect(sheetFrom({ content, shape: sheetShape })).toEqual(device());
  const problem = { check: "spelling", facts: { typed: "KITCHN" } };
  expect(problemFrom(problem, problemShape)).toEqual(problem);
});

test("what a newer program has written is not read as if it were known", () => {
  const content = JSON.stringify(device());
  expect(() => sheetFrom({ content, shape: sheetShape + 1 })).toThrow(
    `the record was written by a newer program: shape ${sheetShape + 1} is not known here`,
  );
  expect(() => problemFrom({}, problemShape + 1)).toThrow("a newer program");
});

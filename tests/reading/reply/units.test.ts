import { expect, test } from "vitest";
import { tokensIn } from "../../../src/reading/reply/tokens.ts";
import { unitsOf } from "../../../src/reading/reply/units.ts";

test("a run of twenty words is read, and a longer one is not", () => {
  const thanks = (times: number) => unitsOf(tokensIn("thanks ".repeat(times), new Set()));
  expect(thanks(20)).toEqual([{ what: "nothing" }]);
  expect(thanks(21)).toEqual([]);
});

test.each([
  ["3 yes", "named", true],
  ["3 no", "named", false],
  ["all yes", "set", true],
  ["all no", "set", false],
  ["yes", "bare", true],
  ["no", "bare", false],
  ["i confirm", "confirms", true],
])("“%s” is %s, and a yes: %s", (line, what, is) => {
  expect(unitsOf(tokensIn(line, new Set()))[0]).toEqual({ what, is });
});

test.each([
  ["3 too", "same"],
  ["it is a family name", "reason"],
  ["do not change it", "echo"],
  ["here are my answers", "introduction"],
])("“%s” answers nothing by itself: %s", (line, what) => {
  expect(unitsOf(tokensIn(line, new Set()))).toEqual([{ what }]);
});

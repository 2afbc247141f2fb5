import { expect, test } from "vitest";
import { tokensIn } from "../../../src/reading/reply/tokens.ts";
import { unitsOf } from "../../../src/reading/reply/units.ts";

test("a run of twenty words is read, and a longer one is not", () => {
  const thanks = (times: number) => unitsOf(tokensIn("thanks ".repeat(times), new Set()));
  expect(thanks(20)).toEqual([{ what: "nothing" }]);
  expect(thanks(21)).toEqual([]);
});

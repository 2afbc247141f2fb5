import { expect, test } from "vitest";
import { questionOf } from "../../src/judging/questions.ts";
import type { Problem } from "../../src/trade/problem.ts";
import { deviceAt } from "../make/sample.ts";

const problem = (check: string, verdict: Problem["verdict"], file: string): Problem => ({
  check,
  wording: "sheet",
  severity: "asks",
  verdict,
  facts: {},
  spots: [{ file }],
});
const [first, again] = [deviceAt(2), deviceAt(2, { id: "2/1", file: "again.pdf" })];
const sheets = new Map([first, again].map((sheet) => [sheet.id, sheet]));
const isSame = (check: string, verdict: Problem["verdict"]): boolean =>
  questionOf(problem(check, verdict, first.id), sheets).key ===
  questionOf(problem(check, verdict, again.id), sheets).key;

test("a question about what is typed stays the same when its sheet comes again", () => {
  expect(isSame("spelling", "confirm")).toBe(true);
});

test("a question about what is seen on a page, or for a person to look at, is a new one on a new sheet", () => {
  for (const check of ["handwriting-on-sheet", "image-pasted-over", "value-hidden", "typed-over-sheet"])
    expect(isSame(check, "fail")).toBe(false);
  for (const check of ["fields-flattened", "pages-beside-sheet", "sheet-recovered"])
    expect(isSame(check, "confirm")).toBe(false);
  expect(isSame("something-on-page", "person")).toBe(false);
  expect(isSame("readers-disagree", "person")).toBe(false);
});

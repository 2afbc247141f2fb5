import { expect, test } from "vitest";
import { without } from "../../src/checks/sample.ts";
import { questionOf, questionsOf } from "../../src/judging/questions.ts";
import type { Problem } from "../../src/trade/problem.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { deviceAt, plate } from "../make/sample.ts";

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

test("what is only told is no question, and what is asked twice is one", () => {
  const asked = problem("spelling", "confirm", first.id);
  const told = { ...problem("order-number-near-miss", "waiting", first.id), severity: "notes" as const };
  const settled = problem("legend-empty", "pass", first.id);
  expect(questionsOf([asked, told, settled, asked], sheets).map((one) => one.problem)).toEqual([asked]);
});

test("a question is of a station and a position where all its sheets are", () => {
  const about = (...some: Sheet[]) => {
    const spots = some.map(({ id }) => ({ file: id }));
    const known = new Map(some.map((sheet) => [sheet.id, sheet]));
    const { station, position } = questionOf({ ...problem("spelling", "confirm", ""), spots }, known);
    return [station, position];
  };
  expect(about(deviceAt(2))).toEqual(["S-104", 2]);
  expect(about(deviceAt(2), deviceAt(3))).toEqual(["S-104", undefined]);
  expect(about(plate())).toEqual(["S-104", undefined]);
  expect(about(deviceAt(2), plate())).toEqual(["S-104", undefined]);
  expect(about(deviceAt(2), deviceAt(2, { id: "1/8", mark: "S-105" }))).toEqual([undefined, undefined]);
  expect(about(without(deviceAt(2), "mark"))).toEqual([undefined, undefined]);
  expect(about()).toEqual([undefined, undefined]);
});

test("a question is another one once its facts are others, unless they only name files", () => {
  const keyWith = (sheet: Sheet, facts: Problem["facts"]) =>
    questionOf({ ...problem("spelling", "confirm", sheet.id), facts }, sheets).key;
  expect(keyWith(first, { typed: "SALONA" })).not.toBe(keyWith(first, { typed: "SALON" }));
  const names = (sheet: Sheet) => ({ typed: "SALONA", file: sheet.file, files: [sheet.file] });
  expect(keyWith(first, names(first))).toBe(keyWith(again, names(again)));
  expect(keyWith(first, { files: ["other.pdf"] })).not.toBe(keyWith(first, { files: [first.file] }));
});

import { expect, test } from "vitest";
import { fileStillUnread } from "../../src/checks/order/file-still-unread.ts";
import { checkSheet } from "../../src/checks/run.ts";
import { subject } from "../../src/checks/sample.ts";
import { questioning } from "../../src/judging/answered.ts";
import { questionOf } from "../../src/judging/questions.ts";
import type { Problem } from "../../src/trade/problem.ts";
import type { KnownQuestion } from "../../src/trade/question.ts";
import { catalogue } from "../make/config.ts";
import { device } from "../make/sample.ts";
import { stateWith } from "../make/state.ts";

const sheet = device({}, { "1": ["SALONA", ""] });
const sheets = new Map([[sheet.id, sheet]]);
const problemsOf = (check: string) =>
  checkSheet(sheet, catalogue).filter((problem) => problem.check === check)[0] as Problem;
const misspelt = problemsOf("spelling");
const faulty: Problem = { ...misspelt, check: "finish-not-made", severity: "stops", verdict: "fail" };
const [unread] = [
  ...fileStillUnread.find(
    { ...subject([sheet]), carried: [{ letter: "1", what: "file", text: "scan.pdf" }] },
    catalogue,
  ),
] as [Problem];
const keyOf = (problem: Problem) => questionOf(problem, sheets).key;
const known = (problem: Problem, state: KnownQuestion["state"], number = 7): KnownQuestion => ({
  key: keyOf(problem),
  number,
  letter: 1,
  problem,
  state,
});

function questions(
  questions: readonly KnownQuestion[],
  now: Parameters<typeof questioning>[2] = {},
  number = "BW-2207",
) {
  const orders = [{ number: "BW-2207", sheets: [sheet], carried: [], questions }];
  return questioning(number, stateWith([], { orders }), now, sheets);
}

test("a question is answered once its sender settles it in this letter or did before, in its own order", () => {
  const own = { order: "bw 2207", key: keyOf(misspelt) };
  expect(questions([]).isAnswered(misspelt)).toBe(false);
  expect(questions([], { settles: [own] }).isAnswered(misspelt)).toBe(true);
  expect(questions([], { settles: [{ ...own, order: "KX-1185" }] }).isAnswered(misspelt)).toBe(false);
  expect(questions([], { settles: [{ ...own, key: "other" }] }).isAnswered(misspelt)).toBe(false);
  expect(questions([known(misspelt, "settled")]).isAnswered(misspelt)).toBe(true);
  expect(questions([known(misspelt, "settled")], {}, "KX-1185").isAnswered(misspelt)).toBe(false);
  for (const state of ["open", "gone", "withdrawn"] as const)
    expect(questions([known(misspelt, state)]).isAnswered(misspelt)).toBe(false);
});

test("what only our own people may let stand, no sender settles; what they decide is answered", () => {
  const key = { order: "BW-2207", key: keyOf(faulty) };
  expect(questions([], { settles: [key] }).isAnswered(faulty)).toBe(false);
  expect(questions([], { decides: [key] }).isAnswered(faulty)).toBe(true);
  expect(questions([known(faulty, "decided")]).isAnswered(faulty)).toBe(true);
  expect(questions([known(faulty, "settled")]).isAnswered(faulty)).toBe(false);
  const settles = [{ order: "BW-2207", key: keyOf(misspelt) }];
  expect(questions([known(faulty, "decided")], { settles }).isAnswered(faulty)).toBe(true);
  expect(questions([known(faulty, "decided")], { settles }).isAnswered(misspelt)).toBe(true);
});

test("a file of that name that comes again unread is asked about anew, whatever was decided of the first", () => {
  expect(questions([known(unread, "decided")]).isAnswered(unread)).toBe(false);
  expect(questions([known(unread, "settled")]).isAnswered(unread)).toBe(false);
});

test("what is asked keeps the number that it was first asked under, and what is only told is not asked", () => {
  const { asked } = questions([known(misspelt, "open", 3)]);
  const told: Problem = { ...misspelt, severity: "notes" };
  const settled: Problem = { ...misspelt, verdict: "pass" };
  expect(
    asked([misspelt, faulty, told, settled]).map(({ problem, number }) => [problem.check, number]),
  ).toEqual([
    ["spelling", 3],
    ["finish-not-made", undefined],
  ]);
});

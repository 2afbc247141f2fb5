import { expect, test } from "vitest";
import { changesOf } from "../../src/judging/changes.ts";
import { everyProblem, makeReport, type Report } from "../../src/judging/report.ts";
import type { BuyerState } from "../../src/judging/state.ts";
import type { Submission } from "../../src/judging/submission.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { sentEarlier } from "../make/report.ts";
import { aloneDevice } from "../make/sample.ts";
import { stateWith } from "../make/state.ts";

const cafe = { mark: "S-111", file: "S-111.pdf" } as const;
const lobby = aloneDevice({}, { plate: ["LOBBY"] });
const earlier = sentEarlier<Sheet>([lobby, aloneDevice({ id: "1/8", ...cafe })]);
/** The sheet of S-111 with the mark left as it was. */
const wrong = aloneDevice({ id: "2/1", file: cafe.file }, { plate: ["CAFE"] });

const judged = (came: Partial<Submission>, state: BuyerState): Report =>
  makeReport({ files: [], sheets: [], about: ["BW-2207"], ...came }, catalogue, state);
const asked = (report: Report): string[] => [
  report.verdict,
  ...everyProblem(report).flatMap(({ check, wording, severity }) =>
    severity === "asks" ? [`${check}/${wording}`] : [],
  ),
];

/** The state that a first letter leaves, with its questions open and its copies forgotten. */
function openAfter(report: Report, before: BuyerState, sheets: readonly Sheet[]): BuyerState {
  const [revision] = changesOf(report, before, () => 1);
  const questions = (revision?.questions ?? []).map((one) => ({ ...one, letter: 2, state: "open" as const }));
  const state = stateWith(sheets);
  return { ...state, orders: state.orders.map((order) => ({ ...order, questions })) };
}

test("a copy under the name of another place is asked about until a sheet for that place comes", () => {
  const saved = ["S-110.pdf", cafe.file].map((file, n) => ({ ...lobby, id: `2/${n + 1}`, file }));
  const first = judged({ sheets: saved }, stateWith([]));
  expect(asked(first)).toEqual(["confirm", "file-name-contradicts/same"]);
  const open = openAfter(first, stateWith([]), saved.slice(0, 1));
  expect(asked(judged({}, open))).toEqual(["confirm", "file-name-contradicts/same"]);
  const other = aloneDevice({ id: "3/1", mark: "S-112", file: "S-112.pdf" }, { plate: ["BAR"] });
  expect(asked(judged({ sheets: [other] }, open))).toEqual(["confirm", "file-name-contradicts/same"]);
  const lacked = aloneDevice({ id: "3/1", ...cafe }, { plate: ["CAFE"] });
  expect(asked(judged({ sheets: [lacked] }, open))).toEqual(["pass"]);
});

test("a question about what a letter did stays until it is answered or its sheet gives way", () => {
  const before = stateWith(earlier);
  const first = judged({ sheets: [wrong] }, before);
  expect(asked(first)).toEqual(["confirm", "file-name-contradicts/taken"]);
  const [revision] = changesOf(first, before, () => 1);
  const questions = (revision?.questions ?? []).map((one) => ({ ...one, letter: 2, state: "open" as const }));
  const state = stateWith([wrong, ...earlier.slice(1)]);
  const orders = state.orders.map((order) => ({ ...order, questions }));
  const open: BuyerState = { ...state, orders };
  expect(asked(judged({}, open))).toEqual(["confirm", "file-name-contradicts/taken"]);
  const settles = questions.map(({ key }) => ({ order: "BW-2207", key }));
  expect(asked(judged({ settles }, open))).toEqual(["pass"]);
  expect(asked(judged({ sheets: [{ ...lobby, id: "3/1" }] }, open))).toEqual(["pass"]);
  const settled = orders.map((order) => ({
    ...order,
    questions: questions.map((one) => ({ ...one, state: "settled" as const })),
  }));
  expect(asked(judged({}, { ...open, orders: settled }))).toEqual(["pass"]);
});

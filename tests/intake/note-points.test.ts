import { expect, test } from "vitest";
import { everyCheck } from "../../src/checks/run.ts";
import { decidedBy, faultOf, keptBy } from "../../src/intake/note-points.ts";
import type { OrderState } from "../../src/judging/state.ts";
import { pieceKey } from "../../src/orders/piece.ts";
import type { Act, Note } from "../../src/trade/note.ts";
import type { Problem } from "../../src/trade/problem.ts";
import type { KnownQuestion } from "../../src/trade/question.ts";
import { deviceAt, plate } from "../make/sample.ts";
import { stateWith } from "../make/state.ts";

const sheets = [plate(), deviceAt(1), deviceAt(2, { mark: "S-105" })];
const [settles, needsUs] = ["settles", undefined].map(
  (sender) => everyCheck.find((check) => check.severity === "asks" && check.sender === sender)?.id ?? "",
);
const [waived, never] = [true, undefined].map(
  (waivable) =>
    everyCheck.find((check) => check.severity === "stops" && check.waivable === waivable)?.id ?? "",
);

const problem = (check = "", severity: Problem["severity"] = "asks", typed?: string): Problem => ({
  check,
  wording: "",
  severity,
  verdict: severity === "stops" ? "fail" : "confirm",
  facts: typed === undefined ? {} : { typed },
  spots: [{ file: deviceAt(1).id }],
});
const question = (number: number, about: Problem, state: KnownQuestion["state"] = "open"): KnownQuestion => ({
  key: `k${number} ${about.check}`,
  number,
  problem: about,
  letter: 1,
  state,
});
const questions = [
  question(1, problem(settles)),
  question(2, problem(needsUs)),
  question(3, problem(waived, "stops")),
  question(4, problem(never, "stops")),
  question(5, problem(settles), "settled"),
  question(6, problem("spelling", "asks", "Nimbus")),
  question(6, problem("word-slip", "asks", "Cirrus")),
  question(7, problem("spelling", "asks", "Stratus"), "gone"),
];
const released = {
  revision: 1,
  at: "2026-11-09T15:00:00Z",
  on: "2026-11-09",
  by: "Rosa",
  pieces: [{ sheet: "1/1", key: pieceKey(plate()), engraved: false }],
};
const stateOf = (changes: Partial<OrderState>) => {
  const state = stateWith(sheets);
  return { ...state, orders: state.orders.map((order) => ({ ...order, questions, ...changes })) };
};
const noteOf = (acts: readonly Act[], changes: Partial<Note> = {}): Note => ({
  id: "n1",
  buyer: "ines@brightwire.example",
  order: "bw 2207",
  by: "Rosa Imhoff",
  why: "",
  acts,
  ...changes,
});
const fault = (act: Act, note: Partial<Note> = {}, order: Partial<OrderState> = { released }) =>
  faultOf(noteOf([act], note), stateOf(order));

test.each<[Act, string | undefined]>([
  [{ kind: "yes", number: 1 }, undefined],
  [{ kind: "no", number: 2 }, undefined],
  [{ kind: "say", number: 4, words: "mend it" }, undefined],
  [{ kind: "waive", number: 3 }, undefined],
  [{ kind: "write", words: "hello" }, undefined],
  [{ kind: "cut", stations: ["s104"] }, undefined],
  [{ kind: "cut", stations: [] }, undefined],
  [{ kind: "yes", number: 9 }, "order bw 2207 has no open point 9"],
  [{ kind: "yes", number: 5 }, "order bw 2207 has no open point 5"],
  [{ kind: "yes", number: 3 }, "point 3 stops the order: mend it, or let it stand with --waive"],
  [{ kind: "waive", number: 1 }, "point 1 is a question: answer it with --yes"],
  [{ kind: "waive", number: 4 }, "point 4 cannot be let stand: it could not be cut"],
  [{ kind: "cut", stations: ["S-104", "S-105"] }, "not all of S-104, S-105 are stations that were released"],
  [{ kind: "place", sheet: "9/9", mark: "S-104" }, "sheet 9/9 does not stand in order bw 2207"],
])("of one of us, %j: %s", (act, why) => {
  expect(fault(act)).toBe(why);
});

test.each<[Act, string | undefined]>([
  [{ kind: "yes", number: 1 }, undefined],
  [{ kind: "no", number: 1 }, undefined],
  [{ kind: "yes", number: 2 }, "point 2 needs one of us"],
  [{ kind: "no", number: 3 }, "point 3 needs one of us"],
  [{ kind: "waive", number: 3 }, "only questions are answered there"],
  [{ kind: "say", number: 1, words: "" }, "only questions are answered there"],
  [{ kind: "write", words: "" }, "only questions are answered there"],
])("of the sender, by the link, %j: %s", (act, why) => {
  expect(fault(act, { isSenders: true })).toBe(why);
});

test("an order that nobody knows, and one that was not released", () => {
  expect(fault({ kind: "yes", number: 1 }, { order: "BW-9" })).toBe(
    "no order BW-9 of ines@brightwire.example is known",
  );
  expect(fault({ kind: "cut", stations: [] }, {}, {})).toBe("order BW-2207 was not released");
});

test("a fault of any act is a fault of the note", () => {
  const acts: readonly Act[] = [
    { kind: "write", words: "hello" },
    { kind: "cut", stations: [] },
    { kind: "yes", number: 9 },
  ];
  expect(faultOf(noteOf(acts), stateOf({ released }))).toBe("order bw 2207 has no open point 9");
});

test("a YES decides all open questions of its number and keeps their words, a NO none", () => {
  const state = stateOf({});
  const yes = noteOf([
    { kind: "yes", number: 6 },
    { kind: "yes", number: 7 },
    { kind: "waive", number: 3 },
    { kind: "no", number: 1 },
  ]);
  expect(decidedBy(yes, state)).toEqual(
    [`k3 ${waived}`, "k6 spelling", "k6 word-slip"].map((key) => ({ order: "bw 2207", key })),
  );
  expect(keptBy(yes, state)).toEqual(
    ["NIMBUS", "CIRRUS"].map((word) => ({ word, project: "Larkspur Library" })),
  );
  expect(keptBy(noteOf([{ kind: "no", number: 6 }]), state)).toEqual([]);
});

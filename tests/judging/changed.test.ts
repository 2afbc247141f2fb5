import { expect, test } from "vitest";
import { subject } from "../../src/checks/sample.ts";
import { changedIn } from "../../src/judging/changed.ts";
import type { OrderState } from "../../src/judging/state.ts";
import type { Problem } from "../../src/trade/problem.ts";
import type { KnownQuestion } from "../../src/trade/question.ts";
import { completeOrder, deviceAt } from "../make/sample.ts";

const problem: Problem = {
  check: "spelling",
  wording: "misspelt",
  severity: "asks",
  verdict: "confirm",
  facts: {},
  spots: [],
};
const question = (number: number, key: string, state: KnownQuestion["state"] = "open"): KnownQuestion => ({
  key,
  number,
  letter: 1,
  problem,
  state,
});
const { order } = subject(completeOrder());
const state = (...questions: KnownQuestion[]): OrderState => ({
  number: order.number,
  sheets: order.sheets,
  carried: [],
  questions,
});
const nothing = { came: new Set<string>(), replaced: [], settles: [], decides: [] };
const own = (key: string) => ({ order: "bw 2207", key });

test("of an order that was asked, it is told what is settled, decided, mended and open, by rising numbers", () => {
  const before = state(
    question(12, "settled"),
    question(3, "settled too"),
    question(4, "decided"),
    question(5, "mended"),
    question(11, "open"),
    question(2, "open too"),
    question(1, "of long ago", "settled"),
  );
  const asked = ["open", "open too"].map((key) => ({ problem, key }));
  const settles = [own("settled"), own("settled too"), { order: "KX-1185", key: "mended" }];
  expect(changedIn({ order, asked }, { ...nothing, before, settles, decides: [own("decided")] })).toEqual({
    came: [],
    replaced: [],
    settled: [3, 12],
    decided: [4],
    mended: [5],
    open: [2, 11],
  });
});

test("a number under which something is open still is not mended, though a part of it is", () => {
  const before = state(question(1, "open"), question(1, "gone"));
  const changed = changedIn({ order, asked: [{ problem, key: "open" }] }, { ...nothing, before });
  expect([changed?.open, changed?.mended]).toEqual([[1], []]);
});

test("a sheet that came is told as new, or as taking the place of another, and no other sheet is", () => {
  const [two, three] = [deviceAt(2), deviceAt(3)];
  const replaced = [
    { old: deviceAt(2, { id: "0/2" }), now: two, how: "place" as const },
    { old: deviceAt(1, { id: "0/1" }), now: deviceAt(1), how: "place" as const },
  ];
  const changed = changedIn(
    { order, asked: [] },
    { ...nothing, before: state(), came: new Set([two.id, three.id]), replaced },
  );
  expect([changed?.came, changed?.replaced]).toEqual([[three], replaced.slice(0, 1)]);
});

test("nothing has changed of an order that is new, or of which nothing but its number was known", () => {
  const known = { ...state(), sheets: [] };
  expect(changedIn({ order, asked: [] }, { ...nothing, before: undefined })).toBeUndefined();
  expect(changedIn({ order, asked: [] }, { ...nothing, before: known })).toBeUndefined();
  expect(
    changedIn({ order, asked: [] }, { ...nothing, before: { ...known, questions: [question(1, "a")] } }),
  ).toMatchObject({ mended: [1] });
});

import { expect, test } from "vitest";
import { changesOf } from "../../src/judging/changes.ts";
import { makeReport } from "../../src/judging/report.ts";
import type { OrderState } from "../../src/judging/state.ts";
import type { Submission } from "../../src/judging/submission.ts";
import type { Carried } from "../../src/trade/carried.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { aloneDevice, blankDevice, completeOrder } from "../make/sample.ts";
import { stateWith } from "../make/state.ts";

const letter = { number: "2", came: { receivedAt: new Date("2026-11-09T14:00:00Z") } };
const empty = (number: string, changes: Partial<OrderState> = {}): OrderState => ({
  number,
  sheets: [],
  carried: [],
  questions: [],
  ...changes,
});
const sheet = aloneDevice({ id: "2/1" });

/** What a letter changes, order by order. */
const changes = (came: Partial<Submission>, ...orders: OrderState[]) => {
  const state = stateWith([], { orders });
  const report = makeReport({ files: [], sheets: [], ...came, letter }, catalogue, state);
  return changesOf(report, state, () => 1);
};

test("a file that has to come again leaves its order to be confirmed, words leave it to a person", () => {
  const verdicts = (came: Partial<Submission>) =>
    changes({ sheets: [sheet], ...came }).map(({ verdict, carried }) => [verdict, carried.length]);
  expect(verdicts({})).toEqual([["pass", 0]]);
  expect(verdicts({ files: [{ id: "2/2", file: "scan.pdf", kind: "scanned" }] })).toEqual([["confirm", 1]]);
  expect(verdicts({ statements: [{ kind: "said", where: "text", words: "Wait." }] })).toEqual([
    ["person", 1],
  ]);
});

test("what was open and comes again is open once", () => {
  const words: Carried = { letter: "1", what: "words", text: "Wait." };
  const [revision] = changes(
    { sheets: [sheet], statements: [{ kind: "said", where: "text", words: "Wait." }] },
    empty("BW-2207", { carried: [words] }),
  );
  expect(revision?.carried.map(({ what, text }) => `${what} ${text}`)).toEqual(["words Wait."]);
});

test("an order of which nothing is left is changed once; what a person has to read of it stays open", () => {
  const gone = empty("KX-1185");
  expect(changes({ sheets: [sheet] }, gone).map(({ number }) => number)).toEqual(["BW-2207"]);
  const last = aloneDevice({ id: "1/1", order: "KX-1185" });
  const standing = (...carried: Carried[]) => empty("KX-1185", { sheets: [last], carried });
  const left = (...carried: Carried[]) =>
    changes({ withdraws: ["1/1"] }, standing(...carried)).map((one) => [one.verdict, one.carried.length]);
  expect(left()).toEqual([[undefined, 0]]);
  expect(left({ letter: "1", what: "words", text: "Wait." })).toEqual([["person", 1]]);
  expect(left({ letter: "1", what: "count", text: "2 devices", count: { of: "device", number: 2 } })).toEqual(
    [[undefined, 0]],
  );
  expect(changes({ sheets: [sheet] }, standing()).map(({ number }) => number)).toEqual(["BW-2207"]);
});

test("each order tells of its own withdrawn sheets", () => {
  const [ours, theirs] = [aloneDevice({ id: "1/1" }), aloneDevice({ id: "1/2", order: "KX-1185" })];
  const orders = [empty("BW-2207", { sheets: [ours] }), empty("KX-1185", { sheets: [theirs] })];
  expect(
    changes({ withdraws: ["1/1", "1/2"] }, ...orders).map(({ number, withdrawn }) => [number, withdrawn]),
  ).toEqual([
    ["BW-2207", ["1/1"]],
    ["KX-1185", ["1/2"]],
  ]);
});

test("a blank sheet is none of its order's, and a copy is where it has no place of its own", () => {
  const ids = (...sheets: Sheet[]) => changes({ sheets }).flatMap((one) => one.sheets);
  const complete = completeOrder().map((one) => ({ ...one, id: `2${one.id.slice(1)}` }));
  const [first] = complete as [Sheet];
  expect(ids(...complete)).toHaveLength(5);
  expect(ids(...complete, { ...first, id: "2/9" })).toHaveLength(5);
  expect(ids(...complete, blankDevice({ id: "2/9", order: "BW-2207" }))).toHaveLength(5);
  const { mark: _mark, ...unmarked } = sheet;
  expect(ids(unmarked, { ...unmarked, id: "2/9" })).toEqual(["2/1", "2/9"]);
});

test("an order without a number has none, and no project where its sheets name none", () => {
  const { order: _order, project: _project, ...bare } = sheet;
  const [revision] = changes({ sheets: [bare] });
  expect([revision?.number, revision?.project]).toEqual(["", undefined]);
  const [named] = changes({ sheets: [sheet] });
  expect([named?.number, named?.project]).toEqual(["BW-2207", "Larkspur Library"]);
});

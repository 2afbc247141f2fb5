import { expect, test } from "vitest";
import { without } from "../../src/checks/sample.ts";
import { changesOf } from "../../src/judging/changes.ts";
import { everyProblem, makeReport, type Report } from "../../src/judging/report.ts";
import type { BuyerState, OrderState } from "../../src/judging/state.ts";
import type { Submission } from "../../src/judging/submission.ts";
import type { ReadFile } from "../../src/trade/attachment.ts";
import type { Carried } from "../../src/trade/carried.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { reportOn, sentEarlier } from "../make/report.ts";
import { aloneDevice, completeOrder, deviceAt, plate } from "../make/sample.ts";
import { stateWith } from "../make/state.ts";

const earlier = sentEarlier(completeOrder());
const [ownOrder] = stateWith(earlier).orders as [OrderState];
const other = sentEarlier([aloneDevice({ order: "KX-1185", project: "Quarry Street School" })]);

/** The report on what comes, where the order BW-2207 stands complete. */
function reportOf(
  came: Partial<Submission>,
  order: Partial<OrderState> = {},
  more: readonly Sheet[] = [],
  changes: Partial<BuyerState> = {},
): Report {
  const orders = [{ ...ownOrder, ...order }, ...stateWith(more).orders];
  return makeReport({ files: [], sheets: [], ...came }, catalogue, stateWith([], { orders, ...changes }));
}
const told = (report: Report): string[] => everyProblem(report).map(({ check }) => check);
const numbers = (report: Report): string[] => report.orders.map(({ order }) => order.number);

test("a letter is about the orders that it names or brings sheets for, and about no other", () => {
  expect(numbers(reportOf({}, {}, other))).toEqual([]);
  expect(numbers(reportOf({ about: ["kx 1185"] }, {}, other))).toEqual(["KX-1185"]);
  const again = deviceAt(2, { id: "2/1", finish: "CHK" });
  expect(numbers(reportOf({ sheets: [again] }, {}, other))).toEqual(["BW-2207"]);
  const late = deviceAt(2, { id: "0/9", finish: "CHK" });
  expect(numbers(reportOf({ sheets: [late] }, {}, other))).toEqual(["BW-2207"]);
  expect(numbers(reportOf({ withdraws: [earlier[1]?.id ?? ""] }, {}, other))).toEqual(["BW-2207"]);
});

test("an order whose number looks like that of another is asked about by that other's number", () => {
  const alone = aloneDevice({ id: "2/1", order: "BW-22O7", project: "Teasel Lane" });
  const [problem, ...more] = everyProblem(reportOf({ sheets: [alone] })).filter(
    ({ check }) => check === "order-number-near-miss",
  );
  expect(more).toEqual([]);
  expect(problem?.facts).toMatchObject({ other: "BW-2207" });
});

test("an order is asked about the open questions of its earlier sheets, and told none of their notes again", () => {
  const [first, second, ...more] = earlier as [Sheet, Sheet];
  const withRow = (row: string) => {
    const legends = second.legends.map((one) => (one.face === "1" ? { ...one, rows: [row, ""] } : one));
    const sheets = [first, { ...second, legends }, ...more];
    const later = reportOf({ about: ["BW-2207"] }, { sheets });
    const asked = later.orders.flatMap((order) => order.asked.map(({ problem }) => problem.check));
    return { came: told(reportOn(sheets)), later: told(later), asked };
  };
  expect(withRow("SALONA")).toEqual({ came: ["spelling"], later: ["spelling"], asked: ["spelling"] });
  expect(withRow("WRHSE")).toEqual({ came: ["abbreviation-unknown"], later: [], asked: [] });
});

const words: Carried = { letter: "1", what: "words", text: "Do not cut yet." };
const six: Carried = { letter: "1", what: "count", text: "6 devices", count: { of: "device", number: 6 } };

test("what an earlier letter left open keeps its order from passing until it is dealt with", () => {
  const open = (came: Partial<Submission>, ...carried: Carried[]) =>
    reportOf({ about: ["BW-2207"], ...came }, { carried });
  expect(open({}).verdict).toBe("pass");
  expect([open({}, words).verdict, told(open({}, words))]).toEqual(["person", ["letter-still-open"]]);
  expect([open({}, six).verdict, told(open({}, six))]).toEqual(["confirm", ["count-differs"]]);
  for (const one of [words, six]) {
    expect(open({ dealtWith: ["1"] }, one).verdict).toBe("pass");
    expect(open({ dealtWith: ["2"] }, one).verdict).not.toBe("pass");
  }
  expect(numbers(reportOf({ dealtWith: ["1"] }, { carried: [words] }))).toEqual(["BW-2207"]);
});

test("a count of the same in a newer letter takes the place of one before", () => {
  const says = (number: number) =>
    reportOf(
      { about: ["BW-2207"], statements: [{ kind: "counts", counts: [{ of: "device", number }], words: "" }] },
      { carried: [six] },
    ).orders.flatMap(({ carried }) => carried.map(({ text }) => text));
  expect(says(4)).toEqual([]);
  expect(says(7)).toEqual(["7 devices"]);
});

test("a count that is reached is done with once no sheet is missing", () => {
  const counted = (number: number, sheets: readonly Sheet[]) =>
    reportOf(
      { about: ["BW-2207"] },
      { sheets, carried: [{ ...six, count: { of: "device", number } }] },
    ).orders.flatMap(({ carried }) => carried).length;
  expect(counted(3, earlier.slice(0, 4))).toBe(1);
  expect(counted(4, earlier)).toBe(0);
});

test("a count in a letter about several orders takes the place of none before", () => {
  const statements = [{ kind: "counts" as const, counts: [{ of: "device" as const, number: 1 }], words: "" }];
  const report = reportOf({ about: ["BW-2207", "KX-1185"], statements }, { carried: [six] }, other);
  expect(report.orders.map(({ carried }) => carried.map(({ text }) => text))).toEqual([["6 devices"], []]);
});

test("words that one of our own people decides about no longer hold their order up", () => {
  const asked = reportOf({ about: ["BW-2207"] }, { carried: [words] }).orders[0]?.asked[0];
  if (asked === undefined) throw new Error("nothing is asked");
  const questions = [{ ...asked, number: 1, letter: 1, state: "open" as const }];
  const decides = [{ order: "BW-2207", key: asked.key }];
  const report = reportOf({ about: ["BW-2207"], decides }, { carried: [words], questions });
  expect([report.verdict, report.orders[0]?.carried]).toEqual(["pass", []]);
});

test("a question that its sender answers is asked no longer, of the sheet or of its order", () => {
  const sheet = deviceAt(2, { id: "2/1", legends: deviceAt(2, {}).legends });
  const misspelt: Sheet = {
    ...sheet,
    legends: sheet.legends.map((one) => (one.face === "1" ? { ...one, rows: ["SALONA", ""] } : one)),
  };
  const asking = reportOf({ sheets: [misspelt] });
  expect([asking.verdict, asking.sheets[0]?.verdict]).toEqual(["confirm", "confirm"]);
  const [question] = asking.orders[0]?.asked ?? [];
  const settles = [{ order: "BW-2207", key: question?.key ?? "" }];
  const answered = reportOf({ sheets: [misspelt], settles });
  expect([answered.verdict, answered.sheets[0]?.verdict, told(answered)]).toEqual([
    "pass",
    "pass",
    ["sheet-replaced"],
  ]);
});

test("nobody is asked to look at what a list orders before it is right", () => {
  const list = { file: "stations.csv", row: 3, cells: {}, unread: [] };
  const listed = (changes: Partial<Sheet>): Sheet => ({
    ...aloneDevice({ id: "2/1", order: "KX-1185" }),
    list,
    ...changes,
  });
  expect(told(reportOf({ sheets: [listed({})] }))).toEqual(["sheet-from-list"]);
  expect(told(reportOf({ sheets: [listed({ finish: "Mauve" })] }))).toEqual(["finish-not-made"]);
});

test("what was put elsewhere is told where one of our own people did it, and only then", () => {
  const old = earlier[1] as Sheet;
  const now: Sheet = { ...old, id: "2/1", mark: "S-105" };
  const note = { about: ["BW-2207"], by: "Rosa Imhoff", why: "" } as unknown as NonNullable<
    Submission["note"]
  >;
  expect(reportOf({ note }).moved).toBeUndefined();
  expect(reportOf({ moves: [{ old, now }] }).moved).toBeUndefined();
  const { moved, withdrawn } = reportOf({ note, moves: [{ old, now }] });
  expect(moved?.sheets.map((one) => [one.old.id, one.sheet.id])).toEqual([[old.id, "2/1"]]);
  expect(withdrawn).toEqual([{ order: "BW-2207", sheets: [old], leaves: "some" }]);
});

test("an order of which all sheets are withdrawn leaves nothing", () => {
  const { withdrawn, earlier: left } = reportOf({ withdraws: earlier.map(({ id }) => id) }, {}, other);
  expect(withdrawn.map(({ order, leaves, sheets }) => [order, leaves, sheets.length])).toEqual([
    ["BW-2207", "nothing", 5],
  ]);
  expect(left).toEqual(other);
});

test("a sheet that is kept aside is asked about, and its own faults are not told of the order", () => {
  const came = (day: number, dated: number) => ({
    receivedAt: new Date(`2026-11-0${day}T12:00:00Z`),
    dated: new Date(`2026-11-0${dated}T12:00:00Z`),
  });
  const newer = deviceAt(2, { id: "2/1", finish: "Mauve" });
  const orders = [ownOrder];
  const state = stateWith([], { orders, arrivals: new Map([["0", came(5, 5)]]) });
  const letter = { number: "2", came: came(6, 3) };
  const report = makeReport({ files: [], sheets: [newer], letter }, catalogue, state);
  const [revision] = changesOf(report, state, () => 1);
  expect(revision?.sheets).toContain("2/1");
  expect(revision?.problems.map(({ check }) => check)).toEqual(["which-sheet-counts"]);
  expect(report.sheets[0]?.problems.map(({ check }) => check)).toEqual(["finish-not-made"]);
});

test("a sheet that came behind the letter that cancels its place, and is dated before it, is asked about", () => {
  const cancelled = deviceAt(4, { id: "0/5" });
  const at = (day: number) => new Date(`2026-11-0${day}T12:00:00Z`);
  const came = { receivedAt: at(6), dated: at(3) };
  const arrivals = new Map([
    ["0", { receivedAt: at(2), dated: at(2) }],
    ["1", { receivedAt: at(5), dated: at(5) }],
  ]);
  const before = {
    sheets: earlier.filter(({ id }) => id !== cancelled.id),
    withdrawn: [{ sheet: cancelled, letter: 1 }],
  };
  const crossing = (sheet: Sheet, dated: Date) =>
    told(
      reportOf({ sheets: [sheet], letter: { number: "2", came: { ...came, dated } } }, before, [], {
        arrivals,
      }),
    );
  expect(crossing(deviceAt(4, { id: "2/1" }), at(3))).toEqual(["sheet-after-cancellation"]);
  expect(crossing(deviceAt(4, { id: "2/1" }), at(6))).toEqual([]);
  const elsewhere = aloneDevice({ id: "2/1" });
  expect(crossing(elsewhere, at(3))).not.toContain("sheet-after-cancellation");
  expect(crossing({ ...elsewhere, mark: "" }, at(3))).not.toContain("sheet-after-cancellation");
});

test("a manager is asked for his word where all else is right, and nowhere else", () => {
  const managing = [{ manager: { name: "Ana Reyes", address: "ana@brightwire.example" }, waits: true }];
  const asking = (came: Partial<Submission>, order: Partial<OrderState> = {}) => {
    const report = reportOf({ about: ["BW-2207"], managing, ...came }, order);
    return [report.verdict, told(report).filter((check) => check === "manager-word").length];
  };
  expect(asking({})).toEqual(["person", 1]);
  expect(asking({ managing: [] })).toEqual(["pass", 0]);
  expect(asking({ managing: managing.map((one) => ({ ...one, waits: false })) })).toEqual(["pass", 0]);
  expect(asking({ managing: managing.map((one) => ({ ...one, project: "Teasel Lane" })) })).toEqual([
    "pass",
    0,
  ]);
  expect(asking({}, { sheets: earlier.slice(0, 4) })).toEqual(["waiting", 0]);
  expect(asking({ held: true })).toEqual(["person", 0]);
  expect(asking({}, { carried: [words] })).toEqual(["person", 0]);
});

test("a sheet that came too late need not be mended", () => {
  const came = (day: number) => ({ receivedAt: new Date(`2026-11-0${day}T12:00:00Z`) });
  const report = reportOf(
    { sheets: [deviceAt(2, { id: "2/1", finish: "Mauve" })], letter: { number: "2", came: came(5) } },
    {},
    [],
    { arrivals: new Map([["0", came(6)]]) },
  );
  expect(report.late.map(({ old }) => old.id)).toEqual(["2/1"]);
  expect(numbers(report)).toEqual(["BW-2207"]);
  expect(report.sheets.map(({ verdict, problems }) => [verdict, problems])).toEqual([["pass", []]]);
});

test("a sheet that is still to come says what the others agree on and nobody questions", () => {
  const expecting = (...sheets: Sheet[]) =>
    reportOn(sheets).orders.flatMap(({ expected }) =>
      expected.map(({ says }) => [says.get("project"), says.get("finish"), says.get("gangs")]),
    );
  const three = completeOrder().slice(0, 4);
  const { project, finish = "", gangs } = plate();
  const agreed = [project, finish, String(gangs)];
  expect(expecting(...three)).toEqual([agreed]);
  // what is only noted is not questioned
  expect(expecting(...three.map((sheet, i) => (i === 1 ? without(sheet, "project") : sheet)))).toEqual([
    agreed,
  ]);
  const mauve = three.map((sheet): Sheet => ({ ...sheet, finish: "Mauve" }));
  expect(expecting(...mauve)).toEqual([[project, undefined, String(gangs)]]);
});

test("a sheet that is still to come has the order's number, unless that is asked about", () => {
  const expecting = (number: string, ...more: Sheet[]) =>
    reportOf({ about: [number] }, { sheets: earlier.slice(0, 4) }, more)
      .orders.filter(({ order }) => order.number === number)
      .flatMap(({ expected }) => expected.map(({ says }) => says.get("order")));
  expect(expecting("BW-2207")).toEqual(["BW-2207"]);
  const mistyped = completeOrder()
    .slice(0, 3)
    .map((sheet): Sheet => ({ ...sheet, id: `1${sheet.id.slice(1)}`, order: "BW-22O7", mark: "S-300" }));
  expect(expecting("BW-22O7", ...mistyped)).toEqual([undefined, undefined]);
});

test.each([
  ["Corrected S-110 attached.", {}, true],
  ["Corrected sheet attached.", {}, false],
  ["Corrected S-110 of KX-551 attached.", {}, false],
  ["New station S-110 attached.", {}, false],
  // The other order is asked whether this one is meant.
  ["Corrected S-110 attached.", { project: "Larkspur Library" }, false],
])("“%s” in a reply about an order, over a sheet of another one, %j", (words, more, isAsked) => {
  const old = aloneDevice({ id: "0/1" });
  const other = aloneDevice({ id: "2/1", order: "KX-551", project: "Elm Court", ...more });
  const announced = { words, tells: "mended" } as const;
  const told = { files: [], sheets: [other], reply: true, repliesTo: ["BW-2207"], announced };
  const { orders } = makeReport(told, catalogue, stateWith([old]));
  const asked = orders.find(({ order }) => order.number === "BW-2207")?.problems.map(({ check }) => check);
  expect(asked).toEqual(isAsked ? ["more-announced"] : undefined);
});

test.each<[string, "pass" | "fail" | "waiting", Partial<ReadFile>, readonly Sheet[], readonly Sheet[]]>([
  ["a complete order", "pass", { blank: "plate" }, completeOrder(), []],
  ["a device alone", "pass", { blank: "plate" }, [aloneDevice()], []],
  ["an order that lacks its plate", "fail", { blank: "plate" }, completeOrder().slice(1), []],
  ["another order that lacks its plate", "fail", { blank: "plate" }, [aloneDevice()], [deviceOf("KX-1185")]],
  ["a sheet at fault", "fail", { blank: "plate" }, [aloneDevice({ finish: "Mauve" })], []],
  ["nothing", "fail", { blank: "plate" }, [], []],
  ["a complete order, where it is a device's", "fail", { blank: "device" }, completeOrder(), []],
  ["a complete order, where it is named as a sheet", "fail", {}, completeOrder(), []],
])("a blank plate sheet beside %s: %s", (_, verdict, blank, sheets, before) => {
  const file: ReadFile = { id: "1/99", file: "plate-26c.pdf", kind: "saved-blank", ...blank };
  const report = makeReport({ files: [file], sheets }, catalogue, stateWith(sentEarlier(before)));
  expect(report.verdict).toBe(verdict);
  expect(everyProblem(report).some(({ check }) => check === "saved-blank")).toBe(true);
});

function deviceOf(order: string): Sheet {
  return deviceAt(1, { order, mark: "Q-1", project: "Quarry Street School" });
}

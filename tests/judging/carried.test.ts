import { expect, test } from "vitest";
import { letterStillOpen } from "../../src/checks/order/letter-still-open.ts";
import { subject } from "../../src/checks/sample.ts";
import { decidedIn, settledBy } from "../../src/judging/carried.ts";
import type { OrderState } from "../../src/judging/state.ts";
import type { Carried } from "../../src/trade/carried.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { sentEarlier } from "../make/report.ts";
import { aloneDevice, deviceAt, plate } from "../make/sample.ts";

const file = (text: string): Carried => ({ letter: "0", what: "file", text });
const open = (sheets: readonly Sheet[], ...files: string[]): OrderState => ({
  number: sheets[0]?.order ?? "BW-2207",
  sheets,
  carried: files.map(file),
  questions: [],
});
const nothing = { replaced: [], late: [] };
/** S-104 lacks position 4. */
const lacksFour = sentEarlier([plate(), deviceAt(1), deviceAt(2), deviceAt(3)]);
const four = deviceAt(4, { id: "2/1", file: "new.pdf" });
const fourthNamed = (name: string): Sheet => ({ ...four, file: name });
const ofList: Sheet = { ...four, list: { file: "again.csv", row: 3, cells: {}, unread: [] } };

test.each<[string, Sheet, string, boolean]>([
  ["of its name", fourthNamed("keypad.pdf"), "keypad.pdf", true],
  ["of its name, which we had numbered", fourthNamed("scan.pdf"), "scan (2).pdf", true],
  ["of the place that its name tells", four, "S-104 pos 4 scan.pdf", true],
  ["of the place that its name tells, numbered", four, "s-104 pos 4 (2).pdf", true],
  ["of another place than its name tells", { ...four, mark: "T-1" }, "S-104 pos 4 scan.pdf", false],
  ["under a name of the same place", { ...four, mark: "S-9", file: "T-7 new.pdf" }, "T-7 scan.pdf", true],
  ["of a place that was lacking", four, "scan.pdf", true],
  ["of a place that was lacking, whose name tells it", four, "left position 4.pdf", true],
  ["of a place that was lacking, whose name tells another", four, "left position 3.pdf", false],
  ["of a place that was lacking, with another mark in front", four, "S-105.pdf", false],
  ["of a place that was lacking, with another mark behind other words", four, "hall S-105.pdf", true],
  ["of a place that was lacking, with a long word and a number in front", four, "SCAN-105.pdf", true],
  ["of a place that was lacking, with a long number in front", four, "IMG-20261.pdf", true],
  ["of a place that was not lacking", deviceAt(3, { id: "2/1", file: "new.pdf" }), "scan.pdf", false],
  ["for an order of another number", { ...four, order: "KX-1185" }, "scan.pdf", false],
  ["of its name, for another order", { ...fourthNamed("device.pdf"), order: "KX-1185" }, "device.pdf", false],
  [
    "of the place that its name tells, for another order",
    { ...four, order: "KX-1185" },
    "S-104 pos 4.pdf",
    false,
  ],
  ["from a list, for another order", { ...ofList, order: "KX-1185" }, "stations.xlsx", false],
  [
    "of a plate that its name tells",
    { ...plate(), id: "2/1", file: "new.pdf" },
    "S-104 plate scan.pdf",
    true,
  ],
  [
    "of a device alone that its name tells",
    { ...aloneDevice(), id: "2/1", file: "a.pdf" },
    "S-110 scan.pdf",
    true,
  ],
  ["under a name without a number", { ...four, mark: "T-1", file: "lobby.pdf" }, "lobby scan.pdf", false],
  ["from a list, where a list was not taken", ofList, "stations.xlsx", true],
  ["from a list, where a scan was not read", { ...ofList, mark: "T-1" }, "scan.pdf", false],
  ["as a sheet, where a list was not taken", { ...four, mark: "T-1" }, "stations.xlsx", false],
])("a sheet %s", (_what, sheet, name, settles) => {
  expect(settledBy([sheet], nothing, [open(lacksFour, name)])(file(name))).toBe(settles);
});

test("a sheet that took the place of another settles no file by its name, and none that was lacking", () => {
  const gave = { replaced: [{ old: deviceAt(4), now: four, how: "place" as const }], late: [] };
  expect(settledBy([four], gave, [open(lacksFour, "new.pdf")])(file("new.pdf"))).toBe(false);
  expect(settledBy([four], gave, [open(lacksFour, "S-104 pos 4.pdf")])(file("S-104 pos 4.pdf"))).toBe(true);
});

test("a sheet that came again as it was settles no file that came behind it", () => {
  const [old, now] = [deviceAt(4, { id: "1/9" }), deviceAt(4, { id: "3/1", file: "S-104 pos 4.pdf" })];
  const settles = (letter: string, before: Sheet): boolean => {
    const name: Carried = { letter, what: "file", text: "S-104 pos 4 corrected.pdf" };
    const order = { ...open([...lacksFour, before]), carried: [name] };
    return settledBy([now], { replaced: [{ old: before, now, how: "place" }], late: [] }, [order])(name);
  };
  expect(settles("2", old)).toBe(false);
  expect(settles("2", { ...old, finish: "other" })).toBe(true);
  // A scan beside the sheet was of the sheet.
  expect(settles("1", old)).toBe(true);
});

test("one sheet settles one file, the one that it is named after before any that its order has open", () => {
  const two = settledBy([fourthNamed("b.pdf")], nothing, [open(lacksFour, "a.pdf", "b.pdf")]);
  expect(["a.pdf", "b.pdf"].map((name) => two(file(name)))).toEqual([false, true]);
});

test("a sheet settles no words, though they be the name of a file that it settles", () => {
  const is = settledBy([fourthNamed("a.pdf")], nothing, [open(lacksFour, "a.pdf")]);
  expect([is(file("a.pdf")), is({ ...file("a.pdf"), what: "words" })]).toEqual([true, false]);
});

test("a sheet settles a file of its own order, not one of another that lacks something too", () => {
  const other = lacksFour.map((sheet) => ({ ...sheet, order: "KX-1185" }));
  const is = settledBy([four], nothing, [open(other, "theirs.pdf"), open(lacksFour, "ours.pdf")]);
  expect(["theirs.pdf", "ours.pdf"].map((name) => is(file(name)))).toEqual([false, true]);
});

test("what one of our own people decides is dealt with in the order of his decision alone", () => {
  const words: Carried = { letter: "1", what: "words", text: "Do not cut yet." };
  const [problem] = letterStillOpen.find({ ...subject([plate()]), carried: [words] }, catalogue);
  if (problem === undefined) throw new Error("no question");
  const question = { key: "k", number: 1, letter: 1, state: "open" as const, problem };
  const order: OrderState = { number: "BW-2207", sheets: [], carried: [words], questions: [question] };
  expect(decidedIn(order, [{ order: "bw 2207", key: "k" }])(words)).toBe(true);
  expect(decidedIn(order, [{ order: "KX-1185", key: "k" }])(words)).toBe(false);
  expect(decidedIn(order, [{ order: "BW-2207", key: "other" }])(words)).toBe(false);
  expect(decidedIn(order, [{ order: "BW-2207", key: "k" }])({ ...words, text: "Call me." })).toBe(false);
  expect(decidedIn(order, [{ order: "BW-2207", key: "k" }])({ ...words, what: "file" })).toBe(false);
});

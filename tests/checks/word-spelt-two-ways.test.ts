import { expect, test } from "vitest";
import { wordSpeltTwoWays } from "../../src/checks/order/word-spelt-two-ways.ts";
import { legend, subject } from "../../src/checks/sample.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { aloneDevice } from "../make/sample.ts";

const told = (...sheets: Sheet[]): string[] =>
  [...wordSpeltTwoWays.find(subject(sheets), catalogue)].map(({ wording, facts: { typed, other }, spots }) =>
    [wording, typed, "and", other, "on", [...new Set(spots.map(({ file }) => file))]].map(String).join(" "),
  );
/** Devices that stand alone, each with these rows on its plate. */
const devices = (...rows: string[]): Sheet[] =>
  rows.map((row, i) =>
    aloneDevice({ id: `1/${i + 1}`, mark: `T-${i + 1}`, legends: [legend("plate", ...row.split("/"))] }),
  );

test.each([
  ["a letter left out", ["GRAVNLOW", "GRAVENLOW"], "GRAVNLOW and GRAVENLOW on 1/1,1/2"],
  ["a letter left out of two words in one", ["TALKBACK", "TALKBCK"], "TALKBCK and TALKBACK on 1/2,1/1"],
  ["letters exchanged", ["GRAVENLOW", "GARVENLOW"], "GRAVENLOW and GARVENLOW on 1/1,1/2"],
  ["another case", ["Gravnlow", "GRAVENLOW"], "Gravnlow and GRAVENLOW on 1/1,1/2"],
  ["another row", ["HALL/GRAVENLOW", "GRAVNLOW/HALL"], "GRAVENLOW and GRAVNLOW on 1/1,1/2"],
  ["a name of a doctor", ["DR OYELLAS", "DR OYELAS"], "OYELLAS and OYELAS on 1/1,1/2"],
  ["six letters", ["QUOVEN", "QUOBEN"], "QUOBEN and QUOVEN on 1/2,1/1"],
])("two ways are told of: %s", (_what, rows, says) => {
  expect(told(...devices(...rows))).toEqual([`legends ${says}`]);
});

test.each([
  ["they are the same", "GRAVENLOW", "Gravenlow"],
  ["one is several of the other", "GRAVENLOW", "GRAVENLOWS"],
  ["they differ at their ends", "ZWINDLEKOP", "ZWINDLEKOT"],
  ["they are two letters apart", "GRAVENLOW", "GRVNLOW"],
  ["one is short", "QUOVEN", "QUVEN"],
  ["both are words", "KITCHEN", "KITCHENS"],
  ["both are known short forms", "CONF RM", "CONF RMS"],
  ["a name is near a word", "DR KITCHEM", "KITCHEN"],
])("nothing is told where %s", (_why, ...rows) => {
  expect(told(...devices(...rows))).toEqual([]);
});

test("a pair is told of once, and a third way as well", () => {
  expect(told(...devices("GRAVNLOW", "GRAVENLOW", "GRAVNLOW"))).toEqual([
    "legends GRAVNLOW and GRAVENLOW on 1/1,1/3,1/2",
  ]);
  expect(told(...devices("GRAVENLOW", "GRAVNLOW", "GRAVENLOOW"))).toEqual([
    "legends GRAVENLOW and GRAVNLOW on 1/1,1/2",
    "legends GRAVENLOW and GRAVENLOOW on 1/1,1/3",
  ]);
});

test("the project's name counts as a way where no legend has it", () => {
  const [one] = devices("GRAVNLOW");
  const of = (project: string, ...more: Sheet[]): string[] =>
    told(...[one, ...more].flatMap((sheet) => (sheet === undefined ? [] : { ...sheet, project })));
  expect(of("Gravenlow House")).toEqual(["project GRAVNLOW and GRAVENLOW on 1/1"]);
  expect(of("Larkspur Library")).toEqual([]);
  const [, other] = devices("", "GRAVENLOW");
  expect(other === undefined ? [] : of("Gravenlow House", other)).toEqual([
    "legends GRAVNLOW and GRAVENLOW on 1/1,1/2",
  ]);
});

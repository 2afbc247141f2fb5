import { expect, test } from "vitest";
import { numberLeftOut } from "../../src/checks/order/number-left-out.ts";
import { legend, subject } from "../../src/checks/sample.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { aloneDevice, deviceAt, plate } from "../make/sample.ts";

/** Which legend stands twice, and which one on none. */
const told = (...sheets: Sheet[]): string[] =>
  [...numberLeftOut.find(subject(sheets), catalogue)].map(({ facts: { typed, missing, files } }) =>
    [typed, "for", missing, "on", files].map(String).join(" "),
  );
/** Devices that stand alone, each with one of these legends on its plate, row by row. */
const rooms = (...legends: string[]): Sheet[] =>
  legends.map((text, i) =>
    aloneDevice({
      id: `1/${i + 1}`,
      mark: `T-${i + 1}`,
      file: `${i + 1}`,
      legends: [legend("plate", ...text.split("/"))],
    }),
  );

test.each([
  [["EXAM 1", "EXAM 2", "EXAM 2", "EXAM 4"], "EXAM 2 for EXAM 3 on 2,3"],
  [["EXAM 4", "EXAM 2", "EXAM 1", "EXAM 2"], "EXAM 2 for EXAM 3 on 2,4"],
  [["EXAM 1", "EXAM 1", "EXAM 3"], "EXAM 1 for EXAM 2 on 1,2"],
  [["EXAM 3", "EXAM 3", "EXAM 1"], "EXAM 3 for EXAM 2 on 1,2"],
  [["Exam/1", "EXAM 1", "exam  3"], "Exam 1 for Exam 2 on 1,2"],
  [["EXAM 09", "EXAM 09", "EXAM 11"], "EXAM 09 for EXAM 10 on 1,2"],
  [["EXAM 01", "EXAM 01", "EXAM 03"], "EXAM 01 for EXAM 02 on 1,2"],
  [["P1", "P1", "P3"], "P1 for P2 on 1,2"],
  [["ROOM 1201", "ROOM 1202", "ROOM 1202", "ROOM 1204"], "ROOM 1202 for ROOM 1203 on 2,3"],
  [["SUITE 2-1", "SUITE 2-1", "SUITE 2-3"], "SUITE 2-1 for SUITE 2-2 on 1,2"],
])("of %j one is told: %s", (legends, says) => {
  expect(told(...rooms(...legends))).toEqual([says]);
});

test.each([
  ["none is left out", "EXAM 1", "EXAM 2", "EXAM 2", "EXAM 3"],
  ["none stands twice", "EXAM 1", "EXAM 2", "EXAM 4"],
  ["two are left out", "EXAM 1", "EXAM 1", "EXAM 4"],
  ["two stand twice", "EXAM 1", "EXAM 1", "EXAM 3", "EXAM 3"],
  ["one stands three times", "EXAM 1", "EXAM 1", "EXAM 1", "EXAM 3"],
  ["they are of two series", "EXAM 1", "EXAM 1", "PREP 3"],
  ["numbers of five digits are none of rooms", "ROOM 12011", "ROOM 12011", "ROOM 12013"],
  ["there is no name", "1", "1", "3"],
  ["something stands behind the number", "1 NORTH", "1 NORTH", "3 NORTH"],
])("nothing is told where %s", (_why, ...legends) => {
  expect(told(...rooms(...legends))).toEqual([]);
});

test("names are looked for above gangs and on plates of devices alone, where they are cut", () => {
  const named = (...names: string[]): Sheet =>
    plate({ legends: names.map((name, i) => legend(`${i + 1}` as "1", name)) });
  expect(told(named("EXAM 1", "EXAM 1", "EXAM 3"))).toEqual([
    "EXAM 1 for EXAM 2 on S-104 plate.pdf,S-104 plate.pdf",
  ]);
  const plain = named("EXAM 1", "EXAM 1", "EXAM 3");
  const legends = plain.legends.map((one, i) => (i === 1 ? { ...one, plain: true } : one));
  expect(told({ ...plain, legends })).toEqual([]);
  const buttons = [legend("1", "ZONE 1"), legend("2", "ZONE 1"), legend("3", "ZONE 3")];
  expect(told(deviceAt(1, { legends: buttons }))).toEqual([]);
});

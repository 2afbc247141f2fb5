import { expect, test } from "vitest";
import { contradictedIn } from "../../src/checks/named-goods.ts";
import { subject } from "../../src/checks/sample.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { aloneDevice, deviceAt, plate } from "../make/sample.ts";

/** The fields that files' names contradict, and what the names say. */
const told = (...sheets: Sheet[]): string[] =>
  contradictedIn(subject(sheets).order, [], catalogue).map(({ place, told }) => `${place} ${told}`);

test.each([
  ["S-104 3-gang plate.pdf", ["gangs 3 gangs"]],
  ["three gang.pdf", ["gangs 3 gangs"]],
  ["S-104 single gang.pdf", ["gangs 1 gangs"]],
  ["S-104_Slate.pdf", ["finish Slate"]],
  ["BW-2208 S-104.pdf", ["order BW-2208"]],
  ["bw 2208.pdf", ["order bw 2208"]],
  ["S-104 4-gang Oat.pdf", []],
  ["S-104 slate or chalk.pdf", []],
  ["next to 3-gang plate.pdf", []],
  ["BW-2207 was BW-2208.pdf", []],
  ["BW-22080.pdf", []],
  ["PO-2208.pdf", []],
  ["S-104 gang 3.pdf", []],
])("on plate S-104 of four gangs in Oat, “%s” contradicts: %j", (file, says) => {
  expect(told(plate({ file }))).toEqual(says);
});

test("what stands alone has one gang", () => {
  expect(told(aloneDevice({ file: "S-110 3-gang.pdf" }))).toEqual(["standing 3 gangs"]);
  expect(told(aloneDevice({ file: "S-110 1 gang.pdf" }))).toEqual([]);
  expect(told(deviceAt(2, { file: "single gang.pdf" }))).toEqual([]);
});

test("a finish that any sheet of the order names elsewhere may be a room's name", () => {
  const file = "S-110 Slate room.pdf";
  expect(told(aloneDevice({ file }))).toEqual(["finish Slate"]);
  expect(told(aloneDevice({ file }), plate({ project: "Slate Hall" }))).toEqual([]);
  expect(told(aloneDevice({ file }, { plate: ["SLATE", "ROOM"] }))).toEqual([]);
});

test("left is not the last position, nor right the first", () => {
  const two = (position: number, file: string): Sheet => deviceAt(position, { gangs: 2, file });
  expect(told(two(2, "S-104 left.pdf"))).toEqual(["position left"]);
  expect(told(two(1, "S-104 Right one.pdf"))).toEqual(["position right"]);
  expect(told(two(1, "S-104 left.pdf"), two(2, "S-104 right.pdf"))).toEqual([]);
  // the station is on the left
  expect(told(two(1, "lobby left.pdf"), two(2, "foyer left.pdf"))).toEqual([]);
  expect(told(two(2, "S-104 left pos 2.pdf"))).toEqual([]);
  expect(told(two(2, "left of the door.pdf"))).toEqual([]);
  expect(told(deviceAt(3, { file: "S-104 right.pdf" }))).toEqual([]);
  expect(told(aloneDevice({ file: "S-110 left.pdf" }))).toEqual([]);
});

test("a mark that looks like an order number, and what a list is called, are none", () => {
  expect(told(plate({ mark: "BW-104", file: "BW-2208.pdf" }))).toEqual([]);
  const list = { file: "stations.csv", row: 3, cells: {}, unread: [] };
  expect(told(plate({ list, file: "3-gang.pdf" }))).toEqual([]);
});

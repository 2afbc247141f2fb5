import { expect, test } from "vitest";
import { fileNameContradicts } from "../../src/checks/order/file-name-contradicts.ts";
import { subject } from "../../src/checks/sample.ts";
import type { DeviceSheet, Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { aloneDevice } from "../make/sample.ts";

/** A device that stands alone, by its file's name and what its plate says. */
const room = (mark: string, file: string, legend: string, changes: Partial<DeviceSheet> = {}): Sheet =>
  aloneDevice({ id: `1/${mark}`, mark: `S-${mark}`, file, ...changes }, { plate: legend.split("/") });
/** The files that are called after another room than their plates. */
const told = (...sheets: Sheet[]): string[] =>
  [...fileNameContradicts.find(subject(sheets), catalogue)].flatMap(({ wording, facts }) =>
    wording === "room" ? [`${String(facts["file"])} ≠ ${String(facts["legend"])}`] : [],
  );
const kitchen = room("111", "S-111 Kitchen.pdf", "KITCHEN");

test.each([
  ["S-112 Pantry.pdf", "MAIL ROOM"],
  ["S-112_pantry_rev_2.pdf", "MAIL/ROOM"],
  ["Lobby.pdf", "KITCHEN"],
  ["S-112 Main Lobby.pdf", "KITCHEN"],
])("beside a file that is called after its plate, one called %s is not after %s", (file, legend) => {
  expect(told(kitchen, room("112", file, legend))).toEqual([`${file} ≠ ${legend.replace("/", " ")}`]);
});

test.each([
  ["the name is the plate's", "S-112 Lobby.pdf", "LOBBY"],
  ["the name has a word of the plate's", "S-112 Main.pdf", "MAIN LOBBY"],
  ["a word of it is short for one of the plate's", "S-112 Kit Lobby.pdf", "KITCHEN"],
  ["the plate has it short", "S-112 Bedroom.pdf", "BR"],
  ["it is of several", "S-112 Offices.pdf", "OFFICE"],
  ["the name names no room", "S-112 device sheet final.pdf", "LOBBY"],
  ["the plate says nothing", "S-112 Lobby.pdf", ""],
  ["a word of the name is none of legends", "S-112 Zyqx.pdf", "LOBBY"],
  ["a word of the plate is none of legends", "S-112 Lobby.pdf", "ZYQX"],
  ["it is the project's", "S-112 Larkspur Lobby.pdf", "MAIL ROOM"],
  ["the room is that of another file", "S-112 Kitchen.pdf", "LOBBY"],
  ["a number follows the word", "S-112 Lobby2.pdf", "PANTRY"],
])("nothing is told where %s", (_why, file, legend) => {
  expect(told(kitchen, room("112", file, legend))).toEqual([]);
});

test("short words are alike where the letters of one stand in the other, from the first on", () => {
  const says = (name: string, legend: string) => told(kitchen, room("112", `S-112 ${name}.pdf`, legend));
  expect(says("Lab", "LOBBY")).toHaveLength(1);
  expect(says("Bar", "LIBRARY")).toHaveLength(1);
  expect(says("Lobby", "LBY")).toEqual([]);
});

test("a name is taken for a room's only where files are called after rooms", () => {
  const pantry = room("112", "S-112 Pantry.pdf", "MAIL ROOM");
  expect(told(pantry)).toEqual([]);
  expect(told(room("111", "S-111.pdf", "KITCHEN"), pantry)).toEqual([]);
  expect(told(room("111", "S-111 Lobby.pdf", "KITCHEN"), pantry)).toEqual([]);
  // the other plate says it
  expect(told(room("111", "S-111.pdf", "PANTRY"), pantry)).toEqual(["S-112 Pantry.pdf ≠ MAIL ROOM"]);
  // what was made of a list has its name from us
  const list = { file: "stations.csv", row: 3, cells: {}, unread: [] };
  expect(told(kitchen, room("112", "S-112 Pantry.pdf", "MAIL ROOM", { list }))).toEqual([]);
});

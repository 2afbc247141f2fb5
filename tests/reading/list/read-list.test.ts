import { expect, test } from "vitest";
import { helpTitle, type Table } from "../../../src/reading/list/list-facts.ts";
import { type ListForm, listForm } from "../../../src/reading/list/list-form.ts";
import { readList } from "../../../src/reading/list/read-list.ts";
import { maker } from "../../make/config.ts";

const form = listForm(maker.editions) as ListForm;
const printed = { beside: ["such as FM-80", "—"], help: [helpTitle, "Fill in one row a device.", "…"] };

/** Rows of texts as a table; an empty text is an empty cell. */
const table = (name: string, ...rows: string[][]): Table => ({
  name,
  rows: rows.map((row, y) =>
    row.flatMap((text, column) => (text === "" ? [] : [{ column, row: y + 1, text }])),
  ),
});
const read = (...tables: Table[]) => readList({ kind: "list", tables, more: [] }, form, printed);
const faults = (...rows: string[][]) =>
  read(table("", ["Station list"], ...rows)).faults.map(({ what, where, text }) => [what, where, text]);
const headings = ["Station mark", "Layout", "Finish"];
const device = ["B-1", "D2", "Chalk"];

test("a list is its head, and a device a row", () => {
  const list = read(table("", ["Station list"], ["Order number", "FM-80"], [], headings, device));
  expect([...list.head].map(([{ place }, { text, at }]) => [place, text, at])).toEqual([
    ["order", "FM-80", "B2"],
  ]);
  expect(
    list.devices.map(({ row, said }) => [row, ...[...said.values()].map(({ text, at }) => `${at} ${text}`)]),
  ).toEqual([[5, "A5 B-1", "B5 D2", "C5 Chalk"]]);
  expect([list.faults, list.isOurs]).toEqual([[], true]);
});

test.each([
  ["a title over several cells", { what: "merged", where: "S!A1:D1" }, []],
  ["a value of the head over several cells", { what: "merged", where: "S!B2:D2" }, []],
  ["two cells of the head of which one is covered", { what: "merged", where: "S!A2:B2" }, ["merged"]],
  ["headings", { what: "merged", where: "S!A3:B3" }, ["merged"]],
  ["a mark over two rows", { what: "merged", where: "S!A4:A5" }, ["merged"]],
  ["a header that says what cells say", { what: "header", where: "S", text: "Order FM-80" }, []],
  ["a header that says more", { what: "header", where: "S", text: "Hold FM-80" }, ["header"]],
] as const)("%s: %#", (_, fault, left) => {
  const tables = [table("S", ["Station list"], ["Order number", "FM-80"], headings, device)];
  const list = readList({ kind: "list", tables, more: [fault] }, form, printed);
  expect(list.faults.map(({ what }) => what)).toEqual(left);
});

test("an empty entry is told with the cell in which one would fill it in", () => {
  const list = read(table("Sheet1", ["Station list"], ["Order number"], headings, ["B-1"]));
  expect([...list.head.values()]).toEqual([{ text: "", at: "Sheet1!B2" }]);
  expect([...(list.devices[0]?.said.values() ?? [])].at(-1)).toEqual({ text: "", at: "C4" });
});

test.each<[string, string[][], unknown[]]>([
  ["what is printed beside the head", [["Order number", "FM-80", "Such as FM-80."], headings, device], []],
  [
    "other words beside the head",
    [["Order number", "FM-80", "urgent"], headings, device],
    [["unplaced", "C2", "urgent"]],
  ],
  ["signs beside the head", [["Order number", "FM-80", "?!"], headings, device], [["unplaced", "C2", "?!"]]],
  [
    "a line that is none of the head",
    [["Colour", "red"], headings, device],
    [
      ["unplaced", "A2", "Colour"],
      ["unplaced", "B2", "red"],
    ],
  ],
  [
    "a line of the head twice",
    [["Order number", "A"], ["Order number", "B"], headings, device],
    [["twice", "B3", "Order number"]],
  ],
  ["a heading that is none", [[...headings, "Colour"], device], [["unplaced", "D2", "Colour"]]],
  ["a heading twice", [[...headings, "Finish"], device], [["twice", "D2", "Finish"]]],
  ["a cell under no heading", [headings, [...device, "red"]], [["unplaced", "D3", "red"]]],
  [
    "two headings, which are too few",
    [headings.slice(0, 2)],
    [
      ["unplaced", "A2", "Station mark"],
      ["unplaced", "B2", "Layout"],
    ],
  ],
  [
    "a label of the head that stands elsewhere than first",
    [["", "Order number", "FM-80"], headings, device],
    [
      ["unplaced", "B2", "Order number"],
      ["unplaced", "C2", "FM-80"],
    ],
  ],
  [
    "a heading twice, at the first that is one again",
    [["Notes", ...headings, "Layout", "Notes"], device],
    [["twice", "E2", "Layout"]],
  ],
  ["neither a device nor anything else", [], [["empty", "", undefined]]],
  ["no device", [["Order number", "FM-80"], headings], [["empty", "", undefined]]],
])("%s", (_, rows, expected) => {
  expect(faults(...rows)).toEqual(expected);
});

test("the title again, and what is printed beside it, are no fault; other words beside it are", () => {
  const beside = (words: string) =>
    read(table("", ["Station list", words], headings, device)).faults.map(({ where }) => where);
  expect([beside("—such as FM-80"), beside("urgent")]).toEqual([[], ["B1"]]);
});

test("the sheet that explains may hold what is printed there, and nothing else", () => {
  const help = (text: string) =>
    read(table("List", ["Station list"], headings, device), table("Help", [helpTitle], [text])).faults.map(
      ({ where, text: said }) => [where, said],
    );
  expect(help("fill in one row a device")).toEqual([]);
  expect(help("B-1")).toEqual([["Help!A2", "B-1"]]);
  expect(help("?")).toEqual([["Help!A2", "?"]]);
});

test("a table with nothing but the title is none of ours", () => {
  expect(read(table("", ["Station list"])).isOurs).toBe(false);
  expect(read(table("", ["Station list"], ["Order number", "x"])).isOurs).toBe(true);
  expect(read(table("", ["Station list"], headings)).isOurs).toBe(true);
});

test("each table has headings of its own, and their devices are of one list", () => {
  const one = table("One", ["Station list"], headings, device);
  const two = table("Two", ["Finish", "Notes", "Station mark"], ["Chalk", "", "B-2"]);
  expect(read(one, two).devices.map(({ said }) => [...said.values()].map(({ text }) => text))).toEqual([
    device,
    ["Chalk", "", "B-2"],
  ]);
  expect(read(one, table("Two", device)).faults.map(({ where }) => where)).toEqual([
    "Two!A1",
    "Two!B1",
    "Two!C1",
  ]);
});

test("what is odd about a cell is said with it, and what its file was faulted for stays", () => {
  const { rows } = table("", ["Station list"], ["Order number", "FM-80"], headings, device);
  const odd = rows.map((row) => row.map((cell) => ({ ...cell, odd: "struck" as const })));
  const fault = { what: "comment", where: "xl/comments1.xml" } as const;
  const list = readList({ kind: "list", tables: [{ name: "", rows: odd }], more: [fault] }, form, printed);
  expect([...list.head.values()]).toEqual([{ text: "FM-80", at: "B2", odd: "struck" }]);
  expect([...(list.devices[0]?.said.values() ?? [])].map((said) => said.odd)).toEqual([
    "struck",
    "struck",
    "struck",
  ]);
  expect(list.faults).toEqual([fault]);
});

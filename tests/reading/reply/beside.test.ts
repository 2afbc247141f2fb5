import { expect, test } from "vitest";
import { type Beside, statementsBeside } from "../../../src/reading/reply/beside.ts";
import type { ReadFile } from "../../../src/trade/attachment.ts";
import { catalogue } from "../../make/config.ts";
import { device as deviceSheet, plate as plateSheet } from "../../make/sample.ts";

const [device, plate] = [deviceSheet(), plateSheet()];

const bare: Beside = {
  files: [],
  texts: [],
  sheets: [],
  earlier: [],
  catalogue,
  furniture: new Set(),
  quoted: [],
  understood: new Set(),
};

function said(text: string, beside: Partial<Beside> = {}, subject = ""): string[] {
  const letter = {
    from: "dana@whitlock.example",
    fromName: "Dana Whitlock",
    subject,
    references: [],
    text,
    attachments: [],
  };
  return statementsBeside(letter, { ...bare, ...beside }).map((one) =>
    one.kind === "counts" ? "counts" : one.kind === "said" ? `${one.where}: ${one.words}` : one.kind,
  );
}

const file = (more: Partial<ReadFile>): ReadFile => ({ id: "1/1", file: "a.pdf", kind: "sheet", ...more });

test.each<[string, Partial<ReadFile>, string[]]>([
  ["its name", { file: "do not engrave.pdf" }, ["name: do not engrave.pdf"]],
  [
    "the name it came with",
    { file: "do not engrave (2).pdf", named: "do not engrave.pdf" },
    ["name: do not engrave.pdf"],
  ],
  ["its folder", { folder: "do not engrave" }, ["name: do not engrave/a.pdf"]],
  ["no name", {}, []],
  ["a folder that says nothing", { folder: "lobby" }, []],
  ["a sketch that is not read", { file: "sketch 2.png", kind: "small-picture" }, ["name: sketch 2.png"]],
  ["a sketch that a person looks at", { file: "sketch 2.png", kind: "picture" }, []],
  ["a marked-up drawing", { file: "A-201_markup.pdf", kind: "no-form" }, ["name: A-201_markup.pdf"]],
  ["a picture of the site", { file: "lobby wall.jpg", kind: "picture" }, []],
  ["a sheet that is called so, and is read", { file: "sketch room.pdf" }, []],
  ["the name of a logo", { file: "do not engrave.pdf", kind: "decoration" }, []],
])("a file says something by %s", (_, more, words) => {
  expect(said("Hello", { files: [file(more)] })).toEqual(words);
});

test("a small picture that is named after a station may be one more sheet, and one that a camera has numbered is not", () => {
  const named = (name: string, kind: ReadFile["kind"] = "small-picture"): string[] =>
    said("Hello", { sheets: [{ ...device, mark: "S-104" }], files: [file({ file: name, kind })] });
  expect(named("S-105.png")).toEqual(["name: S-105.png"]);
  expect(named("S-105.png", "picture")).toEqual([]);
  expect(named("s104 lobby.jpg")).toEqual(["name: s104 lobby.jpg"]);
  expect(named("IMG_2034.jpg")).toEqual([]);
  expect(named("S-105.pdf", "sheet")).toEqual([]);
  expect(named("view S-105.png")).toEqual([]);
  expect(named("S-10500.png")).toEqual([]);
  const marked = (mark: string, name: string): string[] =>
    said("Hello", { sheets: [{ ...device, mark }], files: [file({ file: name, kind: "small-picture" })] });
  expect(marked("SAL-104", "SAL-105.png")).toEqual(["name: SAL-105.png"]);
  expect(marked("SALA-104", "SALA-105.png")).toEqual([]);
  expect(marked("LOBBY", "IMG_2034.jpg")).toEqual([]);
});

test("the name of a text is told by its words alone, if they say something", () => {
  const name = "do not engrave.txt";
  const files = [file({ file: name, kind: "text" })];
  expect(said("Hello", { files, texts: [{ file: name, text: "Make it red." }] })).toEqual([
    "file: Make it red.",
  ]);
  expect(said("Hello", { files, texts: [{ file: name, text: "Hello" }] })).toEqual([`name: ${name}`]);
});

test("the same words are told once, wherever they stand", () => {
  const texts = [{ file: "a.txt", text: "make it RED" }];
  expect(said("Make it red.", { texts })).toHaveLength(1);
});

test("what the sheets say too needs nobody: their order, project, mark, finish and people", () => {
  const sheets = [device];
  const words = [device.order, device.project, device.mark, device.contact.name].join(", ");
  expect(said(words, { sheets })).toEqual([]);
  expect(said(words, { earlier: sheets })).toEqual([]);
  const finish = catalogue.finishes.find(({ code }) => code === device.finish)?.name ?? "";
  expect(said(`In ${finish} as always.`, { sheets })).toEqual([]);
  expect(said(`In ${finish} as always.`, { sheets: [] })).toHaveLength(1);
  const other = catalogue.finishes.find(({ code }) => code !== device.finish)?.code ?? "";
  expect(said(`In ${finish} as always.`, { sheets: [device, { ...device, finish: other }] })).toHaveLength(1);
});

test("counts that contradict each other are for a person", () => {
  const sheets = [device, plate];
  expect(said("12 devices attached.", { sheets })).toEqual(["counts"]);
  const texts = [{ file: "list.csv", text: "Item,Qty\ndevices,14" }];
  expect(said("12 devices attached.", { sheets, texts })).toEqual([
    "text: 12 devices attached.",
    expect.stringContaining("file: "),
  ]);
  expect(said("14 devices attached.", { sheets, texts })).toEqual(["counts", "counts"]);
});

test("an unread file may be the sheet that makes a count right, and neither a sheet nor a list is one", () => {
  const both = "Sheets for both plates attached.";
  const [sheet, list] = [file({}), file({ id: "1/2", file: "b.csv", kind: "list" })];
  const scan = file({ id: "1/3", file: "scan.pdf", kind: "no-form" });
  expect(said(both, { sheets: [plate], files: [sheet] })).toEqual([`text: ${both}`]);
  expect(said(both, { sheets: [plate], files: [sheet, list] })).toEqual([`text: ${both}`]);
  expect(said(both, { sheets: [plate], files: [sheet, scan] })).toEqual([]);
  const filledIn = plateSheet({ list: { file: "b.csv", row: 2, cells: {}, unread: [] } });
  expect(said(both, { sheets: [filledIn], files: [list, scan] })).toEqual([]);
  expect(said(both, { sheets: [filledIn], files: [list] })).toEqual([`text: ${both}`]);
});

test("a logo is no file that is counted, and neither is a list or a sheet that was filled in from it", () => {
  const words = "Both files attached.";
  const [sheet, logo] = [file({}), file({ id: "1/2", file: "logo.png", kind: "decoration" })];
  const scan = file({ id: "1/3", file: "scan.pdf", kind: "no-form" });
  expect(said(words, { sheets: [plate], files: [sheet, logo] })).toEqual([`text: ${words}`]);
  expect(said(words, { sheets: [plate], files: [sheet, scan] })).toEqual([]);
});

test("lettering that all sheets have needs nobody, and other lettering does", () => {
  const [ink, rust] = ["INK", "RST"].map((lettering) => ({ ...device, lettering }));
  expect(said("In Rust as always.", { sheets: [rust ?? device] })).toEqual([]);
  expect(said("In Rust as always.", { sheets: [ink ?? device] })).toHaveLength(1);
});

test("“both” is a count: of one that came it is told, and of two it is not", () => {
  const two = [plate, plateSheet({ id: "1/9", mark: "S-900" })];
  const files = [file({}), file({ id: "1/9", file: "b.pdf" })];
  for (const words of [
    "Both plates attached.",
    "Here are both plates.",
    "Both sheets attached.",
    "Both corrected sheets attached.",
    "Both are attached.",
    "Both attached.",
  ]) {
    expect(said(words, { sheets: [plate], files: [file({})] }), words).toEqual([`text: ${words}`]);
    expect(said(words, { sheets: two, files }), words).toEqual([]);
  }
  expect(said("Both device sheets attached.", { sheets: two, files })).toHaveLength(1);
});

test("whoever has no name is called by the address", () => {
  const signed = (from: string): number => {
    const letter = { from, subject: "", references: [], text: "Sheets attached.\nzonkby", attachments: [] };
    return statementsBeside(letter, bare).length;
  };
  expect(signed("zonkby@whitlock.example")).toBe(0);
  expect(signed("dana@whitlock.example")).toBe(1);
});

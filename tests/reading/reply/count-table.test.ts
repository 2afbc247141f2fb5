import { describe, expect, test } from "vitest";
import { countsInTable } from "../../../src/reading/reply/count-table.ts";
import { written } from "../../bench/counts.ts";
import { catalogue } from "../../make/config.ts";

function counted(text: string): string | undefined {
  const counts = countsInTable(text, ["Larkspur Library", "EL-100"], catalogue);
  return counts === undefined ? undefined : written(counts);
}

describe("a table counts", () => {
  test.each([
    ["with commas", "Item,Qty\ndevices,12\nplates,3", "12 device; 3 plate"],
    ["with semicolons, and blank lines", "\uFEFFQty;Item\r\n\r\n12;devices\r\n", "12 device"],
    ["with tabs", "Item\tQuantity\ndevices\t12", "12 device"],
    ["with strokes", "Item | # \n devices | 12", "12 device"],
    ["with a sign in a row that would part other tables", "Item,Qty\ndevices | engraved,12", "12 device"],
    ["in quotation marks", 'Item,Qty\n"devices",12', "12 device"],
    [
      "with a total that is right",
      "Item,Qty\ndevices,12\nplates,3\nTotal,15",
      "12 device; 3 plate; 15 sheet",
    ],
    ["with a grand total", "Item,Qty\ndevices,12\nGrand total:,12", "12 device; 12 sheet"],
    ["with a row less long than its heads", "Item,Qty,Project\ndevices,12", "12 device"],
    ["with what the order is about", "Project,Item,Qty\nLarkspur Library,devices,12", "12 device"],
    ["a cell in quotation marks that has commas", 'Item,Qty\n"devices, engraved",12', "12 device"],
    ["buttons under their head", "Item,Buttons,Qty\ndevice,4,3", "3 device D4"],
    ["gangs under their head", "Item,Gangs,Qty\nplate,4,3", "3 plate 4"],
    ["999 of a thing", "Item,Qty\ndevices,999", "999 device"],
  ])("%s", (_, text, counts) => {
    expect(counted(text)).toBe(counts);
  });
});

test.each([
  ["a heading alone", "Item,Qty"],
  ["one column", "Qty\n12"],
  ["no quantities", "Item,Colour\ndevices,12"],
  ["a heading that says something else", "Item,Qty,Remarks\ndevices,12,"],
  ["a heading that only begins like one", "Items wanted,Qty\ndevices,12"],
  ["a heading that only ends like one", "Item,Spare qty\ndevices,12"],
  ["a heading that only begins like quantities", "Item,Qty spare\ndevices,12"],
  ["a quantity that is none", "Item,Qty\ndevices,x12"],
  ["a quantity with a word", "Item,Qty\ndevices,12 more"],
  ["a quantity of four figures", "Item,Qty\ndevices,1200"],
  ["more cells than heads", "Item,Qty\ndevices,12,engraved"],
  ["a figure under a head that counts nothing", "Item,Type,Qty\ndevice,4,3"],
  ["another figure under a head that counts nothing", "Item,Type,Qty\nplate,4,3"],
  ["a row that says something else", "Item,Qty\ndevices,12\nplease hold,3"],
  ["a thing with a word that nobody knows", "Item,Qty\nspare devices,12"],
  ["a size behind a finish", "Item,Size,Qty\nplate,Oat 4,3"],
  ["a total that is wrong", "Item,Qty\ndevices,12\nplates,3\nTotal,16"],
  ["nothing but a total", "Item,Qty\nTotal,16"],
  ["nothing but a total of none", "Item,Qty\nTotal,0"],
  ["a word that only begins with total", "Item,Qty\ndevices,12\nTotals wanted,12"],
  ["a word that only ends with total", "Item,Qty\ndevices,12\nSubtotal,12"],
  ["the same twice", "Item,Qty\ndevices,12\ndevices,12"],
])("no count is a table with %s", (_, text) => {
  expect(counted(text)).toBeUndefined();
});

test.each([
  ["a total with no finish", "Item,Finish,Qty\nplates,Oat,3\nTotal,,3", "3 plate OAT; 3 sheet"],
  ["a line of blanks", "Item,Qty\n   \ndevices,12\n  ", "12 device"],
])("a table counts with %s", (_, text, counts) => {
  expect(counted(text)).toBe(counts);
});

test.each([
  ["a total of one finish", "Item,Finish,Qty\nplates,Oat,3\nTotal,Oat,3"],
  ["a heading that only ends in a word that describes", "Not our project,Qty\ndevices,12"],
])("a table counts nothing with %s", (_, text) => {
  expect(counted(text)).toBeUndefined();
});

test("a hundred rows are counted, and a longer list is none of totals", () => {
  const codes = [...catalogue.finishes.map(({ code }) => code), ""];
  const kinds = [...Array(9).keys()].map((i) => `${i + 1}-gang plates`);
  const things = kinds.concat(catalogue.layouts.map(({ code }) => `${code} devices`));
  const rows = things.flatMap((thing) => codes.map((code) => `${thing} ${code},1`));
  const table = (length: number) =>
    countsInTable(["Item,Qty", ...rows.slice(0, length)].join("\n"), [], catalogue);
  expect(table(100)).toHaveLength(100);
  expect(table(101)).toBeUndefined();
});

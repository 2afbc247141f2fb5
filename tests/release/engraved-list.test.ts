import { expect, test } from "vitest";
import { engravedListIn } from "../../src/release/engraved-list.ts";

test.each<[string, string]>([
  ["commas", "Order,Station,Position,When\nFM-80,P-1,2,2026-11-10\n"],
  ["semicolons", "Order;Station;Position;When\r\nFM-80;P-1;2;2026-11-10 14:05\r\n"],
  ["tabs and other columns", "Who\tStation\tWhen\tOrder\tPosition\nBo\tP-1\t2026-11-10T14:05:30\tFM-80\t2"],
  [
    "a mark before it, quotation marks",
    '\uFEFForder,"station",position,when\n"FM-80","P-1","2","2026-11-10"',
  ],
  ["apostrophes of ours", "order,station,position,when\n'FM-80,'P-1,2,'2026-11-10"],
])("with %s", (_, text) => {
  expect(engravedListIn(text)).toEqual({
    rows: [{ line: 2, order: "FM-80", station: "P-1", position: 2, on: "2026-11-10" }],
    faults: [],
  });
});

test("lines are those of the file, whatever is empty or has line ends in a cell", () => {
  const text = 'sep=;\r\n\r\norder;station;note\r\n;;\r\nFM-80;P-1;"one\r\ntwo"\r\n\r\nFM-80;P-2;\r\n';
  expect(engravedListIn(text)).toEqual({
    rows: [
      { line: 5, order: "FM-80", station: "P-1" },
      { line: 8, order: "FM-80", station: "P-2" },
    ],
    faults: [],
  });
});

test("an empty position is all of a station, or where a face is named its plate", () => {
  expect(
    engravedListIn("order,station,position,face\nA,P-1,,\nA,P-1,Plate,\nA,P-1,,Gang  2\nA,P-1,1,button 3"),
  ).toEqual({
    rows: [
      { line: 2, order: "A", station: "P-1" },
      { line: 3, order: "A", station: "P-1", position: "plate" },
      { line: 4, order: "A", station: "P-1", position: "plate", face: "gang 2" },
      { line: 5, order: "A", station: "P-1", position: 1, face: "button 3" },
    ],
    faults: [],
  });
});

test.each([
  ["A,P-1,,11/9/2026", "“11/9/2026” is no day: write it as 2026-11-09"],
  ["A,P-1,,2026-02-30", "“2026-02-30” is no day: write it as 2026-11-09"],
  ["A,P-1,,2026-11-09 soon", "“2026-11-09 soon” is no day: write it as 2026-11-09"],
  ["A,P-1,0,", "“0” is not a position in a plate"],
  ["A,P-1,left,", "“left” is not a position in a plate"],
  [",P-1,,", "no order is named"],
])("a row that cannot be read: %s", (row, says) => {
  expect(engravedListIn(`order,station,position,when\n${row}\nA,P-2,,`)).toEqual({
    rows: [{ line: 3, order: "A", station: "P-2" }],
    faults: [{ line: 2, says }],
  });
});

test.each([
  ["", "its first line does not name the columns order and station"],
  ["order,place\nA,P-1", "its first line does not name the columns order and station"],
  ["A,P-1\nA,P-2", "its first line does not name the columns order and station"],
  ["order,station\n,\n", "it has no row"],
  ["order,station,Order\nA,P-1,B", "it has two columns order"],
  ['order,station\nA,"P-1\nA,P-2', "a quotation mark is not closed"],
])("no list: %j", (text, why) => {
  expect(engravedListIn(text)).toEqual({ why });
});

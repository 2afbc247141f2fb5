import { expect, test } from "vitest";
import { markInFront, nameOf, otherMarkIn, positionIn } from "../../src/checks/named-place.ts";
import { without } from "../../src/checks/sample.ts";
import { device } from "../make/sample.ts";

test("a file's name is the one that it came with, without its ending", () => {
  expect(nameOf({ file: "S-104_pos_2.PDF" })).toBe("S-104 pos 2");
  expect(nameOf({ file: "S-104 (2).pdf", named: "S-104.pdf" })).toBe("S-104");
  expect(nameOf({ file: "v1.pdf.x" })).toBe("v1.pdf.x");
  expect(nameOf({ file: "S-104.jpeg" })).toBe("S-104");
  expect(nameOf({ file: "S-104.level" })).toBe("S-104.level");
});

// Common practice, no source.
test.each([
  ["S-104 pos 2 of 4", 2],
  ["S-104 position 02", 2],
  ["S-104 Posn. #3", 3],
  ["S-104 pos-3", 3],
  ["pos 1 and 2", undefined],
  ["pos 1, 2", undefined],
  ["pos 1-4", undefined],
  ["pos 1 to 4", undefined],
  ["pos 1 pos 2", undefined],
  ["pos 12", undefined],
  ["expos 2", undefined],
  ["S-104", undefined],
])("“%s” tells position %s", (name, position) => {
  expect(positionIn(name)).toBe(position);
});

test.each([
  ["S-105 pos 2", "S105"],
  ["s 105", "S105"],
  ["S-105 and s105", "S105"],
  ["S-105 beside S-104", undefined],
  ["S-105 or S-106", undefined],
  ["S-1055", undefined],
  ["XS-105", undefined],
  ["K-105", undefined],
  ["pos 2", undefined],
])("where the sheet says S-104, “%s” tells the mark %s", (name, mark) => {
  expect(otherMarkIn(name, device())).toBe(mark);
});

test("what stands in the order number or in the part key is no mark", () => {
  expect(otherMarkIn("BW-2208", device({ mark: "BW-2209", order: "BW-2208" }))).toBeUndefined();
  expect(otherMarkIn("S-105", device({ partKey: "D4/S-105" }))).toBeUndefined();
});

test.each([
  ["S-104B", "S-105", undefined],
  ["West S-104", "S-105", undefined],
  ["ABCD-12", "ABCD-13", "ABCD13"],
  ["ABCDE-12", "ABCDE-13", undefined],
  ["S-12345", "S-12346", "S12346"],
  ["S-123456", "S-123457", undefined],
])("where the sheet says “%s”, “%s” tells the mark %s", (mark, name, told) => {
  expect(otherMarkIn(name, device({ mark }))).toBe(told);
});

test.each([
  ["S-1", "S-2", "S2"],
  ["K1", "K2 hall", "K2"],
  ["101", "102", "102"],
  ["101", "Room 102 north", "102"],
  ["S-1", "s_2", "S2"],
  ["S-1", "S-3", undefined],
  ["S-1", "S-2 and K2", undefined],
  ["S-1", "S-1 beside S-2", undefined],
  ["101", "S-102", undefined],
  ["S-1", "scan 2", undefined],
  ["S-1", "S-22", undefined],
  ["", "S-2", undefined],
])("where the order has it beside “%s”, “%s” tells the mark %s", (mark, name, told) => {
  const marks = new Set(["S2", "K2", "102", "2"]);
  expect(otherMarkIn(nameOf({ file: name }), device({ mark }), (one) => marks.has(one))).toBe(told);
});

test.each([
  ["S-1", "S-3 Bar.pdf", "S3"],
  ["s1", "S-3.pdf", "S3"],
  ["S-1", "Bar S-3.pdf", undefined],
  ["S-1", "K-3.pdf", undefined],
  ["S-1", "S3.pdf", undefined],
  ["S-1", "S-3b.pdf", undefined],
  ["S-1", "scan.pdf", undefined],
  ["LOBBY", "S-3.pdf", undefined],
])("where the sheet says %s, the name %s begins with the mark %s", (mark, file, told) => {
  expect(markInFront(device({ mark, file }))).toBe(told);
});

test("a mark that is no letters and digits has no series", () => {
  expect(otherMarkIn("S-105", without(device(), "mark"))).toBeUndefined();
  expect(otherMarkIn("5", device({ mark: "4" }))).toBeUndefined();
  expect(otherMarkIn("S-5", device({ mark: "S-4" }))).toBeUndefined();
  expect(otherMarkIn("S-15", device({ mark: "S-14" }))).toBe("S15");
});

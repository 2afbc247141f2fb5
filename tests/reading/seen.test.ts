import { expect, test } from "vitest";
import type { Edition } from "../../src/reading/edition.ts";
import type { Box, Difference, PdfFacts } from "../../src/reading/facts.ts";
import { somethingMore } from "../../src/reading/seen.ts";

/** A page of 300 by 300 points with two fields that mean something, one that means nothing and a hidden one. */
const edition = {
  fields: [
    { name: "top", place: "order" },
    { name: "low", place: "project" },
    { name: "print" },
    { name: "hidden", place: "notes" },
  ],
} as unknown as Edition;
const widget = (field: string, box: Box, page = 1, hidden = false) => ({ field, box, page, hidden });
const facts = {
  widgets: [
    widget("top", [110, 260, 190, 280]),
    widget("low", [110, 20, 190, 40]),
    widget("print", [10, 150, 20, 160]),
    widget("hidden", [250, 150, 290, 160], 1, true),
    widget("low", [10, 150, 20, 160], 2),
  ],
  pages: [{ width: 300, height: 300 }],
} as unknown as PdfFacts;

const told = (difference: Partial<Difference>) => {
  const [doubt, ...others] = somethingMore({ what: "more", page: 1, ...difference }, facts, edition);
  expect(others).toEqual([]);
  return doubt;
};

test.each<[Box, string, string | undefined]>([
  // over a field
  [[120, 262, 130, 270], "in the upper middle, over", "order"],
  [[120, 30, 130, 34], "in the lower middle, over", "project"],
  // beside one, up to 60 points away
  [[140, 190, 160, 200], "in the middle, beside", "order"],
  [[140, 189, 160, 199], "in the middle, beside", undefined],
  [[40, 262, 50, 270], "in the upper left, beside", "order"],
  [[39, 262, 49, 270], "in the upper left, beside", undefined],
  [[251, 22, 260, 30], "in the lower right, beside", undefined],
  [[250, 22, 260, 30], "in the lower right, beside", "project"],
  // where a field means nothing, or does not show
  [[12, 152, 18, 158], "at the left, beside", undefined],
  [[260, 152, 270, 158], "at the right, beside", undefined],
  // at the edges of the thirds of a page
  [[95, 145, 105, 155], "in the middle, beside", undefined],
  [[94, 145, 104, 155], "at the left, beside", undefined],
  [[195, 145, 205, 155], "in the middle, beside", undefined],
  [[196, 145, 206, 155], "at the right, beside", undefined],
  [[4, 95, 6, 105], "at the left, beside", undefined],
  [[4, 94, 6, 104], "in the lower left, beside", undefined],
  [[4, 195, 6, 205], "at the left, beside", undefined],
  [[4, 196, 6, 206], "in the upper left, beside", undefined],
  // over most of a page
  [[0, 50, 181, 171], "all over it", undefined],
  [[0, 50, 180, 171], "at the left, beside", "project"],
  [[0, 50, 181, 170], "at the left, beside", "project"],
])("what is drawn at %j is told as %s", (box, where, place) => {
  const is = told({ box });
  expect([is?.kind, is?.where, is?.place]).toEqual(["drawn", where, place]);
});

test("of two fields the nearer is told", () => {
  expect(told({ box: [145, 205, 155, 210] })?.place).toBe("order");
  expect(told({ box: [145, 90, 155, 95] })?.place).toBe("project");
});

test("a field that a difference names is told, wherever it lies", () => {
  expect(told({ what: "moved", field: "low", box: [0, 0, 300, 300] })).toMatchObject({
    kind: "moved",
    place: "project",
    where: "all over it",
  });
  expect(told({ field: "stranger" })).toEqual({ what: "something-more", kind: "drawn", seen: { page: 1 } });
});

test("what it says is told, where it was seen, and its picture by a name", () => {
  const is = told({ what: "laid", box: [120, 262, 130, 270], text: "x", picture: new Uint8Array([1]) });
  expect(is).toMatchObject({ text: "x", seen: { page: 1, box: [120, 262, 130, 270] } });
  // SHA-256 of the byte 1, by sha256sum
  expect(is?.seen?.picture).toBe("4bf5122f344554c53bde2ebb");
});

test("what the file as a whole holds was seen on no page, and a page that nobody looked at is US Letter", () => {
  expect(told({ what: "file", page: 0 })).toEqual({ what: "something-more", kind: "file" });
  expect(told({ page: 2, box: [300, 700, 320, 720] })?.where).toBe("in the upper middle, beside");
  expect(told({ page: 2, box: [12, 152, 18, 158] })?.place).toBe("project");
});

test("a field that shows something else is told elsewhere", () => {
  expect(somethingMore({ what: "field", page: 1 }, facts, edition)).toEqual([]);
});

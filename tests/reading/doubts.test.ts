import { expect, test } from "vitest";
import { doubtsOf } from "../../src/reading/doubts.ts";
import type { Box, Difference, PageMark, PdfFacts } from "../../src/reading/facts.ts";
import type { Doubt } from "../../src/trade/sheet.ts";
import { editions } from "../make/config.ts";
import { formFacts, frameAt, pageFacts } from "../make/facts.ts";

const [edition] = editions.filter(({ name }) => name === "device-26c");
if (edition === undefined) throw new Error("no device sheet");
const filled = { project: "Larkspur Library", button1_row1: "ENTRY", edition: "device-26c" };
const frame = (field: string): Box => frameAt(edition.fields.findIndex(({ name }) => name === field));

const [left, bottom, right, top] = [20, 20, 60, 40];
const stroke: PageMark = { what: "ink", box: [left, bottom, right, top] };
const more = (box: Box, page = 1): Difference => ({ what: "more", page, box });

const withPages = (changes: Partial<PdfFacts>): Doubt[] =>
  doubtsOf(formFacts(edition, filled, changes), edition);
const told = (marks: readonly PageMark[], ...differences: Difference[]): Doubt[] =>
  withPages({ pages: [pageFacts(marks)], differences });

test.each<[string, Box]>([
  ["on the left", [left - 13, bottom, left - 3, top]],
  ["on the right", [right + 3, bottom, right + 13, top]],
  ["below", [left, bottom - 13, right, bottom - 3]],
  ["above", [left, top + 3, right, top + 13]],
])("a stroke and what the comparison found three points from it, %s, are one thing", (_, box) => {
  expect(told([stroke], more(box))).toEqual([{ what: "handwriting", seen: { page: 1, box } }]);
});

test.each<[string, Box]>([
  ["on the left", [left - 15, bottom, left - 4.5, top]],
  ["on the right", [right + 4.5, bottom, right + 15, top]],
  ["below", [left, bottom - 15, right, bottom - 4.5]],
  ["above", [left, top + 4.5, right, top + 15]],
])("a stroke and what lies farther from it, %s, are two", (_, box) => {
  expect(told([stroke], more(box)).map(({ what }) => what)).toEqual(["handwriting", "something-more"]);
});

test("a stroke has nothing to do with what is at its place on another page, or on the file as a whole", () => {
  for (const difference of [more([left, bottom, right, top], 2), { what: "program", page: 1 } as const])
    expect(told([stroke], difference)).toMatchObject([
      { what: "handwriting" },
      { what: "something-more", seen: { page: difference.page } },
    ]);
});

test("a further page and what is drawn on it are one thing, and another further page is another", () => {
  const further = (page: number): Doubt[] =>
    withPages({
      pages: [pageFacts(), pageFacts([stroke]), pageFacts()],
      differences: [{ what: "page", page }],
    });
  expect(further(2)).toEqual([{ what: "handwriting", seen: { page: 2 } }]);
  expect(further(3)).toEqual([
    { what: "handwriting" },
    { what: "something-more", kind: "page", seen: { page: 3 } },
  ]);
});

test("of two things found at one stroke the first gives it its picture", () => {
  const boxes: Box[] = [
    [left, bottom, left + 10, top],
    [right - 10, bottom, right, top],
  ];
  expect(told([stroke], ...boxes.map((box) => more(box)))).toEqual([
    { what: "handwriting", seen: { page: 1, box: boxes[0] } },
  ]);
});

test("a field that shows something else is one doubt with what is known of it", () => {
  const box = frame("button1_row1");
  const shows: Difference = { what: "field", page: 1, box, field: "button1_row1" };
  const seen = { page: 1, box };
  expect(told([], shows)).toEqual([{ what: "value-hidden", place: "row.1.1", text: "ENTRY", seen }]);
  // a stroke through it, wherever on the page the stroke was found
  expect(told([{ what: "ink", box }], { ...shows, page: 2 })).toEqual([
    { what: "handwriting", place: "row.1.1", seen: { ...seen, page: 2 } },
  ]);
  // an empty one
  expect(told([], { ...shows, field: "button1_row2" })).toEqual([
    { what: "value-hidden", place: "row.1.2", seen },
  ]);
});

test("a field that says nothing of the order may show what it likes", () => {
  expect(told([], { what: "field", page: 1, field: "nobody's" })).toEqual([]);
});

test("where all fields are gone from the page, that they show otherwise is told once", () => {
  const shows = (field: string): Difference => ({ what: "field", page: 1, box: frame(field), field });
  const flat = (...differences: Difference[]): Doubt[] => withPages({ widgets: [], differences });
  expect(flat()).toEqual([{ what: "flattened", seen: { page: 1 } }]);
  expect(flat(shows("button1_row1"), shows("project"))).toEqual([{ what: "flattened" }]);
  expect(flat(shows("project"), more([0, 0, 9, 9])).map(({ what }) => what)).toEqual([
    "flattened",
    "something-more",
  ]);
  expect(withPages({ widgets: [] })).toEqual([{ what: "flattened" }]);
});

test("what is told twice is told once", () => {
  expect(told([stroke, stroke])).toEqual([{ what: "handwriting" }]);
});

test("a mark lies over the fields of its own page that show, and over no field that means nothing", () => {
  const facts = formFacts(edition, filled);
  const box = frame("button1_row1");
  const on = (change: Partial<(typeof facts.widgets)[number]>): Doubt[] =>
    withPages({
      pages: [pageFacts([{ what: "ink", box }]), pageFacts()],
      widgets: facts.widgets.map((one) => (one.field === "button1_row1" ? { ...one, ...change } : one)),
    });
  expect(on({})).toEqual([{ what: "handwriting", place: "row.1.1" }]);
  expect(on({ page: 2 })).toEqual([{ what: "handwriting" }]);
  expect(on({ hidden: true })).toMatchObject([{ what: "handwriting" }, { what: "value-hidden" }]);
  expect(told([{ what: "ink", box: frame("edition") }])).toEqual([{ what: "handwriting" }]);
});

test("a page is unseen from where on none was looked at", () => {
  const facts = formFacts(edition, filled);
  const onPage = (page: number): Doubt[] =>
    withPages({
      pages: [pageFacts(), pageFacts()],
      widgets: facts.widgets.map((one) => ({ ...one, page })),
    });
  expect(onPage(2)).toEqual([]);
  expect(onPage(3)).toEqual([{ what: "unseen" }]);
});

test.each<[string, Box, boolean]>([
  ["that covers a quarter of a field", [100, 0, 250, 12], true],
  ["that covers less", [100, 0, 249, 12], false],
  ["of which half lies over a field", [190, 3, 210, 9], true],
  ["of which less does", [189, 3, 209, 9], false],
  ["three points high", [200, 3, 300, 6], true],
  ["lower than that, such as a line", [200, 3, 400, 5.9], false],
  ["three points wide", [200, 0, 203, 12], true],
  ["narrower than that", [200, 0, 202.9, 12], false],
])("a picture %s", (_, [from, low, to, high], isOver) => {
  const [, base] = frame("button1_row1");
  const image: PageMark = { what: "image", box: [from, base + low, to, base + high] };
  expect(told([image])).toEqual(isOver ? [{ what: "image-over", place: "row.1.1" }] : []);
});

test("a picture of seven tenths of a page is the form itself, unless we draw the form", () => {
  const image = (height: number): PageMark => ({ what: "image", box: [0, 792 - height, 612, 792] });
  const overOf = (drawn: boolean, height: number): boolean =>
    doubtsOf(formFacts(edition, filled, { pages: [pageFacts([image(height)])] }), { ...edition, drawn })
      .length > 0;
  expect([overOf(false, 0.71 * 792), overOf(false, 0.69 * 792)]).toEqual([false, true]);
  expect(overOf(true, 0.71 * 792)).toBe(true);
});

test("a text box that the form itself prints is none of the sender's", () => {
  const hinted = {
    ...edition,
    fields: edition.fields.map((one) => (one.name === "notes" ? { ...one, prints: "Notes" } : one)),
  };
  const box: PageMark = { what: "free-text", box: stroke.box, text: "Notes" };
  const facts = formFacts(edition, filled, { pages: [pageFacts([box])] });
  expect(doubtsOf(facts, hinted)).toEqual([]);
  expect(doubtsOf(facts, edition)).toEqual([{ what: "typed-over", text: "Notes" }]);
});

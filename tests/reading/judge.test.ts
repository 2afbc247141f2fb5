import { describe, expect, test } from "vitest";
import type { FileFacts, PageMark, PdfFacts, WidgetFacts } from "../../src/reading/facts.ts";
import { judge } from "../../src/reading/judge.ts";
import type { Doubt } from "../../src/trade/sheet.ts";
import { catalogue, editions } from "../make/config.ts";
import { formFacts, frameAt, pageFacts } from "../make/facts.ts";

const named = (name: string) => {
  const edition = editions.find((one) => one.name === name);
  if (edition === undefined) throw new Error(`no edition ${name}`);
  return edition;
};
const [ours, theirs] = [named("device-26c"), named("marrowby-device-1")];
const filled = { project: "Larkspur Library", button1_row1: "ENTRY", edition: "device-26c" };
const labels = ours.fields.map(({ label }) => label).join("\n");
const file = { id: "1/2", file: "a (2).pdf", named: "a.pdf" };

const kindOf = (facts: FileFacts): string => judge(facts, file, { editions, catalogue }).file.kind;
const doubtsOf = (facts: FileFacts): readonly Doubt[] | undefined =>
  judge(facts, file, { editions, catalogue }).sheet?.doubts;

/** Where a field of our device sheet stands on the page. */
const frame = (field: string) => frameAt(ours.fields.findIndex(({ name }) => name === field));
const withMark = (mark: PageMark, edition = ours, values: Record<string, string> = filled): PdfFacts =>
  formFacts(edition, values, { pages: [pageFacts([mark])] });
const withWidgets = (change: (widget: WidgetFacts) => WidgetFacts, values = filled): PdfFacts => {
  const facts = formFacts(ours, values);
  return {
    ...facts,
    widgets: facts.widgets.map((one) => (one.field === "button1_row1" ? change(one) : one)),
  };
};
const noFields = (changes: Partial<PdfFacts>): PdfFacts => ({
  ...formFacts(ours, {}),
  fields: [],
  widgets: [],
  ...changes,
});
const wholePage: PageMark = { what: "image", box: [0, 0, 612, 700] };

test("a filled sheet is one, without a doubt; its names go with it", () => {
  const { file: read, sheet } = judge(formFacts(ours, filled), file, { editions, catalogue });
  expect(read).toEqual({ ...file, kind: "sheet" });
  expect(sheet).toMatchObject({ ...file, project: "Larkspur Library", doubts: [] });
});

test("a form in which only a field is filled that nobody knows is no blank one", () => {
  const blank = formFacts(ours, { edition: "device-26c" });
  const facts = (value: string): PdfFacts => ({
    ...blank,
    fields: [...blank.fields, { name: "Rush", kind: "text", values: [value] }],
  });
  const { file: read, sheet } = judge(facts("by Friday"), file, { editions, catalogue });
  expect(read.kind).toBe("sheet");
  expect(sheet?.unmapped).toEqual([{ name: "Rush", value: "by Friday" }]);
  expect(kindOf(facts(""))).toBe("saved-blank");
});

test("the day on which a sheet came decides whether an edition on its way out is accepted", () => {
  const known = editions.map((one) =>
    one.name === "device-25a" ? { ...one, acceptedUntil: "2026-12-31" } : one,
  );
  const old = formFacts(named("device-25a"), { Project: "Larkspur Library" });
  const on = (today: string) => judge(old, file, { editions: known, catalogue, today }).sheet?.edition;
  expect(on("2026-12-31")).toMatchObject({
    accepted: { until: "2026-12-31", use: "Device sheet, edition 26c" },
  });
  expect(on("2027-01-01")).toMatchObject({ replacedBy: "Device sheet, edition 26c" });
});

test.each<[string, FileFacts]>([
  ["locked", { kind: "locked-pdf" }],
  ["damaged", { kind: "damaged-pdf" }],
  ["picture", { kind: "picture" }],
  ["recording", { kind: "recording" }],
  ["office-document", { kind: "office" }],
  ["archive", { kind: "archive", files: [], left: [] }],
  ["archive-locked", { kind: "locked-archive" }],
  ["text", { kind: "text", words: { text: "Ring twice." } }],
  ["other", { kind: "other" }],
  ["saved-blank", formFacts(ours, { edition: "device-26c" })],
  ["saved-blank", formFacts(ours, { ...filled, project: "", button1_row1: "" })],
  ["portfolio", noFields({ portfolio: true })],
  ["dynamic-form", noFields({ dynamic: true })],
  ["unknown-form", noFields({ fields: [{ name: "tax_year", kind: "text", values: ["2026"] }] })],
  ["no-form", noFields({ fields: [{ name: "sign", kind: "signature", values: [] }] })],
  ["no-form", noFields({ pages: [pageFacts([], "Drawing 7 of 12, Larkspur Library, ground floor")] })],
  [
    "no-form",
    noFields({ pages: [pageFacts([wholePage], "The whole page is a photograph with words on it")] }),
  ],
  ["printed", noFields({ pages: [pageFacts([], labels)] })],
  ["printed", noFields({ recovered: true, pages: [pageFacts([], labels)] })],
  ["scanned", noFields({ pages: [pageFacts([wholePage])] })],
  ["scanned", noFields({ pages: [pageFacts([wholePage], labels)] })],
  ["damaged", noFields({ recovered: true })],
])("%s (%#)", (kind, facts) => {
  expect(kindOf(facts)).toBe(kind);
});

test("a page too heavy to be looked at makes a file without fields no sheet of ours", () => {
  const { pages: _, ...unseen } = noFields({});
  expect(kindOf(unseen)).toBe("no-form");
  expect(kindOf({ ...unseen, recovered: true })).toBe("damaged");
});

test("an XFA form with the fields of a sheet is that sheet", () => {
  expect(kindOf(formFacts(ours, filled, { dynamic: true }))).toBe("sheet");
});

test("an empty sheet whose end is missing is damaged, since it may have been filled", () => {
  expect(kindOf(formFacts(ours, {}, { recovered: true }))).toBe("damaged");
});

test("an unknown form is named after the nearest", () => {
  const fields = formFacts(ours, filled).fields.slice(0, ours.fields.length * 0.7);
  expect(judge(noFields({ fields }), file, { editions, catalogue }).file.nearest).toBe(ours.title);
});

describe("a sheet is doubted for", () => {
  test("pen strokes, wherever they are, even while it is empty", () => {
    const over: PageMark = { what: "ink", box: frame("button1_row1") };
    expect(doubtsOf(withMark(over))).toEqual([{ what: "handwriting", place: "row.1.1" }]);
    expect(doubtsOf(withMark(over, ours, {}))).toEqual([{ what: "handwriting", place: "row.1.1" }]);
    expect(doubtsOf(withMark({ what: "ink", box: [0, 0, 5, 5] }))).toEqual([{ what: "handwriting" }]);
  });

  test("a stamp over fields, not for one beside them", () => {
    const [left, bottom, right] = frame("button1_row1");
    const box = [left, bottom - 14, right, bottom + 5] as const;
    expect(doubtsOf(withMark({ what: "stamp", box }))).toEqual([
      { what: "handwriting", place: "row.1.1" },
      { what: "handwriting", place: "row.1.2" },
    ]);
    expect(doubtsOf(withMark({ what: "stamp", box, text: "APPROVED" }))).toMatchObject([
      { what: "typed-over", text: "APPROVED" },
      { what: "typed-over", text: "APPROVED" },
    ]);
    expect(doubtsOf(withMark({ what: "stamp", box: [0, 0, 50, 50] }))).toEqual([]);
  });

  test("text boxes, wherever they are", () => {
    const text = "KITCHEN";
    expect(doubtsOf(withMark({ what: "free-text", box: frame("button1_row1"), text }))).toEqual([
      { what: "typed-over", place: "row.1.1", text },
    ]);
    expect(doubtsOf(withMark({ what: "free-text", box: [0, 0, 5, 5], text }))).toEqual([
      { what: "typed-over", text },
    ]);
  });

  test("text on the page within a field's frame", () => {
    const [left, bottom] = frame("button1_row1");
    const within = (text: string, x = left + 4): PdfFacts =>
      withMark({ what: "text", box: [x, bottom + 2, x + 40, bottom + 10], text });
    expect(doubtsOf(within("KITCHEN"))).toEqual([{ what: "typed-over", place: "row.1.1", text: "KITCHEN" }]);
    // The field's own value drawn a second time, a line to write on, a label that touches the frame.
    expect(doubtsOf(within("ENTRY"))).toEqual([]);
    expect(doubtsOf(within("______"))).toEqual([]);
    expect(doubtsOf(within("Button 1, row 1", left - 38))).toEqual([]);
  });

  test("text on the page, but not for a hint that the blank form prints", () => {
    const fields = theirs.fields.map((field) =>
      field.name === "MS.Pos" ? { ...field, prints: "k of N" } : field,
    );
    const hinted = { ...theirs, fields };
    const at = frameAt(fields.findIndex(({ name }) => name === "MS.Pos"));
    const facts = withMark({ what: "text", box: at, text: "of N" }, theirs, { "MS.Job": "Holloway Street" });
    const read = (known: typeof editions) => judge(facts, file, { editions: known, catalogue }).sheet?.doubts;
    expect(read([theirs])).toEqual([{ what: "typed-over", place: "position", text: "of N" }]);
    expect(read([hinted])).toEqual([]);
  });

  test("a picture over a field, not for one beside it or for a form that is a picture itself", () => {
    const [left, bottom, right, top] = frame("button1_row1");
    expect(doubtsOf(withMark({ what: "image", box: [left, bottom, right, top] }))).toEqual([
      { what: "image-over", place: "row.1.1" },
    ]);
    expect(doubtsOf(withMark({ what: "image", box: [left - 20, bottom, left + 2, top] }))).toEqual([]);
    expect(doubtsOf(withMark({ what: "image", box: [left, bottom, right, bottom + 1] }))).toEqual([]);
    expect(doubtsOf(withMark(wholePage))?.length).toBeGreaterThan(1);
    expect(doubtsOf(withMark(wholePage, theirs, { "MS.Job": "Holloway Street" }))).toEqual([]);
  });

  test("a value other than the page shows", () => {
    expect(doubtsOf(withWidgets((one) => ({ ...one, shown: "LOBBY" })))).toEqual([
      { what: "value-hidden", place: "row.1.1", text: "ENTRY", shown: "LOBBY" },
    ]);
    expect(doubtsOf(withWidgets((one) => ({ ...one, shown: "" })))).toEqual([
      { what: "value-hidden", place: "row.1.1", text: "ENTRY" },
    ]);
    expect(doubtsOf(withWidgets((one) => ({ ...one, hidden: true })))).toEqual([
      { what: "value-hidden", place: "row.1.1", text: "ENTRY" },
    ]);
    expect(
      doubtsOf(withWidgets((one) => ({ ...one, shown: "ENTRY" }), { ...filled, button1_row1: "" })),
    ).toEqual([{ what: "value-hidden", place: "row.1.1", shown: "ENTRY" }]);
  });

  test.each([
    ["another sign", "BW-2207", "BW;2207"],
    ["another case", "Entry", "ENTRY"],
    ["another number", "2", "2.50"],
    ["nothing but signs", "ENTRY", "..."],
  ])("a value shown with %s", (_, button1_row1, shown) => {
    expect(doubtsOf(withWidgets((one) => ({ ...one, shown }), { ...filled, button1_row1 }))).toEqual([
      { what: "value-hidden", place: "row.1.1", text: button1_row1, shown },
    ]);
  });

  test("nothing where an empty field shows its hint", () => {
    const field = {
      name: "MS.Pos",
      label: "Position",
      values: {},
      place: "position",
      prints: "k of N",
    } as const;
    const hinted = { ...theirs, fields: theirs.fields.map((one) => (one.name === "MS.Pos" ? field : one)) };
    const facts = formFacts(theirs, { "MS.Job": "Holloway Street" });
    const widgets = facts.widgets.map((one) => (one.field === "MS.Pos" ? { ...one, shown: "k of N" } : one));
    const read = (known: typeof editions) =>
      judge({ ...facts, widgets }, file, { editions: known, catalogue }).sheet?.doubts;
    expect(read([theirs])).toEqual([{ what: "value-hidden", place: "position", shown: "k of N" }]);
    expect(read([hinted])).toEqual([]);
  });

  test.each([
    ["drawn as a number with decimals", "302.8", "302,80"],
    ["whole and drawn with decimals", "2", "2.00"],
    ["drawn with other blanks", "ALL OFF.", "ALL  OFF."],
    ["drawn with other dashes and quotes", "DON’T – 2", "DON'T - 2"],
    ["a number drawn with points", "3125550117", "(312) 555-0117"],
    ["with letters that the font of the form does not have", "ПУСК 5 Ω", "???? 5 ?"],
    ["with an accent typed on its own", "CAFE\u0301", "CAFÉ"],
  ])("nothing where a value is %s", (_, button1_row1, shown) => {
    expect(doubtsOf(withWidgets((one) => ({ ...one, shown }), { ...filled, button1_row1 }))).toEqual([]);
  });

  test("nothing where the viewer is to draw the field", () => {
    const undrawn = withWidgets(({ field, page, box, hidden }) => ({ field, page, box, hidden }));
    expect(doubtsOf(undrawn)).toEqual([]);
  });

  test("nothing where only the first lines of the notes are drawn", () => {
    const facts = formFacts(ours, { ...filled, notes: "Ring twice.\nThen wait." });
    const widgets = facts.widgets.map((one) =>
      one.field === "notes" ? { ...one, shown: "Ring twice." } : one,
    );
    expect(doubtsOf({ ...facts, widgets })).toEqual([]);
  });

  test("fields that no longer show, not while its pages are unseen", () => {
    expect(doubtsOf(formFacts(ours, filled, { widgets: [] }))).toEqual([{ what: "flattened" }]);
    const { pages: _, ...unseen } = formFacts(ours, filled, { widgets: [] });
    expect(doubtsOf(unseen)).toEqual([{ what: "unseen" }]);
  });

  test("one field that shows nowhere", () => {
    const facts = formFacts(ours, filled);
    const widgets = facts.widgets.filter(({ field }) => field !== "button1_row1");
    expect(doubtsOf({ ...facts, widgets })).toEqual([
      { what: "value-hidden", place: "row.1.1", text: "ENTRY" },
    ]);
  });

  test("a damaged file, and for a field that is gone from it", () => {
    expect(doubtsOf(formFacts(ours, filled, { recovered: true }))).toEqual([{ what: "recovered" }]);
    const facts = formFacts(ours, filled);
    const fields = facts.fields.filter(({ name }) => name !== "button2_row2");
    expect(doubtsOf({ ...facts, fields })).toEqual([{ what: "recovered" }]);
  });

  test("a page that was not looked at", () => {
    expect(doubtsOf(withWidgets((one) => ({ ...one, page: 5 })))).toEqual([{ what: "unseen" }]);
  });
});

test.each([
  ["device-26c.pdf", true],
  ["Device-26C (1).pdf", true],
  ["device-26c (2) - Copy.pdf", true],
  ["blank device sheet.pdf", true],
  ["S-104.pdf", false],
  ["device 4.pdf", false],
  ["device-26c lobby.pdf", false],
  ["(1).pdf", false],
])("“%s” is the name of a blank: %s", (name, is) => {
  const { blank } = judge(
    formFacts(ours, { edition: "device-26c" }),
    { ...file, file: name, named: name },
    { editions, catalogue },
  ).file;
  expect(blank).toBe(is ? "device" : undefined);
});

import { PDFDict, PDFDocument, PDFName, PDFRawStream } from "pdf-lib";
import { beforeAll, describe, expect, test } from "vitest";
import { buttonsOf } from "../../src/catalogue/catalogue.ts";
import { requiredPlaces } from "../../src/checks/required.ts";
import { blankSheet } from "../../src/drawing/blank-sheet.ts";
import type { Edition } from "../../src/reading/edition.ts";
import { looksOf } from "../../src/reading/page/known-forms.ts";
import type { Place } from "../../src/trade/place.ts";
import { maker, trade } from "../make/config.ts";
import { type Look, look, type Widget } from "./look.ts";

const drawn = [trade, maker].flatMap(({ catalogue, editions }) =>
  editions.filter((edition) => edition.drawn).map((edition) => ({ name: edition.name, edition, catalogue })),
);

describe.each(drawn)("the blank $name", ({ edition, catalogue }) => {
  let bytes: Uint8Array;
  let seen: Look;
  beforeAll(async () => {
    bytes = await blankSheet(edition, catalogue);
    seen = await look(bytes);
  });
  const first = (name: string): Widget | undefined =>
    seen.widgets.find((widget) => widget.fieldName === name);
  const namesWhere = (holds: (widget: Widget) => boolean): string[] =>
    sorted(seen.widgets.filter(holds).map((widget) => widget.fieldName));
  const namesOf = (...places: readonly unknown[]): string[] =>
    sorted(edition.fields.filter(({ place }) => places.includes(place)).map(({ name }) => name));

  /** As many characters as the layout with the longest such row takes. */
  const mostIn = (place: Place): number => {
    const [, face = "", row] = place.split(".");
    if (edition.form === "plate" || face === "plate") return catalogue.plate.characters;
    const having = catalogue.layouts.filter(
      (layout) => buttonsOf(layout) >= Number(face) && layout.rows >= Number(row),
    );
    return Math.max(...having.map(({ characters }) => characters));
  };

  test("has every field of the edition and no other", () => {
    expect(namesWhere(() => true)).toEqual(sorted(edition.fields.map(({ name }) => name)));
  });

  test("looks as it did when its edition got its name", async () => {
    // What was moved since would raise questions about every sheet that is filled in on an older print. A drawing
    // that changes is a new edition.
    expect(await looksOf(bytes)).toBe(edition.looks);
  });

  test("is one US Letter page, light enough for any mailbox", () => {
    expect(seen.pages).toBe(1);
    expect(seen.size).toEqual(edition.form === "device" ? [612, 792] : [792, 612]);
    expect(bytes.length).toBeLessThan(60_000);
  });

  test("tells in a tooltip what each field is, and how much fits", () => {
    for (const { name, label } of edition.fields) expect(first(name)?.alternativeText).toContain(label);
    const row = edition.fields.find(({ place }) => place === "row.1.1");
    expect(first(row?.name ?? "")?.alternativeText).toContain(`${mostIn("row.1.1")} characters at most`);
  });

  test("limits legend rows to what can be cut, and nothing else", () => {
    for (const { name, place } of edition.fields) {
      expect(first(name)?.maxLen ?? null, name).toBe(
        place?.startsWith("row.") === true ? mostIn(place) : first(name)?.fieldType === "Tx" ? 0 : null,
      );
    }
  });

  test("marks the places that must be filled in as required", () => {
    const mark = edition.form === "plate" ? (["mark"] as const) : [];
    expect(namesWhere((widget) => widget.required)).toEqual(
      namesOf(...requiredPlaces(edition.form), ...mark),
    );
  });

  test("offers what the catalogue has", () => {
    const choices = Object.fromEntries(
      seen.widgets.map(({ fieldName, options }) => [fieldName, options?.map((option) => option.exportValue)]),
    );
    expect(choices.lettering).toEqual(["", ...catalogue.lettering.map(({ name }) => name)]);
    const gangs = catalogue.plate.widths.map((_, i) => `${i + 1}`);
    expect(choices.gangs).toEqual(["", ...gangs.slice(1)]);
    // Some finishes are made for plates alone, some for no plate that has a plate sheet.
    const made = catalogue.finishes.filter(({ devices, plates }) =>
      edition.form === "device" ? devices : plates.some((size) => size > 1),
    );
    expect(made.length).toBeLessThan(catalogue.finishes.length);
    expect(choices.finish).toEqual(["", ...made.map(({ name }) => name)]);
  });

  test("keeps its fields apart and inside the margins", () => {
    for (const [i, { rect: a, fieldName }] of seen.widgets.entries()) {
      const [width, height] = seen.size;
      expect(Math.min(a[0], a[1], width - a[2], height - a[3]), fieldName).toBeGreaterThan(14);
      for (const { rect: b } of seen.widgets.slice(i + 1))
        expect(a[2] <= b[0] || b[2] <= a[0] || a[3] <= b[1] || b[3] <= a[1], fieldName).toBe(true);
    }
  });

  test("leads the Tab key on: each field stands below or right of the one before", () => {
    for (const [i, { rect: next, fieldName }] of seen.widgets.entries()) {
      const before = seen.widgets[i - 1]?.rect;
      if (before !== undefined) expect(next[3] <= before[1] || next[0] >= before[2], fieldName).toBe(true);
    }
  });

  test("leads the Tab key through one face and one address before the next", () => {
    const groups = seen.widgets.map(
      ({ fieldName }) => /^(button|gang|plate|bill|ship)\d*_/.exec(fieldName)?.[0] ?? "",
    );
    const runs = groups.filter((group, i) => group !== "" && group !== groups[i - 1]);
    expect(runs).toEqual([...new Set(runs)]);
  });

  test("prints the edition, the maker and the caution", () => {
    expect(first("edition")).toMatchObject({
      readOnly: true,
      fieldValue: edition.name,
      textContent: [edition.name],
    });
    expect(seen.words).toContain(catalogue.maker.name);
    expect(seen.words).toContain(catalogue.maker.email);
    expect(seen.words).toContain("local code and a licensed electrician decide");
  });

  test("prints each label, without what the heading over it says already", () => {
    const printed = edition.fields.filter(
      ({ place }) => place !== undefined && !/^(row|plain)\./.test(place),
    );
    for (const { label } of printed)
      expect(seen.words.toLowerCase()).toContain(label.replace(/^(Bill|Ship) to: /, "").toLowerCase());
  });

  test("says what it is in its metadata", async () => {
    expect(seen).toMatchObject({ title: edition.title, subject: edition.name, language: "en-US" });
    const pdf = await PDFDocument.load(bytes, { updateMetadata: false });
    expect(pdf.catalog.getViewerPreferences()?.getDisplayDocTitle()).toBe(true);
    expect(pdf.getKeywords()).toContain(edition.name);
  });

  test("carries no script and no action", async () => {
    const pdf = await PDFDocument.load(bytes, { updateMetadata: false });
    const active = ["JS", "JavaScript", "AA", "OpenAction", "A"].map((key) => PDFName.of(key));
    const dicts = pdf.context
      .enumerateIndirectObjects()
      .map(([, object]) => (object instanceof PDFRawStream ? object.dict : object))
      .filter((object) => object instanceof PDFDict)
      // ISO 32000-1:2008 table 323: A of a tag has what it is besides, such as the heading of a row.
      .filter((dict) => dict.get(PDFName.of("Type")) !== PDFName.of("StructElem"));
    expect(dicts.length).toBeGreaterThan(50);
    expect(dicts.filter((dict) => active.some((key) => dict.has(key)))).toEqual([]);
  });

  test("is the same file each time", async () => {
    expect(Buffer.compare(bytes, await blankSheet(edition, catalogue))).toBe(0);
  });

  test("leaves out what the edition does not have", async () => {
    const fields = edition.fields.filter(({ place }) => place !== "part-key" && place !== "row.1.2");
    const { widgets } = await look(await blankSheet({ ...edition, fields }, catalogue));
    expect(sorted(widgets.map(({ fieldName }) => fieldName))).toEqual(sorted(fields.map(({ name }) => name)));
  });

  test("refuses a field that it has no room for", async () => {
    const more: Edition = {
      ...edition,
      fields: [...edition.fields, { name: "second_notes", place: "notes", label: "More notes", values: {} }],
    };
    await expect(blankSheet(more, catalogue)).rejects.toThrow("second_notes");
  });
});

const devices = drawn.filter(({ edition }) => edition.form === "device");

test.each(devices)(
  "the buttons of $name stand for catalogue codes",
  async ({ edition: device, catalogue }) => {
    const { widgets } = await look(await blankSheet(device, catalogue));
    const values = (name: string): unknown[] =>
      widgets.filter(({ fieldName }) => fieldName === name).map(({ buttonValue }) => buttonValue);
    expect(values("layout")).toEqual(catalogue.layouts.map(({ code }) => code));
    expect(values("standing")).toEqual(["alone", "in-plate"]);
    expect(values("legend_place")).toEqual(
      catalogue.layouts.flatMap(({ legend_places }) => legend_places ?? []),
    );
  },
);

test.each(devices)("more than the page of $name can hold is refused", async ({ edition, catalogue }) => {
  const [layout] = catalogue.layouts;
  if (layout === undefined) throw new Error("the catalogue has no layout");
  const many = { ...catalogue, layouts: [{ ...layout, columns: 2, lines: 12 }] };
  await expect(blankSheet(edition, many)).rejects.toThrow("no room left");
});

function sorted(names: readonly string[]): string[] {
  return [...new Set(names)].toSorted();
}

import { expect, test } from "vitest";
import type { Edition, EditionField } from "../../src/reading/edition.ts";
import type { FormField, ReadField } from "../../src/reading/form.ts";
import { readSheet } from "../../src/reading/sheet.ts";
import type { Place } from "../../src/trade/place.ts";
import type { DeviceSheet } from "../../src/trade/sheet.ts";
import { catalogue, editions } from "../make/config.ts";

const file = { id: "7/1", file: "S-104.pdf" };

function edition(name: string): Edition {
  const found = editions.find((one) => one.name === name);
  if (found === undefined) throw new Error(`no edition ${name}`);
  return found;
}

/** A form of the device sheet with some fields filled; all others are empty. */
function device(filled: Readonly<Record<string, string>>, of = edition("device-26c")): DeviceSheet {
  const sheet = readSheet(fieldsOf(of, filled), of, file, catalogue);
  if (sheet.kind !== "device") throw new Error("a device sheet was expected");
  return sheet;
}

function fieldsOf({ fields }: Edition, filled: Readonly<Record<string, string>>): ReadField[] {
  return fields.map(({ name, place }) => {
    const kind: FormField["kind"] = place === "finish" || place === "lettering" ? "choice" : "text";
    const value = filled[name] ?? "";
    return { name, kind, values: kind === "choice" && value === "" ? [] : [value] };
  });
}

/** An edition of a few places, each field named as its place. */
function small(
  form: "device" | "plate",
  ...fields: readonly (Partial<EditionField> & { place: Place })[]
): Edition {
  const name = "small";
  return {
    name,
    title: name,
    form,
    drawn: false,
    fields: fields.map((f) => ({ name: f.place, label: f.place, values: {}, ...f })),
  };
}

test("an untouched sheet holds nothing", () => {
  const { legends, prints, ...sheet } = device({});
  expect(sheet).toEqual({
    kind: "device",
    ...file,
    edition: { name: "device-26c", title: "Device sheet, edition 26c" },
    unread: [],
    unsure: [],
    doubts: [],
    contact: {},
    billTo: {},
    shipTo: {},
    shipSame: false,
    layouts: [],
  });
  expect(legends.map(({ face, rows, plain }) => [face, ...rows, plain])).toEqual([
    ...["1", "2", "3", "4", "5", "6"].map((face) => [face, "", "", false]),
    ["plate", "", "", false],
  ]);
  expect(prints["row.4.2"]).toEqual({ field: "button4_row2", label: "Button 4, row 2" });
  expect(prints["plain.plate"]).toEqual({ field: "plate_plain", label: "Plate legend: leave plain" });
});

test("text is trimmed, legends are not", () => {
  const sheet = device({ project: "  Larkspur Library ", button1_row1: " DIM  UP ", order_number: "   " });
  expect(sheet.project).toBe("Larkspur Library");
  expect(sheet).not.toHaveProperty("order");
  expect(sheet.legends[0]?.rows).toEqual([" DIM  UP ", ""]);
});

test("finish and lettering are matched by code or name, in any case; others are kept as typed", () => {
  expect(device({ finish: "oat", lettering: " INK" })).toMatchObject({ finish: "OAT", lettering: "INK" });
  expect(device({ finish: "Bare Tin", lettering: "milk" })).toMatchObject({
    finish: "TIN",
    lettering: "MLK",
  });
  expect(device({ finish: " Ivory ", lettering: "gold" })).toMatchObject({
    finish: "Ivory",
    lettering: "gold",
  });
});

test.each(["Choose…", "choose a finish", "Please select", "-", "––", " ", "…"])(
  "a drop-down left at %j is empty",
  (prompt) => {
    expect(device({ finish: prompt })).not.toHaveProperty("finish");
  },
);

test("a dash typed into a row is cut as typed", () => {
  expect(device({ button1_row1: "-" }).legends[0]?.rows[0]).toBe("-");
});

test.each([
  ["layout", "D9", "One button, Two buttons, Four buttons or Six buttons"],
  ["standing", "perhaps", "alone or in a plate"],
  ["legend_place", "left", "top or middle"],
  ["position", "three", "a number such as 2, or 2 of 4"],
  ["gangs", "-4", "a number such as 4"],
])("%s %j is unread", (name, typed, wants) => {
  const place = name === "legend_place" ? "legend-place" : name;
  const sheet = device({ [name]: typed });
  expect(sheet.unread).toEqual([{ place, typed, wants }]);
  expect(sheet.layouts).toEqual([]);
  for (const key of ["standing", "legendPlace", "position", "gangs"]) expect(sheet).not.toHaveProperty(key);
});

test("a layout is chosen by code or name", () => {
  expect(device({ layout: "Four buttons" }).layouts).toEqual(["D4"]);
  expect(device({ layout: "d6", legend_place: "Middle" })).toMatchObject({
    layouts: ["D6"],
    legendPlace: "middle",
  });
});

test.each([
  ["3", { position: 3 }],
  ["3 of 6", { position: 3, gangs: 6 }],
  ["3/6", { position: 3, gangs: 6 }],
  [" 1 OF 2 ", { position: 1, gangs: 2 }],
])("position %j", (typed, expected) => {
  expect(device({ PosOf: typed }, edition("device-25a"))).toMatchObject(expected);
});

test("the gangs in a field of their own hold against those beside the position", () => {
  expect(device({ position: "3 of 6", gangs: "4" })).toMatchObject({ position: 3, gangs: 4 });
});

test.each([["4 gang"], ["4-gangs"], ["4"]])("gangs %j", (typed) => {
  expect(device({ gangs: typed }).gangs).toBe(4);
});

test("where the form does not ask, a device stands in a plate if it has a position or a plate of several gangs", () => {
  const old = edition("device-25a");
  expect(device({ PosOf: "2" }, old).standing).toBe("in-plate");
  expect(device({}, old).standing).toBe("alone");
  const withGangs = small("device", { place: "gangs" });
  expect(device({ gangs: "3" }, withGangs).standing).toBe("in-plate");
  expect(device({ gangs: "1" }, withGangs).standing).toBe("alone");
});

test("where the form asks and nobody answers, standing is absent", () => {
  expect(device({ position: "2" })).not.toHaveProperty("standing");
  expect(device({ standing: "in-plate" }).standing).toBe("in-plate");
});

test("boxes that make one choice are collected, and printed together", () => {
  const old = edition("device-25a");
  const sheet = device({ Lay2: "Yes", Lay6: "On" }, old);
  expect(sheet.layouts).toEqual(["D2", "D6"]);
  expect(sheet.prints.layout).toEqual({
    field: "Lay1",
    besides: ["Lay2", "Lay4", "Lay6"],
    label: "1 button / 2 buttons / 4 buttons / 6 buttons",
  });
});

test("an edition no longer accepted names the newer one, by its title where that is known", () => {
  const old = edition("device-25a");
  const told = (newer?: string): string | undefined =>
    readSheet(fieldsOf(old, {}), old, file, catalogue, newer === undefined ? {} : { newer }).edition
      .replacedBy;
  expect(told("Device sheet, edition 26c")).toBe("Device sheet, edition 26c");
  expect(told()).toBe("device-26c");
});

test.each([
  ["on its last day", "2026-12-31", { accepted: { until: "2026-12-31", use: "Newer" } }],
  ["long before", "2025-01-01", { accepted: { until: "2026-12-31", use: "Newer" } }],
  ["on the day after", "2027-01-01", { replacedBy: "Newer" }],
  ["on a day that nobody tells", undefined, { replacedBy: "Newer" }],
])("an edition that is accepted for a while, %s", (_, today, expected) => {
  const old: Edition = { ...edition("device-25a"), acceptedUntil: "2026-12-31" };
  const outlook = { newer: "Newer", ...(today === undefined ? {} : { today }) };
  const sheet = readSheet(fieldsOf(old, {}), old, file, catalogue, outlook);
  expect(sheet.edition).toEqual({ name: "device-25a", title: "Device sheet, edition 25a", ...expected });
});

test("an edition that nothing replaces is the same on any day", () => {
  const of = edition("device-26c");
  const sheet = readSheet(fieldsOf(of, {}), of, file, catalogue, { today: "2099-12-31" });
  expect(sheet.edition).toEqual({ name: "device-26c", title: "Device sheet, edition 26c" });
});

test("a filled field that the edition does not have is told with what stands in it", () => {
  const of = edition("device-26c");
  const more: ReadField[] = [
    { name: "Rush", kind: "text", values: ["by Friday\nplease"] },
    { name: "Backlit", kind: "tick", values: ["Yes"] },
    { name: "Trim", kind: "choice", values: ["Brass", "Steel"] },
    { name: "Doubt", kind: "text", values: [""], unsure: { one: "", other: "seen by one" } },
    { name: "Empty", kind: "text", values: [""] },
    { name: "Blanks", kind: "text", values: ["  \n "] },
    { name: "Off", kind: "tick", values: ["Off"] },
    { name: "Prompt", kind: "choice", values: ["Choose…"] },
    { name: "Sign", kind: "signature", values: [] },
    { name: "Submit", kind: "button", values: [] },
  ];
  const sheet = readSheet([...fieldsOf(of, { order_number: "BW-2207" }), ...more], of, file, catalogue);
  expect(sheet.unmapped).toEqual([
    { name: "Rush", value: "by Friday\nplease" },
    { name: "Backlit", value: "Yes" },
    { name: "Trim", value: "Brass, Steel" },
    { name: "Doubt", value: "seen by one" },
  ]);
});

test("a field that means nothing may say what it will", () => {
  const ours = small("device", { place: "order" });
  const of: Edition = {
    ...ours,
    fields: [...ours.fields, { name: "Printed", label: "Printed", values: {} }],
  };
  const fields: ReadField[] = ["order", "Printed"].map((name) => ({ name, kind: "text", values: ["x"] }));
  expect(readSheet(fields, of, file, catalogue)).not.toHaveProperty("unmapped");
});

test("a form's own words may stand for numbers and for yes", () => {
  const own = small(
    "device",
    { place: "gangs", values: { Double: "2" } },
    { place: "position", name: "left", label: "Left", ticked: "1" },
    { place: "position", name: "right", label: "Right", ticked: "2" },
    { place: "ship.same", values: { Nein: "no", Ja: "yes" } },
    { place: "row.1.1" },
    { place: "plain.1", values: { blank: "yes", cut: "no" } },
  );
  const sheet = device({ gangs: "double", right: "Yes", "ship.same": "Nein", "plain.1": "Blank" }, own);
  expect(sheet).toMatchObject({ gangs: 2, position: 2, shipSame: false, legends: [{ plain: true }] });
  expect(device({ gangs: "Triple", "plain.1": "cut" }, own)).toMatchObject({
    unread: [{ place: "gangs", typed: "Triple", wants: "a number such as 4" }],
    legends: [{ plain: false }],
  });
});

test("a second choice where there can be one is unread", () => {
  const boxes = small(
    "device",
    { place: "finish", name: "white", label: "White", ticked: "CHK" },
    { place: "finish", name: "black", label: "Black", ticked: "SOT" },
  );
  const fields: ReadField[] = ["white", "black"].map((name) => ({ name, kind: "tick", values: ["Yes"] }));
  const sheet = readSheet(fields, boxes, file, catalogue);
  expect(sheet).not.toHaveProperty("finish");
  expect(sheet.unread).toEqual([{ place: "finish", typed: "White, Black", wants: "one choice only" }]);
});

test("values of a stranger's form stand for ours", () => {
  const sheet = device(
    { "MS.Where": "ganged", "MS.Colour": "Beige", "MS.Text": "White" },
    edition("marrowby-device-1"),
  );
  expect(sheet).toMatchObject({ standing: "in-plate", finish: "OAT", lettering: "MLK" });
});

test.each([
  ["Yes", true],
  ["On", true],
  ["Off", false],
  ["no", false],
  ["", false],
])("a box that says %j: %s", (value, marked) => {
  const sheet = device({ ship_same: value, button2_plain: value });
  expect(sheet.shipSame).toBe(marked);
  expect(sheet.legends[1]?.plain).toBe(marked);
});

test("one field a face holds a row on each line", () => {
  const lines = small("device", { place: "row.1.1" }, { place: "row.2.1" }, { place: "row.plate.1" });
  const sheet = device({ "row.1.1": "ALL\nOFF", "row.2.1": "A\nB\nC", "row.plate.1": "STAFF\n" }, lines);
  expect(sheet.legends.map(({ rows }) => rows)).toEqual([
    ["ALL", "OFF"],
    ["A", "B", "C"],
    ["STAFF", ""],
  ]);
  expect(sheet.prints["row.2.3"]).toEqual({ field: "row.2.1", label: "row.2.1" });
  expect(sheet.prints).not.toHaveProperty("row.1.3");
});

test("a field for each row keeps a line end that was typed into one", () => {
  expect(device({ button1_row1: "ALL\nOFF" }).legends[0]?.rows).toEqual(["ALL\nOFF", ""]);
});

test("faces come in the order of the wall, the plate last", () => {
  const mixed = small(
    "device",
    { place: "row.plate.1" },
    { place: "row.10.1" },
    { place: "plain.2" },
    { place: "row.1.1" },
  );
  expect(device({}, mixed).legends.map(({ face }) => face)).toEqual(["1", "2", "10", "plate"]);
});

test("a field with two answers is unsure at its place, and its value is the first", () => {
  const of = edition("device-26c");
  const fields = fieldsOf(of, { order_number: "BW-2207" }).map((field) =>
    field.name === "order_number" ? { ...field, unsure: { one: "BW-2207", other: "BW-2201" } } : field,
  );
  const sheet = readSheet(fields, of, file, catalogue);
  expect(sheet.order).toBe("BW-2207");
  expect(sheet.unsure).toEqual([{ place: "order", one: "BW-2207", other: "BW-2201" }]);
});

test("of boxes that make one choice, the one with two answers is told by its label", () => {
  const of = edition("device-25a");
  const fields = fieldsOf(of, { Lay2: "Yes" }).map((field) =>
    field.name === "Lay2" ? { ...field, unsure: { one: "Off", other: "Yes" } } : field,
  );
  expect(readSheet(fields, of, file, catalogue).unsure).toEqual([
    { place: "layout", one: "", other: "2 buttons" },
  ]);
});

test("a plate sheet", () => {
  const of = edition("plate-26c");
  const sheet = readSheet(
    fieldsOf(of, { gangs: "2", gang1_row1: "FOYER", gang2_plain: "Yes", ship_city: "Chicago" }),
    of,
    { ...file, named: "S-104.pdf" },
    catalogue,
  );
  expect(sheet).toMatchObject({ kind: "plate", gangs: 2, shipTo: { city: "Chicago" }, named: "S-104.pdf" });
  expect(sheet.legends).toHaveLength(6);
  expect(sheet.legends.slice(0, 2)).toEqual([
    { face: "1", rows: ["FOYER", ""], plain: false },
    { face: "2", rows: ["", ""], plain: true },
  ]);
});

test.each(["n/a", "N.A.", "none", "-", "Not applicable"])(
  "“%s” leaves empty what may be empty, and nothing else",
  (none) => {
    const sheet = device({
      contact_name: none,
      contact_email: none,
      contact_phone: none,
      ship_name: none,
      station_mark: none,
      position: none,
      gangs: none,
      legend_place: none,
      part_key: none,
      finish: none,
    });
    expect(sheet).toMatchObject({ contact: { name: none }, shipTo: {}, unread: [] });
    expect(Object.keys(sheet.contact)).toEqual(["name"]);
    for (const part of ["mark", "position", "gangs", "legendPlace", "partKey"])
      expect(sheet).not.toHaveProperty(part);
  },
);

test.each(["?", "TBD", "n/a 312-555-0117", "NONESUCH"])("“%s” is no way to say none", (typed) => {
  expect(device({ contact_phone: typed }).contact).toEqual({ phone: typed });
});

test("a plate must say how many gangs it has", () => {
  const of = edition("plate-26c");
  const { unread } = readSheet(fieldsOf(of, { gangs: "n/a" }), of, file, catalogue);
  expect(unread).toMatchObject([{ place: "gangs", typed: "n/a" }]);
});

/** The rows of a face of a device sheet. */
const rowsOn = (face: string, filled: Readonly<Record<string, string>>): readonly string[] | undefined =>
  device(filled).legends.find((legend) => legend.face === face)?.rows;

test.each(["n/a", "N/A", "-", "none", "not used", "blank"])("“%s” where nothing is cut is empty", (none) => {
  expect(rowsOn("3", { layout: "D2", button3_row1: none, button3_row2: none })).toEqual(["", ""]);
  expect(rowsOn("1", { layout: "D2", button1_plain: "Yes", button1_row1: none })).toEqual(["", ""]);
  expect(rowsOn("plate", { standing: "in-plate", layout: "D2", plate_row1: none })).toEqual(["", ""]);
});

test("words over two rows may say that nothing is cut", () => {
  expect(rowsOn("3", { layout: "D2", button3_row1: "NOT", button3_row2: "USED" })).toEqual(["", ""]);
});

test.each([
  ["a button that is there", "2", { button2_row1: "N/A" }, ["N/A", ""]],
  ["the second row of one", "2", { button2_row1: "HALL", button2_row2: "-" }, ["HALL", "-"]],
  ["the plate of a device alone", "plate", { standing: "alone", plate_row1: "-" }, ["-", ""]],
  ["a word where nothing is", "3", { button3_row1: "HALL" }, ["HALL", ""]],
  ["a word beside none", "3", { button3_row1: "HALL", button3_row2: "n/a" }, ["HALL", "n/a"]],
  ["a minus beside a plus", "2", { button1_row1: "+", button2_row1: "-", button2_plain: "Yes" }, ["-", ""]],
  ["no layout", "3", { layout: "", button3_row1: "N/A" }, ["N/A", ""]],
])("on %s it is kept as typed", (_, face, filled, rows) => {
  expect(rowsOn(face, { standing: "in-plate", layout: "D2", ...filled })).toEqual(rows);
});

test.each([
  ["finish", "OAT - Oat", "OAT"],
  ["finish", "Oat (OAT)", "OAT"],
  ["finish", "oat finish", "OAT"],
  ["finish", "Bare tin (TIN)", "TIN"],
  ["finish", "OAT - Slate", "OAT - Slate"],
  ["finish", "Oat or Slate", "Oat or Slate"],
  ["finish", "light oat", "light oat"],
  ["finish", "Bare", "Bare"],
  ["lettering", "INK/Ink", "INK"],
  ["lettering", "black ink", "black ink"],
  ["layout", "4 buttons", ["D4"]],
  ["layout", "4-button", ["D4"]],
  ["layout", "D4 (four btns)", ["D4"]],
  ["layout", "four button layout", ["D4"]],
  ["layout", "D2 (4 buttons)", []],
  ["layout", "3 buttons", []],
  ["layout", "4", []],
  ["layout", "buttons", []],
  ["standing", "Stands alone", "alone"],
  ["standing", "in plate", "in-plate"],
  ["standing", "plate", undefined],
  ["position", "#2", 2],
  ["position", "Pos. 2", 2],
  ["position", "Position 2 of 4", 2],
  ["position", "note 2", undefined],
  ["gangs", "2G", 2],
  ["gangs", "2 grey", undefined],
])("%s “%s” is read as %j", (name, typed, read) => {
  const sheet = device({ [name]: typed }) as unknown as Readonly<Record<string, unknown>>;
  expect(sheet[name === "layout" ? "layouts" : name]).toEqual(read);
});

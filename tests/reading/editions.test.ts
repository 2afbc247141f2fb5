import { PDFDocument, PDFName } from "pdf-lib";
import { describe, expect, test } from "vitest";
import { compareForms } from "../../src/reading/pdf/compare.ts";
import { editions } from "../make/config.ts";
import { answersFor } from "../make/filled.ts";
import { blankForm, filledForm } from "../make/pdf.ts";
import { readBoth } from "../make/read-both.ts";
import { readPdf } from "../make/read-pdf.ts";

/** The forms of these tests have the fields of an edition, and look otherwise. */
const noBlanks = { editions, blanks: new Map<string, Uint8Array>() };

const common = {
  id: "3/1",
  file: "a.pdf",
  unread: [],
  unsure: [],
  doubts: [],
  contact: { name: "Ines Calloway", email: "ines@brightwire.example", phone: "312-555-0117" },
  billTo: {
    name: "Brightwire Electric",
    street: "48 Foundry Row",
    city: "Chicago",
    state: "IL",
    postcode: "60607",
  },
  shipSame: true,
  project: "Larkspur Library",
  order: "BW-2207",
  gangs: 4,
  finish: "OAT",
  lettering: "INK",
  notes: "Deliver before 7 a.m.\nRing twice.",
};
const shipTo = {
  name: "Larkspur site office",
  street: "2 Quay Street",
  city: "Rockford",
  state: "IL",
  postcode: "61101",
};
const inPlate = { standing: "in-plate", position: 2, layouts: ["D4"] };

const expected: Readonly<Record<string, object>> = {
  "device-25a": {
    ...common,
    ...inPlate,
    kind: "device",
    edition: {
      name: "device-25a",
      title: "Device sheet, edition 25a",
      replacedBy: "Device sheet, edition 26c",
    },
    shipTo: {},
    mark: "S-104",
  },
  "device-26c": {
    ...common,
    ...inPlate,
    kind: "device",
    edition: { name: "device-26c", title: "Device sheet, edition 26c" },
    shipTo,
    mark: "S-104",
    legendPlace: "middle",
    partKey: "D4/OAT/INK-2",
  },
  "marrowby-device-1": {
    ...common,
    ...inPlate,
    kind: "device",
    edition: { name: "marrowby-device-1", title: "Marrowby Supply wall station form" },
    shipTo: {},
  },
  "plate-26c": {
    ...common,
    kind: "plate",
    edition: { name: "plate-26c", title: "Plate sheet, edition 26c" },
    shipTo,
    mark: "S-104",
    partKey: "D4/OAT/INK-2",
  },
};

const facesOf: Readonly<Record<string, readonly string[]>> = {
  "device-25a": ["1", "2", "3", "4", "5", "6"],
  "device-26c": ["1", "2", "3", "4", "5", "6", "plate"],
  "marrowby-device-1": ["1", "2", "3", "4", "5", "6", "plate"],
  "plate-26c": ["1", "2", "3", "4", "5", "6"],
};

describe.each(editions)("$title", (edition) => {
  test("filled in by its field names, reads back as what was filled in", async () => {
    const bytes = await filledForm(edition, answersFor(edition));
    const { file, sheet } = await readPdf(
      bytes,
      { id: "3/1", file: "a.pdf" },
      { forms: () => Promise.resolve(noBlanks) },
    );
    expect(file).toEqual({ id: "3/1", file: "a.pdf", kind: "sheet" });
    if (sheet === undefined) throw new Error("no sheet");
    const { legends, prints, ...rest } = sheet;
    expect(rest).toEqual(expected[edition.name]);
    expect(legends).toEqual(
      facesOf[edition.name]?.map((face) => ({
        face,
        rows: [`R ${face}.1`, `R ${face}.2`],
        plain: face === "2" && prints["plain.2"] !== undefined,
      })),
    );
    expect(Object.keys(prints).toSorted()).toEqual(
      [...new Set(edition.fields.flatMap(({ place }) => place ?? []))].toSorted(),
    );
  });

  test("filled in a field that somebody added to it, tells what stands there", async () => {
    const pdf = await PDFDocument.load(await filledForm(edition, answersFor(edition)));
    for (const [i, name] of ["Cust.Rush", "Cust.Left alone"].entries()) {
      const field = pdf.getForm().createTextField(name);
      field.addToPage(pdf.getPage(0), { x: 500, y: 800 - 20 * i, width: 80, height: 14 });
      if (i === 0) field.setText("by Friday");
    }
    const { sheet } = await readPdf(await pdf.save(), { id: "3/1", file: "a.pdf" });
    expect(sheet?.unmapped).toEqual([{ name: "Cust.Rush", value: "by Friday" }]);
    expect(sheet?.edition.name).toBe(edition.name);
  });

  test("filled in a field without a name, tells what stands there", async () => {
    const pdf = await PDFDocument.load(await filledForm(edition, answersFor(edition)));
    for (const text of ["", "4 pieces"]) {
      const field = pdf.getForm().createTextField(`nameless ${text}`);
      field.addToPage(pdf.getPage(0), { x: 500, y: 800, width: 80, height: 14 });
      field.setText(text);
      for (const dict of [field.acroField.dict, ...field.acroField.getWidgets().map(({ dict }) => dict)])
        dict.delete(PDFName.of("T"));
    }
    const { sheet } = await readPdf(await pdf.save(), { id: "3/1", file: "a.pdf" });
    expect(sheet?.unmapped).toEqual([{ name: "", value: "4 pieces" }]);
  });

  test.each([
    ["blank", blankForm(edition)],
    ["filled", filledForm(edition, answersFor(edition))],
  ])("both readers agree on every field, %s", async (_, made) => {
    const { one, other } = await readBoth(await made);
    const read = compareForms(one, other);
    expect(read.map(({ name }) => name).toSorted()).toEqual(
      edition.fields.map(({ name }) => name).toSorted(),
    );
    expect(read.filter(({ unsure }) => unsure !== undefined)).toEqual([]);
  });
});

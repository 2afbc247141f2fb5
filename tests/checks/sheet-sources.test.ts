import * as fc from "fast-check";
import { expect, test } from "vitest";
import { checkSheet, wordsOf } from "../../src/checks/run.ts";
import { unprinted } from "../../src/checks/sample.ts";
import { isShortFor, regionOf, regionsOfPostcode } from "../../src/orders/regions.ts";
import { addressParts, type Place } from "../../src/trade/place.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { aloneDevice, blankDevice, blankPlate, device, plate } from "../make/sample.ts";

/** Ids of the checks that find something on a sheet. */
const found = (sheet: Sheet): string[] => checkSheet(sheet, catalogue).map((problem) => problem.check);

// ZIP codes of the USPS that a rule of thumb gets wrong: the White House, Fishers Island (a Connecticut prefix), the IRS at Austin (a prefix
// of its own), Holtsville (the lowest ZIP in use) and Pago Pago.
test.each([
  ["20500", "DC"],
  ["06390", "NY"],
  ["73301", "TX"],
  ["00501", "NY"],
  ["96799", "AS"],
  ["00501-0001", "NY"],
  ["005010001", "NY"],
  [" 20500 ", "DC"],
])("the ZIP %s lies in %s", (postcode, state) => {
  expect(regionsOfPostcode(postcode)).toEqual([state]);
});

// Canada Post: Ottawa, Montréal, Vancouver, Iqaluit and Yellowknife.
test.each([
  ["K1A 0B1", ["ON"]],
  ["H2Y1C6", ["QC"]],
  ["v6b 1a1", ["BC"]],
  [" V6B-1A1 ", ["BC"]],
  ["X0A 0H0", ["NT", "NU"]],
  ["X1A 2N2", ["NT", "NU"]],
])("the postal code %s lies in %s", (postcode, provinces) => {
  expect(regionsOfPostcode(postcode)).toEqual(provinces);
});

// Canada Post: a postal code begins with none of D, F, I, O, Q, U, W and Z.
test.each([
  "D1A 1A1",
  "Z1A 1A1",
  "K1A",
  "K1A 0B12",
  "XK1A 0B1",
  "6060",
  "606071",
  "160607",
  "60607-12",
  "60607-12345",
  "",
])("“%s” is no postal code", (text) => {
  expect(regionsOfPostcode(text)).toEqual([]);
});

// USPS Publication 28, Appendix B: 50 states, the District of Columbia, 8 possessions and 3 military codes.
test("a state is known by its code and its name", () => {
  const codes = Array.from({ length: 26 * 26 }, (_, i) =>
    String.fromCodePoint(65 + Math.floor(i / 26), 65 + (i % 26)),
  ).filter((code) => regionOf(code) !== undefined);
  const provinces = ["AB", "BC", "MB", "NB", "NL", "NS", "NT", "NU", "ON", "PE", "QC", "SK", "YT"];
  expect(codes).toEqual(expect.arrayContaining(provinces));
  expect(codes.length - provinces.length).toBe(50 + 1 + 8 + 3);
  expect(regionOf("new york")).toBe("NY");
  expect(regionOf("D.C.")).toBe("DC");
  expect(regionOf("Québec")).toBe("QC");
  expect(regionOf("Ill.")).toBeUndefined();
  expect(["Il", "Ill.", "illi", "Illinoise"].map((typed) => isShortFor(typed, "IL"))).toEqual([
    false,
    true,
    true,
    false,
  ]);
  expect(isShortFor("Ill.", "QQ")).toBe(false);
});

// RFC 5321 §4.5.3.1.1: a local part has at most 64 octets; §4.5.3.1.3: a path has at most 256, < and > included.
test.each([
  [64, 254, []],
  [65, 254, ["email-malformed"]],
  [64, 255, ["email-malformed"]],
])("an address of %d characters before the @ and %d in all: %j", (local, total, problems) => {
  const labels = `${"a".repeat(60)}.`.repeat(4).slice(0, total - local - "@.example".length);
  const email = `${"i".repeat(local)}@${labels}.example`;
  expect(email).toHaveLength(total);
  expect(found(device({ contact: { name: "Ines Calloway", email } }))).toEqual(problems);
});

// North American Numbering Plan: 555-0100 to 555-0199 are set aside for fiction; they must do in examples.
test("every number set aside for fiction passes", () => {
  for (let n = 100; n < 200; n++)
    expect(found(device({ contact: { name: "Ines Calloway", phone: `212-555-0${n}` } }))).toEqual([]);
});

test("a contrast that only rounding would lift to 3 stops the sheet, and is not printed as 3", () => {
  // WCAG 2.x: #959595 on white is 2.9953.
  const pale = {
    ...catalogue,
    finishes: [{ code: "WHT", name: "White", colour: "#FFFFFF", devices: true, plates: [4] }],
    lettering: [{ code: "GRY", name: "Grey", colour: "#959595" }],
  };
  const [problem] = checkSheet(plate({ finish: "WHT", lettering: "GRY" }), pale);
  expect(problem).toMatchObject({
    check: "lettering-unreadable",
    severity: "stops",
    facts: { ratio: "2.99" },
  });
});

const text = fc.oneof(
  fc.string({ unit: "binary" }),
  fc.string(),
  fc.constantFrom("", " ", "N/A", "{row}", "$&", "é’"),
);
const number = fc.oneof(fc.integer(), fc.integer({ min: -1, max: 9 }));
const address = fc.record(Object.fromEntries(addressParts.map((part) => [part, text])), { requiredKeys: [] });
const changes = fc.record(
  {
    contact: fc.record({ name: text, email: text, phone: text }, { requiredKeys: [] }),
    billTo: address,
    shipTo: address,
    shipSame: fc.boolean(),
    edition: fc.record(
      { name: text, title: text, replacedBy: text, accepted: fc.record({ until: text, use: text }) },
      { requiredKeys: ["name", "title"] },
    ),
    unmapped: fc.array(fc.record({ name: text, value: text }), { maxLength: 20 }),
    unread: fc.array(
      fc.record({ place: fc.constantFrom<Place>("gangs", "row.1.1"), typed: text, wants: text }),
    ),
    unsure: fc.array(
      fc.record({ place: fc.constantFrom<Place>("finish", "plain.2"), one: text, other: text }),
    ),
    ...Object.fromEntries(
      ["project", "order", "mark", "finish", "lettering", "partKey", "notes"].map((key) => [key, text]),
    ),
    standing: fc.constantFrom("alone", "in-plate"),
    position: number,
    gangs: number,
    layouts: fc.array(fc.oneof(fc.constantFrom("D1", "D2", "D6"), text), { maxLength: 2 }),
    legends: fc.array(
      fc.record({
        face: fc.constantFrom("1", "2", "7", "plate"),
        rows: fc.array(text, { maxLength: 3 }),
        plain: fc.boolean(),
      }),
    ),
  },
  { requiredKeys: [] },
);

test("whatever is typed, every check answers in whole sentences", () => {
  fc.assert(
    fc.property(fc.constantFrom(device(), aloneDevice(), plate()), changes, (sheet, typed) => {
      for (const problem of checkSheet({ ...sheet, ...typed }, catalogue)) {
        const { says, fix } = wordsOf(problem);
        expect(says).not.toBe("");
        expect(fix).not.toBe("");
        expect(problem.spots.length).toBeGreaterThan(0);
      }
    }),
    { numRuns: 500 },
  );
});

test("nobody is blamed for a place that the form does not print", () => {
  for (const sheet of [
    blankDevice({ contact: device().contact, legends: device().legends }),
    blankPlate({ contact: plate().contact, legends: plate().legends }),
  ]) {
    expect(found(sheet)).toEqual(expect.arrayContaining(["field-missing", "address-incomplete"]));
    expect(found(unprinted(sheet, ...(Object.keys(sheet.prints) as Place[])))).toEqual([]);
  }
});

import { expect, test } from "vitest";
import type { ReadField } from "../../src/reading/form.ts";
import { carriesLabels, recognise } from "../../src/reading/recognise.ts";
import { editions } from "../make/config.ts";

const named = (...names: readonly string[]): ReadField[] =>
  names.map((name) => ({ name, kind: "text", values: [""] }));

test.each(editions)("$title is known by the names of its fields", (edition) => {
  expect(recognise(named(...edition.fields.map(({ name }) => name)), editions).edition).toBe(edition);
});

test.each(editions)("$title is known among a few fields of no meaning", ({ fields, name }) => {
  const more = ["Reset", "Page 1", "Barcode"];
  expect(recognise(named(...fields.map((field) => field.name), ...more), editions).edition?.name).toBe(name);
});

test("a form that lacks many fields of an edition is unknown, and named after the nearest", () => {
  const [first] = editions;
  const half = first?.fields.slice(0, first.fields.length * 0.7).map(({ name }) => name) ?? [];
  expect(recognise(named(...half), editions)).toEqual({ nearest: first?.title });
});

test("a form of which an edition is only a small part is unknown", () => {
  const [first] = editions;
  const names = first?.fields.map(({ name }) => name) ?? [];
  const others = Array.from({ length: 60 }, (_, i) => `other${i}`);
  expect(recognise(named(...names, ...others), editions)).toEqual({ nearest: first?.title });
});

test("a form with nothing in common is like none", () => {
  expect(recognise(named("given_name", "tax_year", "edition"), editions)).toEqual({});
  expect(recognise([], editions)).toEqual({});
});

test("what the form calls itself decides between editions of the same fields", () => {
  const [plate] = editions.filter(({ name }) => name === "plate-26c");
  if (plate === undefined) throw new Error("no plate sheet");
  const twins = [plate, { ...plate, name: "plate-27a" }];
  const calling = (itself: string): ReadField[] =>
    plate.fields.map(({ name }) => ({ name, kind: "text", values: [name === "edition" ? itself : ""] }));
  expect(recognise(calling("plate-27a"), twins).edition).toBe(twins[1]);
  expect(recognise(calling(" PLATE-26C "), twins).edition).toBe(twins[0]);
  expect(recognise(calling("plate-31c"), twins)).toEqual({ nearest: plate.title });
});

test("push buttons count as no field", () => {
  const [first] = editions;
  const fields = named(...(first?.fields.map(({ name }) => name) ?? []));
  const buttons = Array.from(
    { length: 300 },
    (_, i): ReadField => ({ name: `b${i}`, kind: "button", values: [] }),
  );
  expect(recognise([...fields, ...buttons], editions).edition).toBe(first);
});

test("a page with most labels of an edition is one of our forms, a page with a few is not", () => {
  const labels = editions.flatMap(({ name, fields }) =>
    name === "device-26c" ? fields.map(({ label }) => label) : [],
  );
  expect(carriesLabels(labels.join("\n").toUpperCase(), editions)).toBe(true);
  expect(carriesLabels("Order number\nE-mail\nPhone\nBill to\nShip to\nCity\nState\nNotes", editions)).toBe(
    false,
  );
  expect(carriesLabels("", editions)).toBe(false);
});

import { expect, test } from "vitest";
import {
  type ChoicePlace,
  entries,
  type Held,
  type Parts,
  type PlaceRow,
  places,
  rowOf,
} from "../../src/trade/place.ts";
import { isFilled } from "../../src/trade/sheet.ts";
import { aloneDevice, blankDevice, device, plate } from "../make/sample.ts";

// What these lines say is proved by `npm run types`: a line that would compile after all is a fault.

// @ts-expect-error: a place that becomes no part of a sheet
({ holds: "text", device: "never", label: "Colour of the box" }) satisfies PlaceRow;
// @ts-expect-error: a place of a kind that nothing reads
({ part: "colour", holds: "colour", device: "never", label: "Colour of the box" }) satisfies PlaceRow;
// @ts-expect-error: a place of choices without the choices
({}) satisfies Readonly<Record<ChoicePlace, unknown>>;
// @ts-expect-error: a kind of entry without a reader
({ text: 1, number: 1, position: 1, tick: 1, choice: 1 }) satisfies Readonly<Record<keyof Held, unknown>>;
// @ts-expect-error: a part that no place fills
({ project: "Library", colour: "red" }) satisfies Parts<"device">;
// @ts-expect-error: a plate has no position
({ position: 1 }) satisfies Parts<"plate">;

test("no two places become the same part", () => {
  const parts = entries.map((place) => places[place].part);
  expect(parts).toEqual([...new Set(parts)]);
});

test("every place stands on a sheet, and its label says what it is", () => {
  for (const row of Object.values<PlaceRow>(places)) {
    expect(row.device ?? row.plate).toBeDefined();
    expect(row.label).not.toBe("");
  }
});

test("faces share the rows of the table", () => {
  expect(rowOf("row.4.2")).toBe(places["row.{face}.{row}"]);
  expect(rowOf("plain.plate")).toBe(places["plain.{face}"]);
  expect(rowOf("bill.city").part).toBe("billTo.city");
});

test("a place is filled by what stands in its part", () => {
  expect(entries.filter((place) => isFilled(blankDevice(), place))).toEqual([]);
  const onPlate = entries.filter((place) => isFilled(plate(), place));
  expect(onPlate).toEqual([
    "contact.name",
    "contact.email",
    "contact.phone",
    "bill.name",
    "bill.street",
    "bill.city",
    "bill.state",
    "bill.postcode",
    "ship.same",
    "project",
    "order",
    "mark",
    "gangs",
    "finish",
    "lettering",
  ]);
  expect(entries.filter((place) => isFilled(device(), place) && !onPlate.includes(place))).toEqual([
    "standing",
    "position",
    "layout",
  ]);
  expect(isFilled(aloneDevice(), "position")).toBe(false);
});

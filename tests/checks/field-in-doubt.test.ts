import { expect, test } from "vitest";
import { fieldInDoubt } from "../../src/checks/sheet/field-in-doubt.ts";
import type { Entry } from "../../src/trade/place.ts";
import type { DeviceSheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { device } from "../make/sample.ts";

/** The sample device with something else at one place. */
function saying(place: Entry, typed: string): DeviceSheet {
  const sheet = device({ shipSame: false, shipTo: device().billTo });
  const [part = "", field] = place.replace("bill.", "billTo.").replace("ship.", "shipTo.").split(".");
  const before = (sheet as unknown as Record<string, object>)[part] ?? {};
  return { ...sheet, [part]: field === undefined ? typed : { ...before, [field]: typed } };
}

const found = (place: Entry, typed: string): string[] =>
  [...fieldInDoubt.find(saying(place, typed), catalogue)].map(({ wording, facts, spots }) =>
    [wording, facts["looks"], spots.map((spot) => spot.place).join(" ")].filter(Boolean).join(": "),
  );

// Common practice, no source. Each is asked about, and is no more than a part of the value behind it.
test.each<[Entry, string, string, string]>([
  ["project", "Larkspur?", "unsure: project", "Larkspur"],
  ["project", "Larkspur (?)", "unsure: project", "Larkspur (1)"],
  ["order", "BW 2207?", "unsure: order", "BW 2207"],
  ["mark", "S-104?", "unsure: mark", "S-104"],
  ["bill.city", "Chicago?", "unsure: bill.city", "Chicago"],
  ["ship.name", "Larkspur? or Brightwire", "unsure: ship.name", "Larkspur or Brightwire"],
  ["project", "asdf", "tried: project", "Asdfield"],
  ["project", "QWERTY", "tried: project", "Query"],
  ["contact.name", "jkl", "tried: contact.name", "J. Kl"],
  ["contact.name", "aaa", "tried: contact.name", "Aa"],
  ["project", "abcd", "tried: project", "ABC Court"],
  ["project", "test1", "tried: project", "Testbed"],
  ["project", "Project name", "tried: project", "Project North"],
  ["project", "New project", "tried: project", "New Projects Hall"],
  ["project", "job", "tried: project", "Job Corps"],
  ["contact.name", "me", "tried: contact.name", "Mel"],
  ["bill.name", "blah blah", "tried: bill.name", "Blahnik"],
  ["contact.name", "ines@brightwire.example", "kind: an e-mail address: contact.name", "Ines @ Brightwire"],
  ["bill.city", "a@b.example", "kind: an e-mail address: bill.city", "A @ B"],
  ["contact.name", "312-555-0117", "kind: a phone number: contact.name", "Ines 0117"],
  ["bill.name", "+1 (312) 555.0117", "kind: a phone number: bill.name", "1312"],
  ["order", "11/09/2026", "kind: a date: order", "11/09/2026-1"],
  ["order", "9.11.26", "kind: a date: order", "9.11.2"],
  ["order", "11/9/2026", "kind: a date: order", "111/9/2026"],
  ["mark", "2026-11-09", "kind: a date: mark", "2026-11"],
  ["bill.city", "60607", "kind: a number alone: bill.city", "Chicago 60607"],
  ["ship.street", "48", "kind: a number alone: ship.street", "48 Foundry Row"],
  ["bill.street", "P.O. Box", "kind: a box without its number: bill.street", "PO Box 12"],
  ["ship.street", "po box #", "kind: a box without its number: ship.street", "PO Boxwood Lane"],
  [
    "contact.email",
    "none@none.example",
    "kind: an address that nobody reads: contact.email",
    "nona@x.example",
  ],
  [
    "contact.email",
    "no-reply@x.example",
    "kind: an address that nobody reads: contact.email",
    "noreen@x.example",
  ],
  ["contact.email", "xxx@x.example", "kind: an address that nobody reads: contact.email", "x.y@x.example"],
  [
    "contact.email",
    "test@x.example",
    "kind: an address that nobody reads: contact.email",
    "tester@x.example",
  ],
])("at %s “%s” is in doubt (%s), and “%s” is not", (place, doubted, what, right) => {
  expect(found(place, doubted)).toEqual([what]);
  expect(found(place, right)).toEqual([]);
});

test.each(["contest@x.example", "na@x.example", "no@x.example", "email@x.example", "abc.d@x.example"])(
  "“%s” may be somebody's",
  (typed) => {
    expect(found("contact.email", typed)).toEqual([]);
  },
);

test("what other checks judge is left to them", () => {
  expect(found("project", "?")).toEqual([]);
  expect(found("order", "TBD")).toEqual([]);
  expect(found("contact.email", "what?@x.example")).toEqual([]);
});

test("an address that the tick leaves out is not looked at", () => {
  const sheet = { ...saying("ship.city", "Chicago?"), shipSame: true };
  expect([...fieldInDoubt.find(sheet, catalogue)]).toEqual([]);
});

import { expect, test } from "vitest";
import { isBlank, isDoubtful, isMissing, neverAsked, requiredOn } from "../../src/checks/required.ts";
import { legend, unprinted, without } from "../../src/checks/sample.ts";
import type { Edition } from "../../src/reading/edition.ts";
import { catalogue, editions } from "../make/config.ts";
import { blankDevice, device, plate } from "../make/sample.ts";

const [edition] = editions.filter(({ form }) => form === "device");
if (edition === undefined) throw new Error("no device sheet");
const asking = (...left: string[]): Edition => ({
  ...edition,
  fields: edition.fields.filter(({ place }) => place === undefined || !left.includes(place)),
});
/** The catalogue with one place for every legend. */
const plain = {
  ...catalogue,
  layouts: catalogue.layouts.map(({ legend_places: _places, ...layout }) => layout),
};

test("a form that leaves out what must be filled in is told", () => {
  expect(neverAsked(edition, plain)).toEqual([]);
  expect(neverAsked(asking("project"), plain)).toEqual(["project"]);
  expect(neverAsked(asking("notes"), plain)).toEqual([]);
});

test("gangs and standing are told by the position", () => {
  expect(neverAsked(asking("gangs", "standing"), plain)).toEqual([]);
  expect(neverAsked(asking("gangs", "standing", "position"), plain)).toEqual(
    expect.arrayContaining(["standing", "position"]),
  );
});

test("where a legend sits is needed only where a layout has places for it", () => {
  expect(neverAsked(asking("legend-place"), catalogue)).toEqual(["legend-place"]);
  expect(neverAsked(asking("legend-place"), plain)).toEqual([]);
});

test("a position is required in a plate alone", () => {
  expect(requiredOn(device(), catalogue)).toContain("position");
  expect(requiredOn(device({ standing: "alone" }), catalogue)).not.toContain("position");
  expect(requiredOn(plate(), catalogue)).not.toContain("position");
});

test("a place is missing where the form prints it, and nobody typed anything in it", () => {
  const unread = [{ place: "gangs" as const, typed: "four", wants: "a number" }];
  const gangless = without(plate(), "gangs");
  expect(isMissing(gangless, "gangs")).toBe(true);
  expect(isMissing(plate(), "gangs")).toBe(false);
  expect(isMissing(unprinted(gangless, "gangs"), "gangs")).toBe(false);
  expect(isMissing({ ...gangless, unread }, "gangs")).toBe(false);
  expect(isDoubtful({ ...gangless, unread }, "order")).toBe(false);
  expect(isDoubtful({ ...gangless, unsure: [{ place: "gangs", one: "3", other: "4" }] }, "gangs")).toBe(true);
});

test("a sheet is blank while it has no legend, no choice and no contact", () => {
  const blank = blankDevice();
  expect(isBlank(blank)).toBe(true);
  expect(isBlank({ ...blank, project: "Larkspur Library", order: "BW-2207", shipSame: true })).toBe(true);
  for (const part of [
    { finish: "OAT" },
    { gangs: 2 },
    { contact: { name: "Ines Calloway" } },
    { legends: [legend("1", "ENTRY")] },
    { legends: [{ ...legend("1", ""), plain: true }] },
    { unread: [{ place: "gangs" as const, typed: "four", wants: "a number" }] },
    { unsure: [{ place: "order" as const, one: "3", other: "4" }] },
  ])
    expect(isBlank({ ...blank, ...part }), JSON.stringify(part)).toBe(false);
  expect(isBlank(unprinted({ ...blank, standing: "alone" }, "standing"))).toBe(true);
});

import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { type Entry, entries, type PlaceRow, places } from "../../src/trade/place.ts";

// One row of the table. It is added before anything that follows from the table is loaded.
const wanted: PlaceRow = {
  part: "wantedBy",
  holds: "text",
  device: "always",
  plate: "never",
  label: "Wanted by",
  tip: "the day on site",
};
Object.assign(places, { "wanted-by": wanted });
(entries as Entry[]).splice(entries.indexOf("mark") + 1, 0, "wanted-by" as Entry);
const { blankSheet } = await import("../../src/drawing/blank-sheet.ts");
const { fillSheet } = await import("../../src/drawing/fill-sheet.ts");
const { checkSheet, wordsOf } = await import("../../src/checks/run.ts");
const { readEdition } = await import("../../src/reading/edition.ts");
const { catalogue, editions } = await import("../make/config.ts");
const { openPdf } = await import("../../src/reading/pdf/open-pdf.ts");
const { judge } = await import("../../src/reading/judge.ts");
const { look } = await import("../drawing/look.ts");

/** One line more in an edition, which so becomes the next. */
function withIt(name: string) {
  const file = `fixtures/trade/editions/${name}.yaml`;
  const text = readFileSync(file, "utf8").replace(name, name.replace("26c", "27a"));
  const read = readEdition(`${text}  wanted: { means: wanted-by, label: Needed on site }\n`, file, catalogue);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
}
const edition = withIt("device-26c");

async function sheetOf(values: Readonly<Record<string, string>>) {
  const bytes = await fillSheet(await blankSheet(edition, catalogue), { contact_name: "Ines", ...values });
  const known = { editions: [...editions, edition], catalogue };
  const { sheet } = judge(await openPdf(bytes), { id: "1/1", file: "a.pdf" }, known);
  if (sheet === undefined) throw new Error("no sheet");
  return sheet;
}

test("a new place is drawn, with its tip", async () => {
  const { widgets } = await look(await blankSheet(edition, catalogue));
  const drawn = (name: string) => widgets.find(({ fieldName }) => fieldName === name);
  expect(drawn("wanted")).toMatchObject({
    required: true,
    alternativeText: "Needed on site; must be filled in; the day on site",
  });
  const [, bottom = 0] = drawn("wanted")?.rect ?? [];
  expect(bottom).toBeGreaterThan(drawn("notes")?.rect[3] ?? Number.POSITIVE_INFINITY);
});

test("on the other form it need not be filled in", async () => {
  const { widgets } = await look(await blankSheet(withIt("plate-26c"), catalogue));
  expect(widgets.find(({ fieldName }) => fieldName === "wanted")).toMatchObject({
    required: false,
    alternativeText: "Needed on site; the day on site",
  });
});

test("what is typed there is a part of the sheet", async () => {
  const sheet = await sheetOf({ wanted: " 12 March " });
  expect(sheet).toMatchObject({ edition: { name: "device-27a" }, wantedBy: "12 March" });
  expect(sheet.prints["wanted-by" as Entry]).toEqual({ field: "wanted", label: "Needed on site" });
  expect(sheet).not.toHaveProperty("unmapped");
});

test("it is demanded where it must be filled in, by the form's own label", async () => {
  const missing = checkSheet(await sheetOf({}), catalogue).find(({ check }) => check === "field-missing");
  expect(missing === undefined ? "" : wordsOf(missing).says).toContain("“Needed on site”");
  expect(missing?.spots).toContainEqual({ file: "1/1", place: "wanted-by" });
});

test("an edition without it is read as what it is, and nobody is blamed for it", async () => {
  const old = editions.find(({ name }) => name === "device-26c");
  if (old === undefined) throw new Error("no edition device-26c");
  const bytes = await fillSheet(await blankSheet(old, catalogue), {
    contact_name: "Ines",
    project: "Library",
  });
  const known = { editions: [edition, ...editions], catalogue };
  const { sheet } = judge(await openPdf(bytes), { id: "1/1", file: "a.pdf" }, known);
  expect(sheet).toMatchObject({ edition: { name: "device-26c" }, project: "Library" });
  expect(sheet).not.toHaveProperty("wantedBy");
  const found = sheet === undefined ? [] : checkSheet(sheet, catalogue);
  const missing = found.find(({ check }) => check === "field-missing");
  expect(missing?.spots).not.toContainEqual({ file: "1/1", place: "wanted-by" });
  expect(missing?.spots).toContainEqual({ file: "1/1", place: "finish" });
});

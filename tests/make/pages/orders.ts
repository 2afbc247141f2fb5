import { fieldValues } from "../../../src/demo/build.ts";
import type { AttachmentDescription, SheetDescription } from "../../../src/demo/describe.ts";
import { loadScenario } from "../../../src/demo/load.ts";
import { blankSheet } from "../../../src/drawing/blank-sheet.ts";
import { fillSheet } from "../../../src/drawing/fill-sheet.ts";
import { maker } from "../config.ts";
import type { SampleSheet } from "../odd-sheets/sheets.ts";

/** Every sheet of the demonstration that stands on a form which Burin draws, each filling once. */
export async function demoSheets(): Promise<SampleSheet[]> {
  const { letters, sheets } = await loadScenario("fixtures");
  const drawn = maker.editions.filter((edition) => edition.drawn);
  const blanks = new Map<string, Uint8Array>();
  for (const edition of drawn) blanks.set(edition.name, await blankSheet(edition, maker.catalogue));
  const found = new Map<string, SampleSheet>();
  for (const description of letters.flatMap((letter) => letter.attachments.flatMap(inside))) {
    const base = sheets.get(description.like);
    const edition = drawn.find(({ name }) => name === (description.edition ?? base?.edition));
    if (edition === undefined || base === undefined) continue;
    const values = fieldValues(edition, merged(base, description));
    const blank = blanks.get(edition.name) as Uint8Array;
    const key = JSON.stringify([edition.name, values]);
    if (!found.has(key))
      found.set(key, { edition: edition.name, blank, values, filled: await fillSheet(blank, values) });
  }
  return [...found.values()];
}

type Liked = Extract<AttachmentDescription, { like: string }>;

function inside(attachment: AttachmentDescription): Liked[] {
  if ("zip" in attachment) return attachment.zip.flatMap(inside);
  if ("winmail" in attachment) return attachment.winmail.flatMap(inside);
  if ("letter" in attachment) return attachment.letter.attachments.flatMap(inside);
  return "like" in attachment ? [attachment] : [];
}

function merged(base: SheetDescription, changes: Liked): Omit<SheetDescription, "edition"> {
  return {
    fill: { ...base.fill, ...changes.fill },
    legends: { ...base.legends, ...changes.legends },
    plain: [...base.plain, ...changes.plain],
  };
}

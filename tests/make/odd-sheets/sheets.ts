import { blankSheet } from "../../../src/drawing/blank-sheet.ts";
import { fillSheet, type SheetValues } from "../../../src/drawing/fill-sheet.ts";
import { plainSheet } from "../../../src/drawing/plain-sheet.ts";
import { deviceValues, plateValues } from "../../drawing/values.ts";
import { catalogue, editions } from "../config.ts";

const marrowby: SheetValues = {
  "MS.Contact": "Joyce Tillman",
  "MS.Mail": "wallstations@marrowby.example",
  "MS.Tel": "312-555-0109",
  "MS.Job": "Holloway Street Legal Aid",
  "MS.PO": "77146",
  "MS.Acct.Company": "Marrowby Supply",
  "MS.Acct.Street": "75 Canal Court",
  "MS.Acct.City": "Indianapolis",
  "MS.Acct.St": "IN",
  "MS.Acct.Zip": "46204",
  "MS.DropShip": true,
  "MS.Where": "Single",
  "MS.Two": true,
  "MS.Colour": "Black",
  "MS.Text": "White",
  "MS.Key1.Line1": "MEETING",
  "MS.Key2.Line1": "OFF",
  "MS.Plate.Line1": "MEETING ROOM",
};

const values: Readonly<Record<string, SheetValues>> = {
  "device-26c": deviceValues,
  "plate-26c": plateValues,
  "marrowby-device-1": marrowby,
};

/** A sheet before and after it was filled in, and with what. */
export interface SampleSheet {
  readonly edition: string;
  readonly blank: Uint8Array;
  readonly filled: Uint8Array;
  readonly values: SheetValues;
}

/** A sheet of each form that can be ordered with: our two, and a distributor's own. */
export async function sampleSheets(): Promise<SampleSheet[]> {
  const samples: SampleSheet[] = [];
  for (const edition of editions) {
    const filling = values[edition.name];
    if (filling === undefined) continue;
    const blank = await (edition.drawn ? blankSheet : plainSheet)(edition, catalogue);
    samples.push({ edition: edition.name, blank, filled: await fillSheet(blank, filling), values: filling });
  }
  return samples;
}

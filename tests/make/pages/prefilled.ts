import { fillSheet } from "../../../src/drawing/fill-sheet.ts";
import { maker } from "../config.ts";
import type { SampleSheet } from "../odd-sheets/sheets.ts";

/** Sheets of which we have filled in the header, the station and the colours, and the buyer the rest. */
export async function prefilledSheets(sheets: readonly SampleSheet[]): Promise<SampleSheet[]> {
  const made: SampleSheet[] = [];
  for (const { edition, blank, values, filled } of sheets) {
    const fields = maker.editions.find(({ name }) => name === edition)?.fields ?? [];
    const isOurs = (field: string): boolean => {
      const place = fields.find(({ name }) => name === field)?.place ?? "notes";
      return !/^(?:layout|legend-place|part-key|row|plain|notes)\b/.test(place);
    };
    const entries = Object.entries(values);
    const ours = Object.fromEntries(entries.filter(([name]) => isOurs(name)));
    const rest = Object.fromEntries(entries.filter(([name]) => !isOurs(name)));
    made.push({ edition, blank: await fillSheet(blank, ours), values: rest, filled });
  }
  return made;
}

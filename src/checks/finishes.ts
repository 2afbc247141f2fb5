import { type Catalogue, type Finish, finishOf, letteringOf } from "../catalogue/catalogue.ts";
import { contrastRatio } from "../lettering/contrast.ts";
import type { Sheet } from "../trade/sheet.ts";

/** WCAG 2.2, 1.4.3: the least contrast of large text, and of any text. A ratio is never rounded up to them. */
export const leastLarge = 3;
export const leastContrast = 4.5;

/** Whether a sheet's finish is made for what it orders; undefined where none is chosen, or its gangs are at fault. */
export function hasFinishMade(sheet: Sheet, catalogue: Catalogue): boolean | undefined {
  if (sheet.finish === undefined) return undefined;
  const made = catalogue.finishes.filter((finish) => isMadeFor(sheet, finish));
  const finish = finishOf(catalogue, sheet.finish);
  return made.length === 0 ? undefined : finish !== undefined && made.includes(finish);
}

/**
 * Finishes to choose instead: made for what is ordered, for a device in a plate also for that plate, and easy to read in
 * the chosen lettering. Where none is, the nearest to that.
 */
export function finishesToOffer(sheet: Sheet, catalogue: Catalogue): readonly Finish[] {
  const made = catalogue.finishes.filter((finish) => isMadeFor(sheet, finish));
  const lettering = letteringOf(catalogue, sheet.lettering ?? "");
  const reads = (least: number) => (finish: Finish) =>
    lettering === undefined || contrastRatio(lettering.colour, finish.colour) >= least;
  const fits = ({ plates }: Finish): boolean =>
    sheet.kind === "plate" ||
    sheet.standing === "alone" ||
    sheet.gangs === undefined ||
    plates.includes(sheet.gangs);
  const wishes = [
    made.filter(fits).filter(reads(leastContrast)),
    made.filter(reads(leastContrast)),
    made.filter(reads(leastLarge)),
  ];
  return wishes.find((some) => some.length > 0) ?? made;
}

function isMadeFor(sheet: Sheet, { devices, plates }: Finish): boolean {
  if (sheet.kind === "device") return devices && (sheet.standing !== "alone" || plates.includes(1));
  return sheet.gangs === undefined || plates.includes(sheet.gangs);
}

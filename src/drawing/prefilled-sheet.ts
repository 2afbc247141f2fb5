import { type Catalogue, finishOf, letteringOf } from "../catalogue/catalogue.ts";
import type { Says } from "../orders/expected.ts";
import type { Edition, EditionField } from "../reading/edition.ts";
import type { Entry } from "../trade/place.ts";
import { places } from "../trade/place.ts";
import { canShow } from "./blank/appearance.ts";
import { choicesOf } from "./blank/choices.ts";
import { fillSheet, type SheetValues } from "./fill-sheet.ts";

/**
 * A blank sheet of ours with what is known of it filled in. What the sheet has no field for, cannot show or cannot
 * choose stays empty. `blank` is the drawing of its edition.
 */
export function prefilledSheet(
  blank: Uint8Array,
  says: Says,
  edition: Edition,
  catalogue: Catalogue,
): Promise<Uint8Array> {
  return fillSheet(blank, valuesOf(says, edition, catalogue));
}

/** The values of the fields with which a sheet of ours says something. */
export function valuesOf(says: Says, edition: Edition, catalogue: Catalogue): SheetValues {
  return Object.fromEntries(
    [...says].flatMap(([place, said]) => {
      const field = edition.fields.find((one) => one.place === place && one.ticked === undefined);
      const value = field === undefined ? undefined : valueOf(field, said, says, edition, catalogue);
      return field === undefined || value === undefined ? [] : [[field.name, value]];
    }),
  );
}

function valueOf(
  field: EditionField,
  said: string,
  says: Says,
  edition: Edition,
  catalogue: Catalogue,
): string | boolean | undefined {
  const place = field.place as Entry;
  if (places[place].holds === "tick") return true;
  const own = Object.entries(field.values).find(([, means]) => means === said)?.[0];
  if (place === "standing") return own ?? said;
  if (place === "finish" && !isMade(said, says, edition, catalogue)) return undefined;
  const typed = own ?? namedAt(place, said, says, edition, catalogue);
  const choices = choicesOf(field, edition, catalogue);
  const fits = choices === undefined ? canShow(typed) : choices.includes(typed);
  return fits ? typed : undefined;
}

/** What one types or chooses to say something at a place. */
function namedAt(place: Entry, said: string, says: Says, edition: Edition, catalogue: Catalogue): string {
  if (place === "finish") return finishOf(catalogue, said)?.name ?? said;
  if (place === "lettering") return letteringOf(catalogue, said)?.name ?? said;
  const gangs = says.get("gangs");
  // A form without a field for the gangs has both typed here.
  const isAlone = gangs === undefined || edition.fields.some((field) => field.place === "gangs");
  return place === "position" && !isAlone ? `${said} of ${gangs}` : said;
}

/** Whether a finish is made in what the sheet orders. */
function isMade(code: string, says: Says, { form }: Edition, catalogue: Catalogue): boolean {
  const finish = finishOf(catalogue, code);
  const gangs = Number(says.get("gangs") ?? 0);
  if (finish === undefined) return false;
  return form === "device" ? finish.devices : finish.plates.some((made) => made === gangs || gangs === 0);
}

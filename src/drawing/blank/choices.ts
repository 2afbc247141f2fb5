import { type Catalogue, type Finish, mostGangs, roomOfButton } from "../../catalogue/catalogue.ts";
import type { Edition, EditionField } from "../../reading/edition.ts";
import type { Place } from "../../trade/place.ts";

/** What may be chosen at a place, in the words of this edition. Undefined if one types freely. */
export function choicesOf(
  field: EditionField,
  edition: Edition,
  catalogue: Catalogue,
): readonly string[] | undefined {
  const own = Object.keys(field.values);
  if (own.length > 0) return own;
  const { place } = field;
  if (place === "finish") return finishesFor(edition.form, catalogue).map((finish) => finish.name);
  if (place === "lettering") return catalogue.lettering.map((lettering) => lettering.name);
  if (place === "gangs") return numbers(2, mostGangs(catalogue));
  // A form without a field for the gangs has both typed here: "2 of 4".
  if (place === "position" && edition.fields.some((other) => other.place === "gangs"))
    return numbers(1, mostGangs(catalogue));
  return undefined;
}

/** The finishes that a form can order: a plate sheet orders plates of two gangs or more. */
export function finishesFor(form: Edition["form"], catalogue: Catalogue): readonly Finish[] {
  return catalogue.finishes.filter((finish) =>
    form === "device" ? finish.devices : finish.plates.some((gangs) => gangs > 1),
  );
}

/** The most characters of a legend row; undefined for every other place. */
export function roomOf(
  place: Place | undefined,
  form: Edition["form"],
  catalogue: Catalogue,
): number | undefined {
  if (place === undefined || !place.startsWith("row.")) return undefined;
  if (form === "plate" || place.startsWith("row.plate.")) return catalogue.plate.characters;
  const [, face, row] = place.split(".");
  return roomOfButton(Number(face), catalogue, Number(row)).characters;
}

function numbers(from: number, to: number): string[] {
  return Array.from({ length: to - from + 1 }, (_, i) => String(from + i));
}

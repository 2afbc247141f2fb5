import { type Catalogue, layoutOf } from "../catalogue/catalogue.ts";
import type { Edition } from "../reading/edition.ts";
import { hasText } from "../trade/legend.ts";
import { type Entry, entries, type Need, type Place, type PlaceRow, places } from "../trade/place.ts";
import { isFilled, type Sheet } from "../trade/sheet.ts";

/** Places that every sheet of this kind must fill in, where its form prints them. */
export function requiredPlaces(kind: Sheet["kind"]): readonly Entry[] {
  return entries.filter((place) => needOf(place, kind) === "always");
}

/** Places that this sheet must fill in, because all must or because of what else it says. */
export function requiredOn(sheet: Sheet, catalogue: Catalogue): readonly Entry[] {
  return entries.filter((place) => {
    const need = needOf(place, sheet.kind);
    return need !== undefined && applies[need](sheet, catalogue);
  });
}

/** Places that some sheet must fill in and that its form does not print, so that nobody is asked for them. */
export function neverAsked(
  { form, fields }: Pick<Edition, "form" | "fields">,
  { layouts }: Catalogue,
): readonly Entry[] {
  const printed = new Set<Place | undefined>(fields.map(({ place }) => place));
  return entries.filter((place) => {
    const need = needOf(place, form);
    if (printed.has(place) || need === undefined || need === "never") return false;
    if (need === "by layout") return layouts.some((layout) => layout.legend_places !== undefined);
    // "2 of 4" says both how many gangs there are, and that the device goes into a plate.
    return !(printed.has("position") && (place === "gangs" || place === "standing"));
  });
}

const applies: Readonly<Record<Need, (sheet: Sheet, catalogue: Catalogue) => boolean>> = {
  always: () => true,
  never: () => false,
  "in a plate": (sheet) => sheet.kind === "device" && sheet.standing === "in-plate",
  "by layout": (sheet, catalogue) => {
    const [code] = sheet.kind === "device" ? sheet.layouts : [];
    return code !== undefined && layoutOf(catalogue, code)?.legend_places !== undefined;
  },
};

function needOf(place: Entry, kind: Sheet["kind"]): Need | undefined {
  const row: PlaceRow = places[place];
  return row[kind];
}

/** Whether the form prints a place and nothing stands in it. */
export function isMissing(sheet: Sheet, place: Entry): boolean {
  return sheet.prints[place] !== undefined && !isFilled(sheet, place) && !isDoubtful(sheet, place);
}

/** Whether something was typed that nobody could read for certain: other checks say so, the rest keep still. */
export function isDoubtful(sheet: Sheet, place: Place): boolean {
  return [...sheet.unread, ...sheet.unsure].some((doubt) => doubt.place === place);
}

/**
 * Whether no legend, no choice and no contact is filled in. Nothing more can be said of such a sheet than
 * that it is blank.
 */
export function isBlank(sheet: Sheet): boolean {
  const untouched = sheet.unread.length + sheet.unsure.length === 0;
  const unlettered = sheet.legends.every((legend) => !legend.plain && !hasText(legend));
  // What a form does not print was not filled in by anybody, even where reading concludes it from the rest.
  const filled = entries.filter(
    (place) => saysWhat(place) && sheet.prints[place] !== undefined && isFilled(sheet, place),
  );
  return untouched && unlettered && filled.length === 0;
}

/** Whether a place is a choice, a number or a part of the contact: more than the head of a letter. */
function saysWhat(place: Entry): boolean {
  const { holds } = places[place];
  return (holds !== "text" && holds !== "tick") || place.startsWith("contact.");
}

import { type Catalogue, layoutOf } from "../catalogue/catalogue.ts";
import { hasText } from "../trade/legend.ts";
import { addressParts, type Place } from "../trade/place.ts";
import type { Sheet } from "../trade/sheet.ts";

/** Places that every sheet of this kind must fill in, where its form prints them. */
export function requiredPlaces(kind: Sheet["kind"]): readonly Entry[] {
  return [
    "contact.name",
    ...addressParts.map((part) => `bill.${part}` as const),
    "project",
    "order",
    ...(kind === "device" ? (["standing", "layout"] as const) : (["gangs"] as const)),
    "finish",
    "lettering",
  ];
}

/** Places that this sheet must fill in because of what else it says. */
export function alsoRequired(sheet: Sheet, catalogue: Catalogue): readonly Entry[] {
  if (sheet.kind === "plate") return [];
  const [code] = sheet.layouts;
  const choosesPlace = code !== undefined && layoutOf(catalogue, code)?.legend_places !== undefined;
  return [
    ...(sheet.standing === "in-plate" ? (["position", "gangs"] as const) : []),
    ...(choosesPlace ? (["legend-place"] as const) : []),
  ];
}

/** Whether the form prints a place and nothing stands in it. */
export function isMissing(sheet: Sheet, place: Entry): boolean {
  return (
    sheet.prints[place] !== undefined && entries[place](sheet) === undefined && !isDoubtful(sheet, place)
  );
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
  const filled = choices.filter(
    (place) => sheet.prints[place] !== undefined && entries[place](sheet) !== undefined,
  );
  return untouched && unlettered && filled.length === 0;
}

/** A place that may be demanded. Legends and the ship-to mark have checks of their own. */
export type Entry = Exclude<
  Place,
  `row.${string}` | `plain.${string}` | "ship.same" | "mark" | "part-key" | "notes" | "edition"
>;

const choices = [
  "contact.name",
  "contact.email",
  "contact.phone",
  "standing",
  "position",
  "gangs",
  "layout",
  "legend-place",
  "finish",
  "lettering",
] as const satisfies readonly Entry[];

/** What stands in each place; undefined when nothing does. */
const entries: { readonly [P in Entry]: (sheet: Sheet) => string | number | undefined } = {
  "contact.name": ({ contact }) => contact.name,
  "contact.email": ({ contact }) => contact.email,
  "contact.phone": ({ contact }) => contact.phone,
  "bill.name": ({ billTo }) => billTo.name,
  "bill.street": ({ billTo }) => billTo.street,
  "bill.city": ({ billTo }) => billTo.city,
  "bill.state": ({ billTo }) => billTo.state,
  "bill.postcode": ({ billTo }) => billTo.postcode,
  "ship.name": ({ shipTo }) => shipTo.name,
  "ship.street": ({ shipTo }) => shipTo.street,
  "ship.city": ({ shipTo }) => shipTo.city,
  "ship.state": ({ shipTo }) => shipTo.state,
  "ship.postcode": ({ shipTo }) => shipTo.postcode,
  project: ({ project }) => project,
  order: ({ order }) => order,
  standing: (sheet) => (sheet.kind === "device" ? sheet.standing : undefined),
  position: (sheet) => (sheet.kind === "device" ? sheet.position : undefined),
  gangs: ({ gangs }) => gangs,
  layout: (sheet) => (sheet.kind === "device" ? sheet.layouts[0] : undefined),
  "legend-place": (sheet) => (sheet.kind === "device" ? sheet.legendPlace : undefined),
  finish: ({ finish }) => finish,
  lettering: ({ lettering }) => lettering,
};

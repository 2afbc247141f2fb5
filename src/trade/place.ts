import type { FaceName } from "./legend.ts";

/** Parts of a postal address, in the order in which they are printed. */
export const addressParts = ["name", "street", "city", "state", "postcode"] as const;
export type AddressPart = (typeof addressParts)[number];

/** The two sheets there are. */
export type SheetKind = "device" | "plate";

/** What can stand at a place, by how it is read. */
export interface Held {
  /** As typed, trimmed. */
  readonly text: string;
  /** A whole number. */
  readonly number: number;
  /** A number, with or without the gangs behind it: "2 of 4". */
  readonly position: number;
  /** The code of one choice. */
  readonly choice: string;
  /** The codes of every choice that is marked. */
  readonly choices: readonly string[];
  readonly tick: boolean;
}

/** When a place must be filled in. */
export type Need =
  | "always"
  | "never"
  /** By a device that goes into a plate. */
  | "in a plate"
  /** Where the layout leaves a choice. */
  | "by layout";

/** All that is said of one place of a sheet. */
export interface PlaceRow {
  /** The part of a `Sheet` that this place fills. */
  readonly part: string;
  /** Legends and the edition are read by rules of their own. */
  readonly holds: keyof Held | "row" | "plain" | "edition";
  /** The sheets that have it, and when it must be filled in there. */
  readonly device?: Need;
  readonly plate?: Need;
  /** Its name if a form has none for it. */
  readonly label: string;
  /** What a person who fills it in should know. */
  readonly tip?: string;
}

const must = { device: "always", plate: "always" } as const;
const may = { device: "never", plate: "never" } as const;
const reach = "we need an e-mail address or a phone number";
const everySheet = "the same on every sheet of the order";
const twoLetters = "two letters, such as IL";

/**
 * Every place of a sheet, in the order in which one fills it in. Types, reading, editions, required fields and
 * the tips of blank sheets follow from this table. `{face}` stands for each face, `{row}` for each row of it.
 */
export const places = {
  "contact.name": { part: "contact.name", holds: "text", ...must, label: "Contact name" },
  "contact.email": { part: "contact.email", holds: "text", ...may, label: "E-mail", tip: reach },
  "contact.phone": { part: "contact.phone", holds: "text", ...may, label: "Phone", tip: reach },
  "bill.name": { part: "billTo.name", holds: "text", ...must, label: "Bill to: company" },
  "bill.street": { part: "billTo.street", holds: "text", ...must, label: "Bill to: street" },
  "bill.city": { part: "billTo.city", holds: "text", ...must, label: "Bill to: city" },
  "bill.state": { part: "billTo.state", holds: "text", ...must, label: "Bill to: state", tip: twoLetters },
  "bill.postcode": {
    part: "billTo.postcode",
    holds: "text",
    ...must,
    label: "Bill to: ZIP or postal code",
  },
  "ship.same": {
    part: "shipSame",
    holds: "tick",
    ...may,
    label: "Ship to: same as bill-to",
    tip: "tick it instead of filling in the ship-to address",
  },
  "ship.name": { part: "shipTo.name", holds: "text", ...may, label: "Ship to: company" },
  "ship.street": { part: "shipTo.street", holds: "text", ...may, label: "Ship to: street" },
  "ship.city": { part: "shipTo.city", holds: "text", ...may, label: "Ship to: city" },
  "ship.state": { part: "shipTo.state", holds: "text", ...may, label: "Ship to: state", tip: twoLetters },
  "ship.postcode": { part: "shipTo.postcode", holds: "text", ...may, label: "Ship to: ZIP or postal code" },
  project: { part: "project", holds: "text", ...must, label: "Project name", tip: everySheet },
  order: { part: "order", holds: "text", ...must, label: "Order number", tip: everySheet },
  /** A plate without a mark has no devices. */
  mark: {
    part: "mark",
    holds: "text",
    device: "never",
    plate: "always",
    label: "Station mark",
    tip: "the place on the wall, such as S-104; it ties a plate sheet and its device sheets together",
  },
  standing: { part: "standing", holds: "choice", device: "always", label: "Where the device goes" },
  /** Which opening of the plate, counted from 1 at the left. */
  position: {
    part: "position",
    holds: "position",
    device: "in a plate",
    label: "Position",
    tip: "which opening of the plate, counted from the left",
  },
  /** Gangs of the plate this sheet orders or, on a device sheet, of the plate the device goes into. */
  gangs: {
    part: "gangs",
    holds: "number",
    device: "in a plate",
    plate: "always",
    label: "Gangs of the plate",
    tip: "how many openings the plate has",
  },
  layout: { part: "layouts", holds: "choices", device: "always", label: "Layout" },
  /** Where the legend of a one-button device sits. */
  "legend-place": { part: "legendPlace", holds: "choice", device: "by layout", label: "Legend sits at" },
  /** Catalogue code of the finish, or the words typed if the catalogue knows none such. */
  finish: { part: "finish", holds: "choice", ...must, label: "Finish" },
  /** Catalogue code of the lettering, or the words typed if the catalogue knows none such. */
  lettering: { part: "lettering", holds: "choice", ...must, label: "Lettering" },
  /** The part key the buyer wrote down, as typed. */
  "part-key": {
    part: "partKey",
    holds: "text",
    ...may,
    label: "Part key",
    tip: "only if you know it; it must match what is chosen here",
  },
  "row.{face}.{row}": {
    part: "legends",
    holds: "row",
    ...may,
    label: "Face {face}, row {row}",
    tip: "{characters} characters at most, cut exactly as typed",
  },
  "plain.{face}": {
    part: "legends",
    holds: "plain",
    ...may,
    label: "Face {face}: leave plain",
    tip: "tick it if nothing is to be engraved on this face",
  },
  notes: {
    part: "notes",
    holds: "text",
    ...may,
    label: "Notes",
    tip: "read by a person; words written here are not engraved",
  },
  edition: {
    part: "edition",
    holds: "edition",
    ...may,
    label: "Edition",
    tip: "which printed version of this sheet it is",
  },
} as const satisfies Readonly<Record<string, PlaceRow>>;

type Places = typeof places;

/** A place that fills a part of its own. */
export type Entry = {
  [P in keyof Places]: Places[P]["holds"] extends keyof Held ? P : never;
}[keyof Places];

/** A place where one chooses. */
export type ChoicePlace = {
  [P in keyof Places]: Places[P]["holds"] extends "choice" | "choices" ? P : never;
}[keyof Places];

/**
 * Where on a sheet something stands, whatever the form calls its field. `row.<face>.<n>` is the n-th row of the
 * legend on a face. `plain.<face>` is its "leave plain" mark.
 */
export type Place = Entry | "edition" | `row.${FaceName}.${number}` | `plain.${FaceName}`;

/** Every place that fills a part of its own, in the order of the table. */
export const entries: readonly Entry[] = Object.entries<PlaceRow>(places).flatMap(([place, { holds }]) =>
  holds === "row" || holds === "plain" || holds === "edition" ? [] : [place as Entry],
);

/** What the table says of a place. */
export function rowOf(place: Place): PlaceRow {
  if (place.startsWith("row.")) return places["row.{face}.{row}"];
  if (place.startsWith("plain.")) return places["plain.{face}"];
  return places[place as Entry | "edition"];
}

/** The last step of a part: "name" of "contact.name" within "contact.". Never, if the part does not lie there. */
type Step<Part, Within extends string> = Part extends `${Within}${infer Name}`
  ? Name extends `${string}.${string}`
    ? never
    : Name
  : never;

/** The parts that the places of a kind of sheet fill: all of them, or those within a part. Empty ones are absent. */
export type Parts<Kind extends SheetKind, Within extends string = ""> = {
  readonly [P in Entry as Places[P] extends Readonly<Record<Kind, Need>>
    ? Step<Places[P]["part"], Within>
    : never]?: Held[Places[P]["holds"]];
};

/** How a form prints a place: the name of its field and the label beside it. */
export interface Print {
  readonly field: string;
  /** The other fields, where several boxes make one choice. */
  readonly besides?: readonly string[];
  readonly label: string;
}

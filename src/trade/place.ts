import type { FaceName } from "./legend.ts";

/** Parts of a postal address, in the order in which they are printed. */
export const addressParts = ["name", "street", "city", "state", "postcode"] as const;
export type AddressPart = (typeof addressParts)[number];

/**
 * Where on a sheet something stands, whatever the form calls its field.
 * `row.<face>.<n>` is the n-th row of the legend on a face; `plain.<face>` its "leave plain" mark.
 */
export type Place =
  | "contact.name"
  | "contact.email"
  | "contact.phone"
  | `bill.${AddressPart}`
  | `ship.${AddressPart}`
  | "ship.same"
  | "project"
  | "order"
  | "mark"
  | "standing"
  | "position"
  | "gangs"
  | "layout"
  | "legend-place"
  | "finish"
  | "lettering"
  | "part-key"
  | `row.${FaceName}.${number}`
  | `plain.${FaceName}`
  | "notes"
  | "edition";

/** How a form prints a place: the name of its field and the label beside it. */
export interface Print {
  readonly field: string;
  /** The other fields, where several boxes make one choice. */
  readonly besides?: readonly string[];
  readonly label: string;
}

import type { Catalogue } from "../catalogue/catalogue.ts";
import type { ChoicePlace } from "../trade/place.ts";
import { standings } from "../trade/sheet.ts";

/** The part of the catalogue that editions and forms are read by. */
export type Makes = Pick<Catalogue, "device" | "layouts" | "plate" | "finishes" | "lettering">;

/** What can be chosen at a place: how the trade codes it, and what people call it. */
export type Choices = readonly { readonly code: string; readonly name: string }[];

/**
 * What becomes of a value that is none of the choices: it counts as unread, or it is kept as typed and judged later.
 */
export type Stranger = "unread" | "kept";

/** What may be chosen at each place. */
export const choicesAt = {
  standing: { of: () => standings, stranger: "unread" },
  layout: { of: ({ layouts }) => layouts, stranger: "unread" },
  "legend-place": {
    of: ({ layouts }) =>
      [...new Set(layouts.flatMap((layout) => layout.legend_places ?? []))].map((name) => ({
        code: name,
        name,
      })),
    stranger: "unread",
  },
  finish: { of: ({ finishes }) => finishes, stranger: "kept" },
  lettering: { of: ({ lettering }) => lettering, stranger: "kept" },
} as const satisfies Readonly<
  Record<ChoicePlace, { readonly of: (makes: Makes) => Choices; readonly stranger: Stranger }>
>;

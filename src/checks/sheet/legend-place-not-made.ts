import { layoutOf } from "../../catalogue/catalogue.ts";
import { chosenLayout } from "../../catalogue/faces.ts";
import { at, defineSheetCheck, labelOf } from "../check.ts";

/** Where a legend sits if its layout leaves no choice. */
const usual = "middle";

export const legendPlaceNotMade = defineSheetCheck({
  id: "legend-place-not-made",
  title: "A legend is to sit where its layout has none",
  severity: "stops",
  source: { kind: "house" },
  why: "Not every layout leaves it to the buyer where on its buttons the legends sit. One that is wanted elsewhere would be cut in the middle.",
  wordings: {
    other: {
      says: "“{field}” says “{place}”, which the layout “{layout}” does not have.",
      fix: "Choose {places|or}, or correct the layout.",
    },
    none: {
      says: "“{field}” says “{place}”, but the layout “{layout}” has its legends in the middle of each button.",
      fix: "Choose “middle” or leave it empty, or correct the layout.",
    },
  },
  passing: [
    {
      shows: "a place that the layout has",
      given: ({ catalogue, layoutThat, aloneDevice }) => {
        const code = layoutThat(({ legend_places }) => legend_places !== undefined);
        const [legendPlace = usual] = layoutOf(catalogue, code)?.legend_places ?? [];
        return aloneDevice({ layouts: [code], legendPlace });
      },
    },
    {
      shows: "the middle, where a layout has nothing else",
      given: ({ device }) => device({ legendPlace: usual }),
    },
    {
      shows: "a layout that is not chosen, so that nobody knows its places",
      given: ({ device }) => device({ layouts: [], legendPlace: "foot" }),
    },
  ],
  failing: [
    {
      shows: "a place that another layout may have",
      given: ({ layoutThat, device }) =>
        device({
          layouts: [layoutThat(({ legend_places: places }) => places?.includes("foot") === false)],
          legendPlace: "foot",
        }),
      wording: "other",
      says: "“Legend sits at” says “foot”, which the layout “One button” does not have.",
      fix: "Choose top or middle, or correct the layout.",
    },
    {
      shows: "a place on a layout that leaves no choice",
      given: ({ device }) => device({ legendPlace: "foot" }),
      wording: "none",
      says: "“Legend sits at” says “foot”, but the layout “Four buttons” has its legends in the middle of each button.",
    },
  ],
  *find(sheet, catalogue, say) {
    const layout = chosenLayout(sheet, catalogue);
    if (sheet.kind === "plate" || layout === undefined || sheet.legendPlace === undefined) return;
    const { legendPlace: place } = sheet;
    const places: readonly string[] | undefined = layout.legend_places;
    if ((places ?? [usual]).includes(place)) return;
    const facts = { field: labelOf(sheet, "legend-place"), place, layout: layout.name };
    const spots = at(sheet, "legend-place", "layout");
    if (places === undefined) yield say("none", facts, spots);
    else yield say("other", { ...facts, places }, spots);
  },
});

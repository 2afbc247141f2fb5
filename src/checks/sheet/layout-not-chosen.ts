import { at, defineSheetCheck } from "../check.ts";
import { isBlank, isMissing } from "../required.ts";

export const layoutNotChosen = defineSheetCheck({
  id: "layout-not-chosen",
  title: "No layout is chosen",
  severity: "stops",
  source: { kind: "common practice" },
  why: "The layout says how many buttons the device has; it is not to be guessed from the legends.",
  wordings: {
    none: {
      says: "No layout is chosen.",
      fix: "Choose one of these: {layouts|or}.",
    },
  },
  passing: [
    { shows: "one layout", given: ({ device }) => device() },
    { shows: "a plate, which has none", given: ({ plate }) => plate() },
    { shows: "a blank sheet, which has a check of its own", given: ({ blankDevice }) => blankDevice() },
  ],
  failing: [
    {
      shows: "legends without a layout",
      given: ({ device }) => device({ layouts: [] }),
      wording: "none",
      fix: "Choose one of these: “One button”, “Two buttons”, “Four buttons” or “Six buttons”.",
    },
  ],
  *find(sheet, catalogue, say) {
    if (!isBlank(sheet) && isMissing(sheet, "layout"))
      yield say("none", { layouts: catalogue.layouts.map(({ name }) => `“${name}”`) }, at(sheet, "layout"));
  },
});

import type { Entry } from "../../trade/place.ts";
import { at, defineSheetCheck, labelOf } from "../check.ts";
import { isBlank, isMissing, requiredOn } from "../required.ts";
import { unprinted, without } from "../sample.ts";

/** Places that other checks speak of in words of their own. */
const elsewhere = (place: Entry): boolean =>
  place.startsWith("bill.") || place === "layout" || place === "mark";

export const fieldMissing = defineSheetCheck({
  id: "field-missing",
  title: "Required fields are empty",
  severity: "stops",
  source: { kind: "house" },
  why: "Without these the order cannot be made, or nobody knows whose it is.",
  wordings: {
    missing: {
      says: "Not filled in: {fields}.",
      fix: "Fill in what is missing and send the sheet again.",
    },
  },
  passing: [
    { shows: "everything filled in", given: ({ plate }) => plate() },
    {
      shows: "a form that does not ask for a project",
      given: ({ plate }) => unprinted(without(plate(), "project"), "project"),
    },
    {
      shows: "a field that was typed but could not be read",
      given: ({ plate }) =>
        without(
          plate({ unread: [{ place: "gangs", typed: "four", wants: "a number from 2 to 6" }] }),
          "gangs",
        ),
    },
    { shows: "a blank sheet, which has a check of its own", given: ({ blankDevice }) => blankDevice() },
  ],
  failing: [
    {
      shows: "no project and no finish",
      given: ({ plate }) => without(plate(), "project", "finish"),
      wording: "missing",
      says: "Not filled in: “Project name” and “Finish”.",
    },
    {
      shows: "a device in a plate without its position",
      given: ({ device }) => without(device(), "position"),
      wording: "missing",
      says: "Not filled in: “Position”.",
    },
    {
      shows: "one button, and nobody said where its legend sits",
      given: ({ device, layoutThat }) =>
        device({ layouts: [layoutThat(({ legend_places }) => legend_places !== undefined)] }),
      wording: "missing",
      says: "Not filled in: “Legend sits at”.",
    },
  ],
  *find(sheet, catalogue, say) {
    if (isBlank(sheet)) return;
    const missing = requiredOn(sheet, catalogue).filter(
      (place) => !elsewhere(place) && isMissing(sheet, place),
    );
    if (missing.length > 0)
      yield say(
        "missing",
        { fields: missing.map((place) => `“${labelOf(sheet, place)}”`) },
        at(sheet, ...missing),
      );
  },
});

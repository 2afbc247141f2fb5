import { at, defineSheetCheck } from "../check.ts";
import { isDoubted } from "../doubted.ts";
import { isBlank } from "../required.ts";
import { unprinted } from "../sample.ts";

export const blankSheet = defineSheetCheck({
  id: "blank-sheet",
  title: "Nothing is filled in",
  severity: "stops",
  source: { kind: "common practice" },
  why: "The download button of a PDF viewer may save the empty original instead of what was typed into it, so a sheet that was filled with care can arrive blank.",
  wordings: {
    blank: {
      says: "This sheet arrived blank: no legend, no choice and no contact is filled in.",
      fix: "Save the filled sheet with your PDF viewer's own Save. A download button may give you the empty original, and a print to PDF loses the fields. Open the saved file again, see that it is filled, and attach that one.",
    },
  },
  passing: [
    { shows: "a filled sheet", given: ({ device }) => device() },
    {
      shows: "an empty sheet written on by hand",
      given: ({ blankDevice }) => blankDevice({ doubts: [{ what: "handwriting" }] }),
    },
  ],
  failing: [
    { shows: "an empty device sheet", given: ({ blankDevice }) => blankDevice(), wording: "blank" },
    { shows: "an empty plate sheet", given: ({ blankPlate }) => blankPlate(), wording: "blank" },
    {
      shows: "a sheet with nothing but the project on it",
      given: ({ blankDevice }) => blankDevice({ project: "Larkspur Library" }),
      wording: "blank",
    },
    {
      shows: "a form that does not ask where the device goes, so that it seems to stand alone",
      given: ({ blankDevice }) => unprinted(blankDevice({ standing: "alone" }), "standing"),
      wording: "blank",
    },
  ],
  *find(sheet, _catalogue, say) {
    // What somebody wrote beside the fields explains why they are empty.
    if (isBlank(sheet) && !isDoubted(sheet, "handwriting", "typed-over", "image-over"))
      yield say("blank", {}, at(sheet));
  },
});

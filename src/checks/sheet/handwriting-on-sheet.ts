import { defineSheetCheck } from "../check.ts";
import { doubtedPlaces, fieldsIn, spotsOf } from "../doubted.ts";

export const handwritingOnSheet = defineSheetCheck({
  id: "handwriting-on-sheet",
  title: "Something is written by hand",
  severity: "stops",
  waivable: true,
  seen: true,
  source: { kind: "common practice" },
  why: "What is engraved must be typed. A pen stroke may be a letter, a correction or a slip of the hand, and nobody can tell which.",
  wordings: {
    fields: {
      says: "Something is written or drawn by hand over {fields}, and handwriting is not read.",
      fix: "Remove it, type into the fields what it says, save the sheet, and send it again.",
    },
    page: {
      says: "Something is written or drawn by hand on this sheet, and handwriting is not read.",
      fix: "Remove it, type into the fields what it says, save the sheet, and send it again.",
    },
  },
  passing: [
    { shows: "a sheet filled in by typing", given: ({ device }) => device() },
    {
      shows: "typing over a field",
      given: ({ device }) => device({ doubts: [{ what: "typed-over", place: "row.1.1" }] }),
    },
  ],
  failing: [
    {
      shows: "a pen stroke through two rows",
      given: ({ device }) =>
        device({
          doubts: [
            { what: "handwriting", place: "row.1.1" },
            { what: "handwriting", place: "row.1.2" },
          ],
        }),
      wording: "fields",
      says: "Something is written or drawn by hand over “Face 1, row 1” and “Face 1, row 2”, and handwriting is not read.",
    },
    {
      shows: "a remark in the margin",
      given: ({ device }) => device({ doubts: [{ what: "handwriting" }] }),
      wording: "page",
    },
  ],
  *find(sheet, _catalogue, say) {
    const written = sheet.doubts.filter(({ what }) => what === "handwriting");
    if (written.length === 0) return;
    const places = doubtedPlaces(sheet, "handwriting");
    if (places.length === 0) yield say("page", {}, spotsOf(sheet, written));
    else yield say("fields", { fields: fieldsIn(sheet, places) }, spotsOf(sheet, written));
  },
});

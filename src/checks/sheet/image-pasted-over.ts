import { defineSheetCheck } from "../check.ts";
import { doubtedPlaces, fieldsIn, spotsOf } from "../doubted.ts";

export const imagePastedOver = defineSheetCheck({
  id: "image-pasted-over",
  title: "A picture lies over fields",
  severity: "stops",
  waivable: true,
  seen: true,
  source: { kind: "common practice" },
  why: "A picture over a field hides it, or shows other words than it holds. Only what the field holds would be cut.",
  wordings: {
    fields: {
      says: "A picture lies over {fields}, and nothing on it is read.",
      fix: "Remove it, type into the fields what it shows, save the sheet, and send it again.",
    },
  },
  passing: [{ shows: "a sheet as it is printed", given: ({ device }) => device() }],
  failing: [
    {
      shows: "a snippet over a legend",
      given: ({ device }) => device({ doubts: [{ what: "image-over", place: "row.1.1" }] }),
      wording: "fields",
      says: "A picture lies over “Face 1, row 1”, and nothing on it is read.",
    },
  ],
  *find(sheet, _catalogue, say) {
    const places = doubtedPlaces(sheet, "image-over");
    const pasted = sheet.doubts.filter(({ what }) => what === "image-over");
    if (places.length > 0) yield say("fields", { fields: fieldsIn(sheet, places) }, spotsOf(sheet, pasted));
  },
});

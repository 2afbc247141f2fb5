import { defineSheetCheck } from "../check.ts";
import { fieldsIn, spotsOf } from "../doubted.ts";

export const typedOverSheet = defineSheetCheck({
  id: "typed-over-sheet",
  title: "Something is typed beside the fields",
  severity: "stops",
  waivable: true,
  seen: true,
  source: { kind: "common practice" },
  why: "Text laid over the page looks as if it stood in the field, but the field knows nothing of it and only the field is cut.",
  wordings: {
    field: {
      says: "“{text}” lies on the page over {field}, and not in the field; it is not read.",
      fix: "Remove it, click into the field and type it there, save the sheet, and send it again.",
    },
    page: {
      says: "“{text}” is typed onto the page, and not into a field; it is not read.",
      fix: "Remove it, type into the fields what it says, save the sheet, and send it again.",
    },
  },
  passing: [{ shows: "a sheet filled in by typing into its fields", given: ({ device }) => device() }],
  failing: [
    {
      shows: "a text box over a legend",
      given: ({ device }) => device({ doubts: [{ what: "typed-over", place: "row.1.1", text: "LOBBY" }] }),
      wording: "field",
      says: "“LOBBY” lies on the page over “Face 1, row 1”, and not in the field; it is not read.",
    },
    {
      shows: "a remark in the margin",
      given: ({ device }) => device({ doubts: [{ what: "typed-over", text: "all in capitals please" }] }),
      wording: "page",
      says: "“all in capitals please” is typed onto the page, and not into a field; it is not read.",
    },
  ],
  *find(sheet, _catalogue, say) {
    const typed = sheet.doubts.filter(({ what }) => what === "typed-over");
    // One text may lie over several fields.
    for (const [text, doubts] of Map.groupBy(typed, ({ text = "" }) => text)) {
      const places = doubts.flatMap(({ place }) => place ?? []);
      if (places.length === 0) yield say("page", { text }, spotsOf(sheet, doubts));
      else yield say("field", { text, field: fieldsIn(sheet, places) }, spotsOf(sheet, doubts));
    }
  },
});

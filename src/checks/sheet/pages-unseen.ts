import { at, defineSheetCheck } from "../check.ts";
import { isDoubted } from "../doubted.ts";

export const pagesUnseen = defineSheetCheck({
  id: "pages-unseen",
  title: "A sheet of which only the fields could be read",
  severity: "asks",
  verdict: "person",
  source: { kind: "house" },
  why: "The page may carry handwriting or text beside the fields. A page too heavy to be looked at within its time is looked at by a person.",
  wordings: {
    unseen: {
      says: "The fields of this sheet were read, but its pages could not be looked at, so something may be written on them.",
      fix: "One of us looks at it. It is quicker to fill in a fresh copy of the sheet and send that.",
    },
  },
  passing: [{ shows: "a sheet whose page was looked at", given: ({ device }) => device() }],
  failing: [
    {
      shows: "a page with endless drawings",
      given: ({ device }) => device({ doubts: [{ what: "unseen" }] }),
      wording: "unseen",
    },
  ],
  *find(sheet, _catalogue, say) {
    if (isDoubted(sheet, "unseen")) yield say("unseen", {}, at(sheet));
  },
});

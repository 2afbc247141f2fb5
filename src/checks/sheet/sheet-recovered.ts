import { at, defineSheetCheck } from "../check.ts";
import { isDoubted } from "../doubted.ts";

export const sheetRecovered = defineSheetCheck({
  id: "sheet-recovered",
  title: "A sheet that was damaged on its way",
  severity: "asks",
  seen: true,
  source: { kind: "house" },
  why: "Of a file cut short or altered on its way, programs show what is left without a word, and that may be an earlier state of the sheet.",
  wordings: {
    recovered: {
      says: "This file is damaged. Its fields could be read, but they may hold what an earlier version of the sheet said.",
      fix: "Best save the sheet afresh and send it again. Or confirm that everything we read from it is right.",
    },
  },
  passing: [{ shows: "a file that arrived whole", given: ({ device }) => device() }],
  failing: [
    {
      shows: "a file without its end",
      given: ({ device }) => device({ doubts: [{ what: "recovered" }] }),
      wording: "recovered",
    },
  ],
  *find(sheet, _catalogue, say) {
    if (isDoubted(sheet, "recovered")) yield say("recovered", {}, at(sheet));
  },
});

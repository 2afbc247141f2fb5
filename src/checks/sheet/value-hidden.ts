import { at, defineSheetCheck, labelOf } from "../check.ts";
import { device } from "../sample.ts";

export const valueHidden = defineSheetCheck({
  id: "value-hidden",
  title: "A field shows other than it holds",
  severity: "asks",
  source: { kind: "house" },
  why: "A form keeps what a field holds and what it looks like side by side. Where a program changed one and not the other, the buyer saw something else than would be cut.",
  wordings: {
    differs: {
      says: "“{field}” holds “{text}”, but the page shows “{shown}”.",
      fix: "Tell us which is right, or type it anew, save the sheet, and send it again.",
    },
    unshown: {
      says: "“{field}” holds “{text}”, but the page does not show it.",
      fix: "Confirm that it is right, or type it anew, save the sheet, and send it again.",
    },
    unheld: {
      says: "“{field}” shows “{shown}” on the page, but holds nothing.",
      fix: "Type it anew, save the sheet, and send it again. Or tell us what it should say.",
    },
  },
  passing: [{ shows: "a sheet that shows what it holds", given: device() }],
  failing: [
    {
      shows: "a legend of which the old drawing is left",
      given: device({ doubts: [{ what: "value-hidden", place: "row.1.1", text: "ENTRY", shown: "LOBBY" }] }),
      wording: "differs",
    },
    {
      shows: "a hidden field",
      given: device({ doubts: [{ what: "value-hidden", place: "row.1.1", text: "ENTRY" }] }),
      wording: "unshown",
    },
    {
      shows: "a drawing without a value",
      given: device({ doubts: [{ what: "value-hidden", place: "row.1.2", shown: "LOBBY" }] }),
      wording: "unheld",
    },
  ],
  *find(sheet, _catalogue, say) {
    for (const { what, place, text, shown } of sheet.doubts) {
      if (what !== "value-hidden" || place === undefined) continue;
      const field = labelOf(sheet, place);
      const spots = at(sheet, place);
      if (text === undefined) yield say("unheld", { field, shown: shown ?? "" }, spots);
      else if (shown === undefined) yield say("unshown", { field, text }, spots);
      else yield say("differs", { field, text, shown }, spots);
    }
  },
});

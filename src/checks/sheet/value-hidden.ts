import type { Place } from "../../trade/place.ts";
import { defineSheetCheck, labelOf } from "../check.ts";
import { spotsOf } from "../doubted.ts";
import { tooLongRows } from "../limits.ts";

export const valueHidden = defineSheetCheck({
  id: "value-hidden",
  title: "A field shows other than it holds",
  severity: "asks",
  seen: true,
  source: { kind: "house" },
  why: "A form keeps what a field holds and what it looks like side by side. Where a program changed one and not the other, the buyer saw something else than would be cut.",
  wordings: {
    pictured: {
      says: "“{field}” holds “{text}”, but the page does not show that.",
      fix: "Type it anew, save the sheet, and send it again.",
      severity: "stops",
      verdict: "fail",
    },
    contradicts: {
      says: "“{field}” holds “{text}”, but the page shows “{shown}”.",
      fix: "Type it anew, save the sheet, and send it again.",
      severity: "stops",
      verdict: "fail",
    },
    unasked: {
      says: "“{field}” holds nothing, but the page shows something there.",
      fix: "If it is to be read, type it into the field; if not, remove it. Save the sheet, and send it again.",
      severity: "stops",
      verdict: "fail",
    },
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
  passing: [
    { shows: "a sheet that shows what it holds", given: ({ device }) => device() },
    {
      shows: "a row too long to be shown, which is told as too long",
      given: ({ device, layout }) => {
        const text = "M".repeat(layout.characters + 1);
        return device(
          { doubts: [{ what: "value-hidden", place: "row.1.1", text, seen: { page: 1 } }] },
          { "1": [text, ""] },
        );
      },
    },
  ],
  failing: [
    {
      shows: "a legend that looks like another",
      given: ({ device }) =>
        device({
          doubts: [{ what: "value-hidden", place: "row.1.1", text: "ENTRY", seen: { page: 1 } }],
        }),
      wording: "pictured",
      says: "“Face 1, row 1” holds “ENTRY”, but the page does not show that.",
    },
    {
      shows: "a legend whose drawing says another",
      given: ({ device }) =>
        device({
          doubts: [
            { what: "value-hidden", place: "row.1.1", text: "ENTRY", shown: "EXIT", seen: { page: 1 } },
          ],
        }),
      wording: "contradicts",
      says: "“Face 1, row 1” holds “ENTRY”, but the page shows “EXIT”.",
    },
    {
      shows: "a word drawn into an empty field",
      given: ({ device }) =>
        device({ doubts: [{ what: "value-hidden", place: "row.1.2", seen: { page: 1 } }] }),
      wording: "unasked",
      says: "“Face 1, row 2” holds nothing, but the page shows something there.",
    },
    {
      shows: "a legend of which the old drawing is left",
      given: ({ device }) =>
        device({ doubts: [{ what: "value-hidden", place: "row.1.1", text: "ENTRY", shown: "LOBBY" }] }),
      wording: "differs",
      says: "“Face 1, row 1” holds “ENTRY”, but the page shows “LOBBY”.",
    },
    {
      shows: "a hidden field",
      given: ({ device }) => device({ doubts: [{ what: "value-hidden", place: "row.1.1", text: "ENTRY" }] }),
      wording: "unshown",
      says: "“Face 1, row 1” holds “ENTRY”, but the page does not show it.",
    },
    {
      shows: "a drawing without a value",
      given: ({ device }) => device({ doubts: [{ what: "value-hidden", place: "row.1.2", shown: "LOBBY" }] }),
      wording: "unheld",
      says: "“Face 1, row 2” shows “LOBBY” on the page, but holds nothing.",
    },
  ],
  *find(sheet, catalogue, say) {
    // A program may put in more than the form lets anybody type, of which no viewer shows the end.
    const tooLong = new Set<Place>(tooLongRows(sheet, catalogue).map(({ place }) => place));
    for (const doubt of sheet.doubts) {
      const { what, place, text, shown, seen } = doubt;
      if (what !== "value-hidden" || place === undefined) continue;
      if (tooLong.has(place) && shown === undefined) continue;
      const field = labelOf(sheet, place);
      const spots = spotsOf(sheet, [doubt]);
      // What was seen on the page itself is no matter of how a program draws numbers and dates.
      if (seen !== undefined && text === undefined) yield say("unasked", { field }, spots);
      else if (seen !== undefined && text !== undefined && shown !== undefined)
        yield say("contradicts", { field, text, shown }, spots);
      else if (seen !== undefined && text !== undefined) yield say("pictured", { field, text }, spots);
      else if (text === undefined) yield say("unheld", { field, shown: shown ?? "" }, spots);
      else if (shown === undefined) yield say("unshown", { field, text }, spots);
      else yield say("differs", { field, text, shown }, spots);
    }
  },
});

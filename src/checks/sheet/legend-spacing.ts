import { visible } from "../../lettering/characters.ts";
import { at, defineSheetCheck } from "../check.ts";
import { rowsCutAtBlank } from "../cut-at-blank.ts";
import { faceWords, typedRows } from "../limits.ts";
import { fullRow } from "../sample.ts";

export const legendSpacing = defineSheetCheck({
  id: "legend-spacing",
  title: "A row has blanks to spare",
  severity: "asks",
  sender: "settles",
  source: { kind: "common practice" },
  why: "Blanks are cut as typed, as gaps: a legend with a blank in front stands off its middle. They may be a slip, or a way to place the words.",
  wordings: {
    gaps: {
      says: "Row {row} of {face} would be cut with its gaps: “{shown}” (each blank shown as ·).",
      fix: "Send the sheet again as “{closed}”.",
    },
    end: {
      says: "Row {row} of {face} ends in a blank: “{shown}” (each blank shown as ·).",
      fix: "Nothing to do unless the legend is to stand off its middle.",
      severity: "notes",
    },
  },
  passing: [
    { shows: "one blank between words", given: ({ device }) => device({}, { "1": ["ALL ON", ""] }) },
    {
      shows: "a row of nothing but blanks, which is an empty row",
      given: ({ device }) => device({}, { "1": ["ENTRY", "   "] }),
    },
    {
      shows: "what nobody can see, which has a check of its own",
      given: ({ device }) => device({}, { "1": ["\uFEFFENTRY\u00A0", ""] }),
    },
    {
      shows: "a full row that may have been cut off at its blank",
      given: ({ device, layout }) => device({}, { "1": [fullRow(layout, ""), ""] }),
    },
  ],
  failing: [
    {
      shows: "a blank in front",
      given: ({ device }) => device({}, { "1": [" ENTRY", ""] }),
      wording: "gaps",
      says: "Row 1 of button 1 would be cut with its gaps: “·ENTRY” (each blank shown as ·).",
      fix: "Send the sheet again as “ENTRY”.",
    },
    {
      shows: "two blanks between words",
      given: ({ plate }) => plate({}, { "1": ["FOYER  EAST", ""] }),
      wording: "gaps",
      says: "Row 1 of gang 1 would be cut with its gaps: “FOYER··EAST” (each blank shown as ·).",
      fix: "Send the sheet again as “FOYER EAST”.",
    },
    {
      shows: "a blank at the end",
      given: ({ device }) => device({}, { "1": ["ENTRY ", ""] }),
      wording: "end",
      says: "Row 1 of button 1 ends in a blank: “ENTRY·” (each blank shown as ·).",
    },
  ],
  *find(sheet, catalogue, say) {
    const cut = new Set(rowsCutAtBlank(sheet, catalogue).map(({ place }) => place));
    for (const { place, face, row, text: typed } of typedRows(sheet)) {
      // Blanks of other kinds, and what nobody can see, have checks of their own.
      const text = visible(typed).replace(/[^\S ]/g, "");
      const closed = text.trim().replaceAll(/ {2,}/g, " ");
      if (closed === "" || closed === text || cut.has(place)) continue;
      const facts = { row, face: faceWords(sheet, face), shown: text.replaceAll(" ", "·") };
      if (text.trimEnd() === closed) yield say("end", facts, at(sheet, place));
      else yield say("gaps", { ...facts, closed }, at(sheet, place));
    }
  },
});

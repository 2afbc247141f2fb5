import { at, defineSheetCheck } from "../check.ts";
import { faceWords, plainMark, typedRows } from "../limits.ts";
import { isNever, plainly } from "../no-legend.ts";

/** Words that mostly stand for nothing, but are cut now and then. */
const seldom = new Set(["BLANK", "PLAIN", "EMPTY", "NOT USED", "UNUSED", "?", "-"]);

export const legendPlaceholder = defineSheetCheck({
  id: "legend-placeholder",
  title: "A placeholder would be cut as typed",
  severity: "stops",
  sender: "settles",
  source: { kind: "common practice" },
  why: "What is typed is what is cut. NONE on a sheet becomes the word NONE on a button.",
  wordings: {
    legend: {
      says: "“{typed}” on {face} would be cut as typed.",
      fix: "Type what is to be cut; if nothing is, clear it and {plain}.",
    },
    row: {
      says: "“{typed}” in row {row} of {face} would be cut as typed.",
      fix: "Type what is to be cut, or clear the row.",
    },
    seldom: {
      says: "“{typed}” on {face} would be cut as typed.",
      fix: "If nothing is to be cut, clear it and {plain}.",
      severity: "asks",
    },
  },
  passing: [
    { shows: "legends", given: ({ plate }) => plate() },
    {
      shows: "a word that begins like a placeholder",
      given: ({ device }) => device({}, { "1": ["NATURE", "ROOM"] }),
    },
    {
      shows: "words that send nobody anywhere",
      given: ({ device }) =>
        device({}, { "1": ["SAME", "DAY"], "2": ["ABOVE", "BAR"], "3": ["SEE & DO", ""] }),
    },
    { shows: "a minus beside a plus", given: ({ device }) => device({}, { "1": ["+", ""], "2": ["-", ""] }) },
  ],
  failing: [
    { shows: "NONE", given: ({ device }) => device({}, { "1": ["None", ""] }), wording: "legend" },
    {
      shows: "a phrase over two rows",
      given: ({ device }) => device({}, { "2": ["SAME AS", "ABOVE"] }),
      wording: "legend",
    },
    {
      shows: "the name of the field",
      given: ({ device }) => device({}, { "1": ["BUTTON 1", ""] }),
      wording: "legend",
    },
    { shows: "ditto marks", given: ({ plate }) => plate({}, { "2": ['"', ""] }), wording: "legend" },
    { shows: "a quantity", given: ({ device }) => device({}, { "2": ["QTY 2", ""] }), wording: "legend" },
    {
      shows: "a drawing to look at",
      given: ({ device }) => device({}, { "2": ["SEE DWG", "E-101"] }),
      wording: "legend",
    },
    { shows: "typical", given: ({ plate }) => plate({}, { "1": ["TYP OF 4", ""] }), wording: "legend" },
    {
      shows: "N/A under a legend",
      given: ({ device }) => device({}, { "1": ["ENTRY", "N/A"] }),
      wording: "row",
    },
    {
      shows: "BLANK, which a screen's button may say",
      given: ({ device }) => device({}, { "3": ["BLANK", ""] }),
      wording: "seldom",
    },
    {
      shows: "a dash without a plus",
      given: ({ device }) => device({}, { "3": ["-", ""] }),
      wording: "seldom",
    },
  ],
  *find(sheet, _catalogue, say) {
    const rows = typedRows(sheet).filter(({ text }) => text.trim() !== "");
    const hasPlus = rows.some(({ text }) => text.includes("+"));
    for (const [face, onFace] of Map.groupBy(rows, (row) => row.face)) {
      const mark = plainMark(sheet, face);
      const plain = mark === undefined ? "reply that it stays plain" : `tick ${mark}`;
      const words = faceWords(sheet, face);
      const typed = onFace.map(({ text }) => text.trim()).join(" ");
      const spots = at(sheet, ...onFace.map(({ place }) => place));
      if (isNever(typed)) yield say("legend", { typed, face: words, plain }, spots);
      else if (seldom.has(plainly(typed)) && !(typed === "-" && hasPlus))
        yield say("seldom", { typed, face: words, plain }, spots);
      // SAME over DAY is the beginning of a legend.
      else
        for (const { text, row, place } of onFace)
          if (isNever(text) && plainly(text) !== "SAME")
            yield say("row", { typed: text, row, face: words }, at(sheet, place));
    }
  },
});

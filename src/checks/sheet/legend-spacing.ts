import type { Words } from "../../catalogue/words.ts";
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
    within: {
      says: "Row {row} of {face} would be cut with a gap in a word: “{shown}” (each blank shown as ·).",
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
      shows: "letters and short forms that stand for words",
      given: ({ device }) => device({}, { "1": ["STAIR B", ""], "2": ["A B", ""], "3": ["CONF RM", ""] }),
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
      shows: "a word in two pieces",
      given: ({ device }) => device({}, { "1": ["STU DY", ""] }),
      wording: "within",
      says: "Row 1 of button 1 would be cut with a gap in a word: “STU·DY” (each blank shown as ·).",
      fix: "Send the sheet again as “STUDY”.",
    },
    {
      shows: "a word letter by letter",
      given: ({ device }) => device({}, { "1": ["O F F", ""] }),
      wording: "within",
      says: "Row 1 of button 1 would be cut with a gap in a word: “O·F·F” (each blank shown as ·).",
      fix: "Send the sheet again as “OFF”.",
    },
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
      const joined = joinedWord(closed, catalogue.words);
      if (joined !== undefined && closed === text)
        yield say(
          "within",
          { row, face: faceWords(sheet, face), shown: text.replaceAll(" ", "·"), closed: joined },
          at(sheet, place),
        );
      if (closed === "" || closed === text || cut.has(place)) continue;
      const facts = { row, face: faceWords(sheet, face), shown: text.replaceAll(" ", "·") };
      if (text.trimEnd() === closed) yield say("end", facts, at(sheet, place));
      else yield say("gaps", { ...facts, closed }, at(sheet, place));
    }
  },
});

/**
 * The word whose pieces a row is: "STU DY", "O F F". Undefined where the pieces are words or short forms themselves.
 */
function joinedWord(row: string, { isWord, isOfLegends, expansions }: Words): string | undefined {
  const pieces = row.split(" ");
  const joined = pieces.join("");
  if (pieces.length < 2 || !/^\p{L}+$/u.test(joined)) return undefined;
  if (pieces.every((piece) => piece.length === 1)) return isOfLegends(joined) ? joined : undefined;
  // A dictionary has words of two letters that nobody has heard of.
  const isKnown = (piece: string): boolean =>
    piece.length === 1 ||
    isOfLegends(piece) ||
    expansions(piece).length > 0 ||
    (piece.length > 2 && isWord(piece));
  const isParted = pieces.length === 2 && joined.length > 4 && isWord(joined);
  return isParted && !pieces.every(isKnown) ? joined : undefined;
}

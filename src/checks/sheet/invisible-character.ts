import { describe, visible } from "../../lettering/characters.ts";
import { at, defineSheetCheck } from "../check.ts";
import { faceWords, typedRows } from "../limits.ts";

export const invisibleCharacter = defineSheetCheck({
  id: "invisible-character",
  title: "A row has a character that nobody can see",
  severity: "stops",
  waivable: true,
  source: {
    kind: "standard",
    name: "Unicode Standard Annex #44 (property Default_Ignorable_Code_Point)",
  },
  why: "Text copied from elsewhere brings in marks that take a place in the row and show nothing. The cutter has no shape for them, and the row looks right on the screen.",
  wordings: {
    invisible: {
      says: "Row {row} of {face}, which looks like “{shown}”, has {characters}.",
      fix: "Clear the row and type it anew rather than paste it.",
    },
  },
  passing: [{ shows: "letters and blanks", given: ({ device }) => device({}, { "1": ["ALL ON", ""] }) }],
  failing: [
    {
      shows: "a blank of no width",
      given: ({ device }) => device({}, { "1": ["EN\u200BTRY", ""] }),
      wording: "invisible",
      says: "Row 1 of button 1, which looks like “ENTRY”, has “\u200b” (invisible character, U+200B).",
    },
    {
      shows: "a soft hyphen",
      given: ({ device }) => device({}, { "1": ["EN\u00ADTRY", ""] }),
      wording: "invisible",
      says: "Row 1 of button 1, which looks like “ENTRY”, has “\u00ad” (invisible character, U+00AD).",
    },
  ],
  *find(sheet, _catalogue, say) {
    for (const { place, face, row, text } of typedRows(sheet)) {
      const invisible = new Set(text.match(/\p{Default_Ignorable_Code_Point}/gu) ?? []);
      if (invisible.size === 0) continue;
      const shown = visible(text);
      const characters = [...invisible].map(describe);
      yield say("invisible", { row, face: faceWords(sheet, face), shown, characters }, at(sheet, place));
    }
  },
});

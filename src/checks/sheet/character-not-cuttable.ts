import { describe, notCuttable, retyped, visible } from "../../lettering/characters.ts";
import { at, defineSheetCheck } from "../check.ts";
import { faceWords, typedRows } from "../limits.ts";

export const characterNotCuttable = defineSheetCheck({
  id: "character-not-cuttable",
  title: "A character cannot be cut",
  severity: "stops",
  source: { kind: "standard", name: "Unicode Standard Annex #15 (normalization forms)" },
  why: "The cutter has a shape for some characters only. Text copied from elsewhere brings in others that look much the same, and letters are never changed without being asked.",
  wordings: {
    other: {
      says: "Row {row} of {face}, “{typed}”, has {characters}, which cannot be cut.",
      fix: "Type it anew as “{instead}”.",
    },
    none: {
      says: "Row {row} of {face}, “{typed}”, has {characters}, which cannot be cut.",
      fix: "Say it in letters, digits or {marks}.",
    },
  },
  passing: [
    { shows: "all that the cutter has", given: ({ device }) => device({}, { "1": ["R&D #2", "(A/B)"] }) },
    { shows: "blanks", given: ({ device }) => device({}, { "1": ["ALL ON", ""] }) },
    { shows: "an accent typed on its own", given: ({ device }) => device({}, { "1": ["CAFE\u0301", ""] }) },
  ],
  failing: [
    {
      shows: "a curly apostrophe",
      given: ({ device }) => device({}, { "1": ["CHEF’S", ""] }),
      wording: "other",
      says: "Row 1 of button 1, “CHEF’S”, has “’” (curly apostrophe, U+2019), which cannot be cut.",
      fix: "Type it anew as “CHEF'S”.",
    },
    {
      shows: "an accent that the cutter does not have",
      given: ({ device }) => device({}, { "1": ["S\u0301WIT", ""] }),
      wording: "other",
      says: "Row 1 of button 1, “S\u0301WIT”, has “Ś” (S with an accent, U+015A), which cannot be cut.",
      fix: "Type it anew as “SWIT”.",
    },
    {
      shows: "an unbreakable blank",
      given: ({ device }) => device({}, { "1": ["ALL\u00A0ON", ""] }),
      wording: "other",
      says: "Row 1 of button 1, “ALL\u00a0ON”, has “\u00a0” (unbreakable blank, U+00A0), which cannot be cut.",
      fix: "Type it anew as “ALL ON”.",
    },
    {
      shows: "a Cyrillic letter among Latin ones",
      given: ({ device }) => device({}, { "1": ["S\u0421ENE", ""] }),
      wording: "other",
      says: "Row 1 of button 1, “SСENE”, has “С” (Cyrillic letter, U+0421), which cannot be cut.",
      fix: "Type it anew as “SCENE”.",
    },
    {
      shows: "an arrow",
      given: ({ device }) => device({}, { "1": ["→ STAGE", ""] }),
      wording: "none",
      says: "Row 1 of button 1, “→ STAGE”, has “→” (symbol, U+2192), which cannot be cut.",
      fix: "Say it in letters, digits or & + - / . , : ' ( ) # % ! ? \" = *.",
    },
  ],
  *find(sheet, { characters: all }, say) {
    for (const { place, face, row, text: written } of typedRows(sheet)) {
      // Those that nobody can see have a check of their own.
      const text = visible(written);
      const bad = notCuttable(text, all);
      if (bad.length === 0) continue;
      const facts = { row, face: faceWords(sheet, face), typed: text, characters: bad.map(describe) };
      const instead = retyped(text, all);
      const marks = all
        .replace(/[\p{L}\p{N}]/gu, "")
        .split("")
        .join(" ");
      if (instead === undefined) yield say("none", { ...facts, marks }, at(sheet, place));
      else yield say("other", { ...facts, instead }, at(sheet, place));
    }
  },
});

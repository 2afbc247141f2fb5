import { at, defineSheetCheck } from "../check.ts";
import { judgedWords } from "../judged.ts";

export const abbreviationUnknown = defineSheetCheck({
  id: "abbreviation-unknown",
  title: "A word or abbreviation is not known here",
  severity: "notes",
  source: { kind: "house" },
  why: "Abbreviations and names are often right and in no list. Whoever reads the answer can see at a glance whether one of them is a slip.",
  wordings: {
    unknown: {
      says: "“{typed}” in row {row} of {face} is no word or abbreviation known here.",
      fix: "Nothing to do if it is meant so; it is cut as typed.",
    },
    name: {
      says: "“{typed}” in row {row} of {face} is taken as a name.",
      fix: "Nothing to do if it is meant so; it is cut as typed.",
    },
    squeezed: {
      says: "“{typed}” in row {row} of {face} is taken as short for {meant|or}.",
      fix: "Nothing to do if it is meant so; it is cut as typed.",
    },
  },
  passing: [
    { shows: "abbreviations of the trade", given: ({ device }) => device({}, { "1": ["CONF RM", "STA 2"] }) },
    { shows: "a letter or a number", given: ({ device }) => device({}, { "1": ["STAIR B", "2ND"] }) },
  ],
  failing: [
    {
      shows: "a word that is no name known here",
      given: ({ plate }) => plate({}, { "1": ["ZWINDLEKOP", ""] }),
      wording: "unknown",
      says: "“ZWINDLEKOP” in row 1 of gang 1 is no word or abbreviation known here.",
    },
    {
      shows: "whose office it is",
      given: ({ device }) => device({}, { "1": ["DR", "OYELA"] }),
      wording: "name",
      says: "“OYELA” in row 2 of button 1 is taken as a name.",
    },
    {
      shows: "letters of a firm's own",
      given: ({ device }) => device({}, { "1": ["QZX", ""] }),
      wording: "unknown",
      says: "“QZX” in row 1 of button 1 is no word or abbreviation known here.",
    },
    {
      shows: "a word without vowels",
      given: ({ device }) => device({}, { "1": ["WRHSE", ""] }),
      wording: "squeezed",
      says: "“WRHSE” in row 1 of button 1 is taken as short for WAREHOUSE.",
    },
  ],
  *find(sheet, catalogue, say) {
    for (const { text, meant, face, row, place } of judgedWords(sheet, catalogue, "unknown")) {
      const facts = { typed: text, row, face };
      if (meant.length === 0) yield say("unknown", facts, at(sheet, place));
      else yield say("squeezed", { ...facts, meant }, at(sheet, place));
    }
    for (const { text, face, row, place } of judgedWords(sheet, catalogue, "name"))
      yield say("name", { typed: text, row, face }, at(sheet, place));
  },
});

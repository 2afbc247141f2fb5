import { at, defineSheetCheck } from "../check.ts";
import { judgedWords } from "../judged.ts";

export const wordSlip = defineSheetCheck({
  id: "word-slip",
  title: "A word may be another, mistyped",
  severity: "asks",
  sender: "settles",
  source: { kind: "house" },
  why: "Some slips make another right word, which no dictionary finds: OF for OFF, HAUL for HALL. A word seldom seen on a wall, one letter from one that is often seen, is worth a question.",
  wordings: {
    slip: {
      says: "“{typed}” in row {row} of {face} is a word, but “{meant}” is likelier there.",
      fix: "If you mean “{meant}”, send the sheet again.",
    },
  },
  passing: [
    { shows: "OF between two words", given: ({ device }) => device({}, { "1": ["HOUSE OF", "CARDS"] }) },
    {
      shows: "words of legends one letter apart",
      given: ({ device }) => device({}, { "1": ["BATH", ""], "2": ["PATH", ""] }),
    },
    { shows: "one and many", given: ({ device }) => device({}, { "1": ["OFFICES", ""] }) },
  ],
  failing: [
    {
      shows: "OF for OFF",
      given: ({ device }) => device({}, { "4": ["ALL", "OF"] }),
      wording: "slip",
      says: "“OF” in row 2 of button 4 is a word, but “OFF” is likelier there.",
      fix: "If you mean “OFF”, send the sheet again.",
    },
    {
      shows: "FORM for FROM",
      given: ({ plate }) => plate({}, { "1": ["EXIT FORM", "FOYER"] }),
      wording: "slip",
      says: "“FORM” in row 1 of gang 1 is a word, but “FROM” is likelier there.",
      fix: "If you mean “FROM”, send the sheet again.",
    },
    {
      shows: "another word",
      given: ({ device }) => device({}, { "1": ["STAFF", "HAUL"] }),
      wording: "slip",
      says: "“HAUL” in row 2 of button 1 is a word, but “HALL” is likelier there.",
      fix: "If you mean “HALL”, send the sheet again.",
    },
  ],
  *find(sheet, catalogue, say) {
    for (const { text, meant, face, row, place } of judgedWords(sheet, catalogue, "slipped"))
      yield say("slip", { typed: text, row, face, meant }, at(sheet, place));
  },
});

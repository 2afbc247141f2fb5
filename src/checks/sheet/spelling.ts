import { at, defineSheetCheck } from "../check.ts";
import { judgedWords } from "../judged.ts";

export const spelling = defineSheetCheck({
  id: "spelling",
  title: "A word looks misspelt",
  severity: "asks",
  sender: "settles",
  source: { kind: "common practice" },
  why: "What is typed is what is cut. The word is in no dictionary and not in the desk's glossary, and another that is differs from it by a letter or two; but it may be a name, so only the buyer knows.",
  wordings: {
    misspelt: {
      says: "“{typed}” in row {row} of {face} looks misspelt.",
      fix: "If you mean {meant|or}, send the sheet again.",
    },
  },
  passing: [
    { shows: "right words", given: ({ plate }) => plate() },
    { shows: "a word over two rows", given: ({ device }) => device({}, { "1": ["COUNTER", "TOP"] }) },
    {
      shows: "British spelling, an accent",
      given: ({ device }) => device({}, { "1": ["COLOUR", ""], "2": ["CAFÉ", "CENTRE"] }),
    },
    {
      shows: "a name that the project bears",
      given: ({ device }) => device({ project: "Reeding Hall" }, { "1": ["REEDING", ""] }),
    },
    { shows: "an abbreviation of the trade", given: ({ plate }) => plate({}, { "1": ["CONF RM 2", ""] }) },
  ],
  failing: [
    {
      shows: "two letters swapped",
      given: ({ plate }) => plate({}, { "1": ["RECEPTOIN", ""] }),
      wording: "misspelt",
      says: "“RECEPTOIN” in row 1 of gang 1 looks misspelt.",
      fix: "If you mean RECEPTION, send the sheet again.",
    },
    {
      shows: "a letter left out",
      given: ({ device }) => device({}, { "1": ["KITCHN", ""] }),
      wording: "misspelt",
      says: "“KITCHN” in row 1 of button 1 looks misspelt.",
      fix: "If you mean KITCHEN, send the sheet again.",
    },
  ],
  *find(sheet, catalogue, say) {
    for (const { text, meant, face, row, place } of judgedWords(sheet, catalogue, "misspelt"))
      yield say("misspelt", { typed: text, row, face, meant }, at(sheet, place));
  },
});

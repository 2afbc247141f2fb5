import { at, defineSheetCheck } from "../check.ts";
import { judgedWords } from "../judged.ts";

export const lookAlikeLetter = defineSheetCheck({
  id: "look-alike-letter",
  title: "A digit stands for a letter, or a letter for a digit",
  severity: "asks",
  sender: "settles",
  source: { kind: "common practice" },
  why: "The digits 0 and 1 look like the letters O and I on the screen, and the cutter cuts them differently.",
  wordings: {
    mistaken: {
      says: "“{typed}” in row {row} of {face} mixes digits and letters that look alike.",
      fix: "Send the sheet again with “{meant}”.",
    },
  },
  passing: [
    {
      shows: "numbers behind words",
      given: ({ device }) =>
        device({}, { "1": ["ROOM 101", "STAIR1"], "2": ["P1", "LX1"], "3": ["O2", "H2O"] }),
    },
    { shows: "small letters", given: ({ device }) => device({}, { "1": ["All", "off"], "2": ["Hall", ""] }) },
  ],
  failing: [
    {
      shows: "a zero in a word",
      given: ({ device }) => device({}, { "1": ["L0BBY", ""] }),
      wording: "mistaken",
      says: "“L0BBY” in row 1 of button 1 mixes digits and letters that look alike.",
      fix: "Send the sheet again with “LOBBY”.",
    },
    {
      shows: "a zero in an abbreviation",
      given: ({ plate }) => plate({}, { "1": ["C0NF RM", ""] }),
      wording: "mistaken",
      says: "“C0NF” in row 1 of gang 1 mixes digits and letters that look alike.",
      fix: "Send the sheet again with “CONF”.",
    },
    {
      shows: "a one in a word",
      given: ({ device }) => device({}, { "3": ["D1M", ""] }),
      wording: "mistaken",
      says: "“D1M” in row 1 of button 3 mixes digits and letters that look alike.",
      fix: "Send the sheet again with “DIM”.",
    },
    {
      shows: "a letter O in a number",
      given: ({ device }) => device({}, { "1": ["ROOM", "2O4"] }),
      wording: "mistaken",
      says: "“2O4” in row 2 of button 1 mixes digits and letters that look alike.",
      fix: "Send the sheet again with “204”.",
    },
    {
      shows: "a small L among capitals",
      given: ({ device }) => device({}, { "1": ["FAMlLY", ""] }),
      wording: "mistaken",
      says: "“FAMlLY” in row 1 of button 1 mixes digits and letters that look alike.",
      fix: "Send the sheet again with “FAMILY”.",
    },
  ],
  *find(sheet, catalogue, say) {
    for (const { text, meant, face, row, place } of judgedWords(sheet, catalogue, "mistaken"))
      yield say("mistaken", { typed: text, row, face, meant }, at(sheet, place));
  },
});

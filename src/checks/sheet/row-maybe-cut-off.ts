import { at, defineSheetCheck } from "../check.ts";
import { judgedWords } from "../judged.ts";
import { device, plate } from "../sample.ts";

export const rowMaybeCutOff = defineSheetCheck({
  id: "row-maybe-cut-off",
  title: "The form may have cut a word short",
  severity: "asks",
  source: { kind: "common practice" },
  why: "Forms take no more characters than a row has room for and drop the rest without a sign. A row that is just full and ends in the beginning of a longer word has probably lost its end.",
  wordings: {
    cut: {
      says: "Row {row} of {face} is full and ends in “{typed}”, the beginning of {meant|or}.",
      fix: "Reply that it is meant so, or shorten the legend so that it fits.",
    },
  },
  passing: [
    { shows: "a full row that ends in a word", given: device({}, { "1": ["CORRIDOR", ""] }) },
    { shows: "the same letters with room to spare", given: plate({}, { "1": ["RECEPTIO", ""] }) },
    { shows: "a word that goes on below", given: device({}, { "1": ["RECEPTIO", "N"] }) },
    { shows: "an abbreviation", given: device({}, { "1": ["STAFF RM", ""] }) },
  ],
  failing: [
    { shows: "the end of a word lost", given: device({}, { "1": ["RECEPTIO", ""] }), wording: "cut" },
    { shows: "the end of the last word lost", given: plate({}, { "1": ["TRAINING ROO"] }), wording: "cut" },
    { shows: "what is left being a word", given: device({}, { "1": ["MAIN LOB", ""] }), wording: "cut" },
  ],
  *find(sheet, catalogue, say) {
    for (const { text, meant, face, row, place } of judgedWords(sheet, catalogue, "cut"))
      yield say("cut", { typed: text, row, face, meant }, at(sheet, place));
  },
});

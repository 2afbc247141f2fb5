import { at, defineSheetCheck } from "../check.ts";
import { rowsCutAtBlank } from "../cut-at-blank.ts";
import { shownLonger } from "../doubted.ts";
import { judgedWords } from "../judged.ts";
import { faceWords } from "../limits.ts";
import { fullRow } from "../sample.ts";

export const rowMaybeCutOff = defineSheetCheck({
  id: "row-maybe-cut-off",
  title: "The form may have cut a word short",
  severity: "asks",
  sender: "settles",
  source: { kind: "common practice" },
  why: "Forms take no more characters than a row has room for and drop the rest without a sign. A row that is just full and ends in the beginning of a longer word has probably lost its end; LIGHTS ON and LIGHTS OFF both arrive as LIGHTS O. Where a blank came last, nothing is left of the word behind it.",
  wordings: {
    cut: {
      says: "Row {row} of {face} is full and ends in “{typed}”, the beginning of {meant|or}. The form may have cut your word. What should it say?",
      fix: "Shorten the legend so that it fits, and send the sheet again.",
    },
    letter: {
      says: "Row {row} of {face}, “{typed}”, is full and ends in a single letter, perhaps the beginning of {meant|or}. The form may have cut your word. What should it say?",
      fix: "Shorten the legend so that it fits, and send the sheet again.",
    },
    alone: {
      says: "Row {row} of {face}, “{typed}”, is full and ends in a single letter, perhaps the beginning of a longer word. The form may have cut your word. What should it say?",
      fix: "Shorten the legend so that it fits, and send the sheet again.",
    },
    blank: {
      says: "Row {row} of {face}, “{typed}”, is full, with a blank at its end. The form may have cut your word. What should it say?",
      fix: "Send the sheet again: without the blank, or with a legend that fits.",
    },
  },
  passing: [
    { shows: "a full row that ends in a word", given: ({ device }) => device({}, { "1": ["CORRIDOR", ""] }) },
    {
      shows: "the same letters with room to spare",
      given: ({ plate }) => plate({}, { "1": ["RECEPTIO", ""] }),
    },
    { shows: "a word that goes on below", given: ({ device }) => device({}, { "1": ["RECEPTIO", "N"] }) },
    {
      shows: "a word of which the page still shows the end",
      given: ({ device, layout }) => {
        const text = "RECEPTIONIST".slice(0, layout.characters);
        return device(
          { doubts: [{ what: "value-hidden", place: "row.1.1", text, shown: "RECEPTIONIST" }] },
          { "1": [text, ""] },
        );
      },
    },
    { shows: "an abbreviation", given: ({ device }) => device({}, { "1": ["STAFF RM", ""] }) },
    {
      shows: "a letter that tells one from another",
      given: ({ device }) =>
        device(
          {},
          { "1": ["BALLRM B", ""], "2": ["ZONE 2 D", ""], "3": ["SHADES N", ""], "4": ["LOCKER M", ""] },
        ),
    },
    {
      shows: "initials",
      given: ({ device }) => device({}, { "1": ["DEPT R&D", ""], "2": ["ROOM A/V", ""] }),
    },
    {
      shows: "a short word that goes on below",
      given: ({ device }) => device({}, { "1": ["TAKING A", "BREAK"] }),
    },
    { shows: "a letter that goes on below", given: ({ device }) => device({}, { "1": ["LIGHTS O", "FF"] }) },
    {
      shows: "a blank at the end where the legend goes on below",
      given: ({ device }) => device({}, { "1": ["READING ", "ROOM"] }),
    },
    {
      shows: "a blank at the end with room to spare",
      given: ({ plate }) => plate({}, { "1": ["READING ", ""] }),
    },
    {
      shows: "a blank behind a word that is asked about",
      given: ({ device }) => device({}, { "1": ["KITCHNE ", ""] }),
    },
  ],
  failing: [
    {
      shows: "the end of a word lost",
      given: ({ device, layout }) => device({}, { "1": ["RECEPTIONIST".slice(0, layout.characters), ""] }),
      wording: "cut",
      says: "Row 1 of button 1 is full and ends in “RECEPTIO”, the beginning of RECEPTION or RECEPTIONIST. The form may have cut your word. What should it say?",
    },
    {
      shows: "the end of the last word lost",
      given: ({ plate, catalogue }) => plate({}, { "1": [fullRow(catalogue.plate, "ROO")] }),
      wording: "cut",
      says: "Row 1 of gang 1 is full and ends in “ROO”, the beginning of ROOM, ROOF or ROOD. The form may have cut your word. What should it say?",
    },
    {
      shows: "what is left being a word",
      given: ({ device, layout }) => device({}, { "1": [fullRow(layout, "LOB"), ""] }),
      wording: "cut",
      says: "Row 1 of button 1 is full and ends in “LOB”, the beginning of LOBBY or LOBBIES. The form may have cut your word. What should it say?",
    },
    {
      shows: "ON or OFF cut to one letter",
      given: ({ device, layout }) => device({}, { "1": [fullRow(layout, "O"), ""] }),
      wording: "letter",
      says: "Row 1 of button 1, “DINING O”, is full and ends in a single letter, perhaps the beginning of ON or OFF. The form may have cut your word. What should it say?",
    },
    {
      shows: "ROOM cut to one letter",
      given: ({ device, layout }) => device({}, { "1": [fullRow(layout, "R"), ""] }),
      wording: "letter",
      says: "Row 1 of button 1, “DINING R”, is full and ends in a single letter, perhaps the beginning of ROOM. The form may have cut your word. What should it say?",
    },
    {
      shows: "OFF cut to one letter behind a stroke",
      given: ({ device, layout }) => device({}, { "1": [fullRow(layout, "ON/O"), ""] }),
      wording: "letter",
      says: "Row 1 of button 1, “NEW ON/O”, is full and ends in a single letter, perhaps the beginning of OFF. The form may have cut your word. What should it say?",
    },
    {
      shows: "a letter of no word known here",
      given: ({ device, layout }) => device({}, { "1": [fullRow(layout, "Z"), ""] }),
      wording: "alone",
      says: "Row 1 of button 1, “DINING Z”, is full and ends in a single letter, perhaps the beginning of a longer word. The form may have cut your word. What should it say?",
    },
    {
      shows: "a word lost behind a blank",
      given: ({ device, layout }) => device({}, { "1": [fullRow(layout, ""), ""] }),
      wording: "blank",
      says: "Row 1 of button 1, “READING”, is full, with a blank at its end. The form may have cut your word. What should it say?",
    },
    {
      shows: "a word lost behind the last blank",
      given: ({ plate, catalogue }) => plate({}, { "1": [fullRow(catalogue.plate, "ROOM ")] }),
      wording: "blank",
      says: "Row 1 of gang 1, “DINING ROOM”, is full, with a blank at its end. The form may have cut your word. What should it say?",
    },
  ],
  *find(sheet, catalogue, say) {
    // Nobody need be asked what the page still shows.
    const told = new Set(shownLonger(sheet));
    for (const { text, typed, meant, face, row, place } of judgedWords(sheet, catalogue, "cut")) {
      if (told.has(place)) continue;
      const spots = at(sheet, place);
      // One letter says little by itself, and kept by itself it would be kept behind every word.
      if (text.length > 1) yield say("cut", { typed: text, row, face, meant }, spots);
      else if (meant.length > 0) yield say("letter", { typed, row, face, meant }, spots);
      else yield say("alone", { typed, row, face }, spots);
    }
    for (const { text, face, row, place } of rowsCutAtBlank(sheet, catalogue))
      yield say("blank", { typed: text.trim(), row, face: faceWords(sheet, face) }, at(sheet, place));
  },
});

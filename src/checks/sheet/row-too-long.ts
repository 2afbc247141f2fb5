import { at, defineSheetCheck } from "../check.ts";
import { faceWords, tooLongRows } from "../limits.ts";
import { device, plate } from "../sample.ts";

export const rowTooLong = defineSheetCheck({
  id: "row-too-long",
  title: "A row has more characters than can be cut",
  severity: "stops",
  source: { kind: "common practice" },
  why: "Each face takes so many characters in a row. What does not fit would be left off, or cut into the edge.",
  wordings: {
    over: {
      says: "Row {row} of {face} has {length:character}; {limit} can be cut.",
      fix: "Shorten “{typed}” to {limit:character} or fewer, or split it over the rows.",
    },
  },
  passing: [
    { shows: "eight characters on a button", given: device({}, { "1": ["BREAKOUT", "ROOM 2"] }) },
    { shows: "twelve characters above a gang", given: plate({}, { "1": ["MEETING ROOM", ""] }) },
  ],
  failing: [
    {
      shows: "nine characters on a button",
      given: device({}, { "1": ["RECEPTION", ""] }),
      wording: "over",
      says: "Row 1 of button 1 has 9 characters; 8 can be cut.",
      fix: "Shorten “RECEPTION” to 8 characters or fewer, or split it over the rows.",
    },
    {
      shows: "thirteen above a gang",
      given: plate({}, { "1": ["MEETING ROOMS", ""] }),
      wording: "over",
      says: "Row 1 of gang 1 has 13 characters; 12 can be cut.",
      fix: "Shorten “MEETING ROOMS” to 12 characters or fewer, or split it over the rows.",
    },
  ],
  *find(sheet, catalogue, say) {
    for (const { place, face, row, text, length, limit } of tooLongRows(sheet, catalogue))
      yield say("over", { row, face: faceWords(sheet, face), length, limit, typed: text }, at(sheet, place));
  },
});

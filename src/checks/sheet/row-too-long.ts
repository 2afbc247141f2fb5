import { layoutOf, type Room } from "../../catalogue/catalogue.ts";
import { roomOn } from "../../catalogue/faces.ts";
import { at, defineSheetCheck } from "../check.ts";
import { faceWords, tooLongRows } from "../limits.ts";

/** As many characters as there is room for, or some more. */
const long = ({ characters }: Room, more = 0): string =>
  "RECEPTION".repeat(characters).slice(0, characters + more);

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
    only: {
      says: "Row {row} of {face} has {length:character}; {limit} can be cut.",
      fix: "Shorten “{typed}” to {limit:character} or fewer.",
    },
  },
  passing: [
    {
      shows: "as many characters as a button takes",
      given: ({ device, layout }) => device({}, { "1": [long(layout)] }),
    },
    {
      shows: "as many as a gang takes",
      given: ({ plate, catalogue }) => plate({}, { "1": [long(catalogue.plate)] }),
    },
  ],
  failing: [
    {
      shows: "one more on a button",
      given: ({ device, layout }) => device({}, { "1": [long(layout, 1)] }),
      wording: "over",
      fix: "Shorten “RECEPTION” to 8 characters or fewer, or split it over the rows.",
      says: "Row 1 of button 1 has 9 characters; 8 can be cut.",
    },

    {
      shows: "one more on a button with one row",
      given: ({ device, layoutThat, catalogue }) => {
        const code = layoutThat(({ rows }) => rows === 1);
        return device({ layouts: [code] }, { "1": [long(layoutOf(catalogue, code) ?? catalogue.plate, 1)] });
      },
      wording: "only",
      fix: "Shorten “RECEPTIONR” to 9 characters or fewer.",
      says: "Row 1 of button 1 has 10 characters; 9 can be cut.",
    },
  ],
  *find(sheet, catalogue, say) {
    for (const { place, face, row, text, length, limit } of tooLongRows(sheet, catalogue))
      yield say(
        roomOn(sheet, face, catalogue).rows > 1 ? "over" : "only",
        { row, face: faceWords(sheet, face), length, limit, typed: text },
        at(sheet, place),
      );
  },
});

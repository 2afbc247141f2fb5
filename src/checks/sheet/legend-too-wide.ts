import { roomOn } from "../../catalogue/faces.ts";
import { faceOf } from "../../lettering/faces.ts";
import { fitLegend } from "../../lettering/fit.ts";
import { charactersOf } from "../../lettering/glyph.ts";
import { widthOf } from "../../lettering/row.ts";
import { at, defineSheetCheck } from "../check.ts";
import { fittedLegends } from "../fitted.ts";
import { faceWords } from "../limits.ts";

export const legendTooWide = defineSheetCheck({
  id: "legend-too-wide",
  title: "A row is wider than its face",
  severity: "stops",
  source: { kind: "house" },
  why: "The number of characters does not tell how wide a row is: three I take the room of one W. Rows are measured with the letters that will be cut, down to the least height that the maker cuts.",
  wordings: {
    split: {
      says: "Row {row} of {face}, “{typed}”, is {needed} mm wide with letters {cap} mm high; there is room for {room} mm.",
      fix: "Split it over the rows: {parts}.",
    },
    shorten: {
      says: "Row {row} of {face}, “{typed}”, is {needed} mm wide with letters {cap} mm high; there is room for {room} mm.",
      fix: "Shorten it, or use another row as well: no more than “{start}” fits in one.",
    },
  },
  passing: [
    {
      shows: "a row of narrow letters",
      given: ({ device, narrow }) =>
        device({ layouts: [narrow.code] }, { "1": ["I".repeat(narrow.characters), ""] }),
    },
    {
      shows: "as many of the widest letters as a gang takes",
      given: ({ plate, catalogue }) => plate({}, { "1": ["W".repeat(catalogue.plate.characters)] }),
    },
    {
      shows: "too many characters, which another check tells",
      given: ({ device, narrow }) =>
        device({ layouts: [narrow.code] }, { "1": ["W".repeat(narrow.characters + 1), ""] }),
    },
  ],
  failing: [
    {
      shows: "two words too wide for a row of a small button",
      given: ({ device, narrow }) =>
        device({ layouts: [narrow.code] }, { "1": [`WWW ${"W".repeat(narrow.characters - 4)}`, ""] }),
      wording: "split",
      says: "Row 1 of button 1, “WWW WWWW”, is 18.8 mm wide with letters 2.26 mm high; there is room for 17.8 mm.",
      fix: "Split it over the rows: “WWW” and “WWWW”.",
    },
    {
      shows: "as many characters as are allowed, but wide ones",
      given: ({ device, narrow }) =>
        device({ layouts: [narrow.code] }, { "1": ["W".repeat(narrow.characters), ""] }),
      wording: "shorten",
      says: "Row 1 of button 1, “WWWWWWWW”, is 19.6 mm wide with letters 2.26 mm high; there is room for 17.8 mm.",
      fix: "Shorten it, or use another row as well: no more than “WWWWWWW” fits in one.",
    },
  ],
  *find(sheet, catalogue, say) {
    for (const { face, fitted, rows } of fittedLegends(sheet, catalogue)) {
      const surface = faceOf(sheet, face, catalogue);
      const isRowFree = fitted.rows.length < roomOn(sheet, face, catalogue).rows;
      for (const { row, text, width } of rows) {
        if (width <= fitted.room || surface === undefined) continue;
        const facts = {
          row,
          face: faceWords(sheet, face),
          typed: text,
          // Rounded so that the one never reads as no more than the other.
          needed: (Math.ceil(width * 10) / 10).toFixed(1),
          cap: fitted.cap,
          room: (Math.floor(fitted.room * 10) / 10).toFixed(1),
        };
        const spots = at(sheet, `row.${face}.${row}`);
        const parts = halves(text).find((some) => fitLegend(some, surface, catalogue.engraving).fits);
        if (isRowFree && parts !== undefined)
          yield say("split", { ...facts, parts: parts.map((part) => `“${part}”`) }, spots);
        else
          yield say(
            "shorten",
            {
              ...facts,
              start: startOf(text, (some) => widthOf(some, fitted) + fitted.cutter <= fitted.room),
            },
            spots,
          );
      }
    }
  },
});

/** Each way to break a row in two at a blank. */
function halves(text: string): string[][] {
  const words = text.trim().split(/ +/);
  return words.slice(1).map((_, i) => [words.slice(0, i + 1).join(" "), words.slice(i + 1).join(" ")]);
}

/** As much of a row's beginning as there is room for. */
function startOf(text: string, isRoom: (some: string) => boolean): string {
  const characters = charactersOf(text);
  const starts = characters.map((_, i) =>
    characters
      .slice(0, characters.length - i)
      .join("")
      .trimEnd(),
  );
  return starts.find(isRoom) ?? "";
}

import { at, defineSheetCheck } from "../check.ts";
import { faceWords } from "../limits.ts";

export const rowOrder = defineSheetCheck({
  id: "row-order",
  title: "A row is empty above one that is filled",
  severity: "stops",
  waivable: true,
  source: { kind: "common practice" },
  why: "An empty first row is cut as an empty row, so the legend would sit low; or a row was forgotten.",
  wordings: {
    gap: {
      says: "Row {row} of {face} is empty, while “{typed}” stands below it.",
      fix: "Move the text up, or fill in the empty row.",
    },
  },
  passing: [
    { shows: "both rows", given: ({ plate }) => plate() },
    { shows: "the first row alone", given: ({ device }) => device({}, { "1": ["ENTRY", ""] }) },
  ],
  failing: [
    {
      shows: "the second row alone",
      given: ({ device }) => device({}, { "1": ["", "ENTRY"] }),
      wording: "gap",
      says: "Row 1 of button 1 is empty, while “ENTRY” stands below it.",
    },
    {
      shows: "nothing but blanks in the first row",
      given: ({ plate }) => plate({}, { "2": ["  ", "READING"] }),
      wording: "gap",
      says: "Row 1 of gang 2 is empty, while “READING” stands below it.",
    },
  ],
  *find(sheet, _catalogue, say) {
    for (const { face, rows } of sheet.legends) {
      const gap = rows.findIndex((row) => row.trim() === "");
      const typed = rows.slice(gap).find((row) => row.trim() !== "");
      if (gap >= 0 && typed !== undefined)
        yield say(
          "gap",
          { row: gap + 1, face: faceWords(sheet, face), typed: typed.trim() },
          at(sheet, `row.${face}.${gap + 1}`),
        );
    }
  },
});

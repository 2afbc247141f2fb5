import { hasText } from "../../trade/legend.ts";
import { at, defineSheetCheck } from "../check.ts";
import { faceWords, rowPlaces } from "../limits.ts";

export const legendRepeatedInPlate = defineSheetCheck({
  id: "legend-repeated-in-plate",
  title: "The same legend stands twice, side by side",
  severity: "asks",
  sender: "settles",
  source: { kind: "house" },
  why: "Two buttons of one device, or two gangs of one plate, that say the same tell nobody which is which. Mostly a row was copied and not changed.",
  wordings: {
    twice: {
      says: "“{typed}” stands on {faces}.",
      fix: "Send the sheet again with the legends that tell them apart.",
    },
  },
  passing: [
    {
      shows: "legends that differ by a number",
      given: ({ plate }) => plate({}, { "1": ["STUDIO 1"], "2": ["STUDIO 2"] }),
    },
    { shows: "faces that stay plain", given: ({ device }) => device({}, { "2": ["", ""], "3": ["", ""] }) },
  ],
  failing: [
    {
      shows: "two buttons alike",
      given: ({ device }) => device({}, { "1": ["DIM", ""] }),
      wording: "twice",
      says: "“DIM” stands on button 1 and button 3.",
    },
    {
      shows: "two gangs alike",
      given: ({ plate }) => plate({}, { "1": ["Children"] }),
      wording: "twice",
      says: "“Children” stands on gang 1 and gang 3.",
    },
  ],
  *find(sheet, catalogue, say) {
    // The strip of a one-gang plate may well say what its only button says.
    const faces = sheet.legends.filter((one) => one.face !== "plate" && !one.plain && hasText(one));
    for (const same of Map.groupBy(faces, ({ rows }) => joined(rows).toUpperCase()).values()) {
      const [first, ...more] = same;
      if (first === undefined || more.length === 0) continue;
      yield say(
        "twice",
        { typed: joined(first.rows), faces: same.map(({ face }) => faceWords(sheet, face)) },
        at(sheet, ...same.flatMap(({ face }) => rowPlaces(sheet, face, catalogue))),
      );
    }
  },
});

function joined(rows: readonly string[]): string {
  return rows.join(" ").replace(/\s+/g, " ").trim();
}

import { hasText } from "../../trade/legend.ts";
import { at, defineSheetCheck } from "../check.ts";
import { faceWords, rowPlaces } from "../limits.ts";

export const legendRepeatedInPlate = defineSheetCheck({
  id: "legend-repeated-in-plate",
  title: "The same stands twice, side by side",
  severity: "asks",
  sender: "settles",
  source: { kind: "house" },
  why: "Two buttons of one device, or two gangs of one plate, that say the same tell nobody which is which. Mostly a row was copied and not changed. So was a word that stands twice, one behind the other, on one button.",
  wordings: {
    twice: {
      says: "“{typed}” stands on {faces}.",
      fix: "Send the sheet again with the legends that tell them apart.",
    },
    word: {
      says: "“{typed}” stands twice on {face}.",
      fix: "If once is right, send the sheet again.",
    },
  },
  passing: [
    {
      shows: "legends that differ by a number",
      given: ({ plate }) => plate({}, { "1": ["STUDIO 1"], "2": ["STUDIO 2"] }),
    },
    {
      shows: "words that are right twice, and words apart from each other",
      given: ({ plate }) => plate({}, { "1": ["BORA BORA"], "2": ["DOOR TO DOOR"], "3": ["YO YO ROOM"] }),
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
    {
      shows: "a word in both rows of a button",
      given: ({ device }) => device({}, { "1": ["DINING", "DINING"] }),
      wording: "word",
      says: "“DINING” stands twice on button 1.",
    },
    {
      shows: "a word twice in a row",
      given: ({ plate }) => plate({}, { "1": ["STUDIO STUDIO"] }),
      wording: "word",
      says: "“STUDIO” stands twice on gang 1.",
    },
  ],
  *find(sheet, catalogue, say) {
    for (const { face, rows, plain } of sheet.legends) {
      const word = plain ? undefined : twiceIn(joined(rows));
      if (word !== undefined)
        yield say(
          "word",
          { typed: word, face: faceWords(sheet, face) },
          at(sheet, ...rowPlaces(sheet, face, catalogue)),
        );
    }
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

/** Words that say something else when they stand twice: names of places, and what people say so. */
const doubled = new Set(
  "AGA BABA BERBER BORA BYE CHA CHOP DIK GOODY HULA HUSH KNOCK LALA MAHI NIGHT PAGO PAW POM QUACK SING TAJ TOM TSE TUK TUTU WAGGA WALLA WIKI YO YUM".split(
    " ",
  ),
);

/** A word of three letters or more that stands twice, one behind the other. */
function twiceIn(text: string): string | undefined {
  const words = text.split(" ");
  return words.find((word, i) => {
    const plain = word.toUpperCase();
    return /^\p{L}{3,}$/u.test(word) && plain === words[i + 1]?.toUpperCase() && !doubled.has(plain);
  });
}

function joined(rows: readonly string[]): string {
  return rows.join(" ").replace(/\s+/g, " ").trim();
}

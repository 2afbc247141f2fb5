import { chosenLayout } from "../../catalogue/faces.ts";
import { hasText, type Legend } from "../../trade/legend.ts";
import type { DeviceSheet } from "../../trade/sheet.ts";
import { at, defineSheetCheck } from "../check.ts";
import { faceWords, rowPlaces } from "../limits.ts";
import { legend, type Sample } from "../sample.ts";

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
    {
      shows: "columns that move a shade each",
      given: (sample) => shades(sample, ["UP", "STOP", "DOWN"]),
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
      shows: "a line alike, and no other",
      given: (sample) => shades(sample, ["UP", "DIM", "ALL"], ["UP", "LAMPS", "STAIRS"]),
      wording: "twice",
      says: "“UP” stands on button 1 and button 2.",
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
    const groups = [...Map.groupBy(faces, ({ rows }) => joined(rows).toUpperCase())];
    const columns = chosenLayout(sheet, catalogue)?.columns ?? 1;
    const inLine = groups.filter(([word, same]) => moves.has(word) && fillsLine(same, columns));
    for (const [word, same] of groups) {
      const [first, ...more] = same;
      if (first === undefined || more.length === 0) continue;
      // UP UP over DOWN DOWN: each column of buttons moves a shade of its own.
      if (inLine.length > 1 && inLine.some(([one]) => one === word)) continue;
      yield say(
        "twice",
        { typed: joined(first.rows), faces: same.map(({ face }) => faceWords(sheet, face)) },
        at(sheet, ...same.flatMap(({ face }) => rowPlaces(sheet, face, catalogue))),
      );
    }
  },
});

const moves = new Set("UP DOWN DN STOP OPEN CLOSE RAISE LOWER".split(" "));

/** Whether faces are all buttons of one line, each in a column of its own. */
function fillsLine(faces: readonly Legend[], columns: number): boolean {
  const [first = 0, ...more] = faces.map(({ face }) => Number(face));
  return (
    columns > 1 &&
    more.length === columns - 1 &&
    (first - 1) % columns === 0 &&
    more.every((face, i) => face === first + i + 1)
  );
}

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

/** A device of two columns and three lines, with these words in its columns. */
function shades({ device, layoutThat }: Sample, left: readonly string[], right = left): DeviceSheet {
  const layout = layoutThat(({ columns, lines }) => columns === 2 && lines === 3);
  const legends = left.flatMap((word, i) => [
    legend(`${2 * i + 1}`, word, ""),
    legend(`${2 * i + 2}`, right[i] ?? "", ""),
  ]);
  return device({ layouts: [layout], legends });
}

import type { Catalogue } from "../catalogue/catalogue.ts";
import { roomOn } from "../catalogue/faces.ts";
import { visible } from "../lettering/characters.ts";
import { charactersOf } from "../lettering/glyph.ts";
import { type Judgement, judgeWord } from "../lettering/judge-word.ts";
import { plainWord } from "../lettering/slips.ts";
import type { Place } from "../trade/place.ts";
import type { Sheet } from "../trade/sheet.ts";
import { faceWords, type TypedRow, typedRows } from "./limits.ts";
import { isNever } from "./no-legend.ts";

type Amiss = Exclude<Judgement, { is: "right" }>;

/** A word of a legend, and where it stands in a sender's words. */
interface StandingWord {
  readonly text: string;
  readonly face: string;
  readonly row: number;
  /** The whole row. */
  readonly typed: string;
  readonly place: Place;
}
interface JudgedWord extends StandingWord {
  readonly judgement: Judgement;
}
interface ToldWord extends StandingWord {
  readonly meant: readonly string[];
}

/** Every word of a sheet is judged once, though several checks ask: looking for near words takes its time. */
const judged = new WeakMap<Sheet, { readonly catalogue: Catalogue; readonly words: readonly JudgedWord[] }>();

/** The words of the sheet's legends, and what is to be thought of each. */
export function everyWord(sheet: Sheet, catalogue: Catalogue): readonly JudgedWord[] {
  const before = judged.get(sheet);
  const words = before?.catalogue === catalogue ? before.words : judgeWords(sheet, catalogue);
  judged.set(sheet, { catalogue, words });
  return words;
}

/** The words of the sheet's legends of which this is to be thought. */
export function judgedWords(sheet: Sheet, catalogue: Catalogue, kind: Amiss["is"]): readonly ToldWord[] {
  return everyWord(sheet, catalogue).flatMap(({ judgement, ...word }) =>
    judgement.is === kind ? [{ ...word, meant: judgement.meant }] : [],
  );
}

function judgeWords(sheet: Sheet, catalogue: Catalogue): JudgedWord[] {
  const names = namesOn(sheet);
  const isConfirmed = (text: string): boolean => catalogue.words.isConfirmed(text, sheet.project ?? "");
  const isKnown = (text: string): boolean => names.has(plainWord(text)) || isConfirmed(text);
  const plain = new Set(sheet.legends.flatMap((legend) => (legend.plain ? legend.face : [])));
  // Of a row with too many characters that is all there is to say.
  const rows = typedRows(sheet).filter(
    ({ face, text }) =>
      !plain.has(face) && charactersOf(text).length <= roomOn(sheet, face, catalogue).characters,
  );
  // Of a placeholder's words there is nothing to say either.
  const legends = [...Map.groupBy(rows, ({ face }) => face).values()].filter(
    (onFace) => !isNever(onFace.map(({ text }) => text).join(" ")),
  );
  return legends.flatMap((onFace) => {
    const beside = legends.filter((other) => other !== onFace).map((other) => other.flatMap(wordsIn));
    return onFace.flatMap((row, i) => {
      const { characters } = roomOn(sheet, row.face, catalogue);
      const inRow = wordsIn(row);
      const [above, below] = [onFace.slice(0, i).flatMap(wordsIn), onFace.slice(i + 1).flatMap(wordsIn)];
      return inRow.flatMap((text, j) => {
        const last = j === inRow.length - 1;
        const judgement = judgeWord(
          {
            text,
            before: [...above, ...inRow.slice(0, j)],
            after: [...inRow.slice(j + 1), ...below],
            beside,
            atLimit: last && isFull(row, characters) && row.text.endsWith(text) && !isConfirmed(row.text),
            joined: [
              ...(last ? below.slice(0, 1) : []).map((next) => text + next),
              ...(j === 0 ? above.slice(-1) : []).map((previous) => previous + text),
            ],
          },
          catalogue.words,
          isKnown,
        );
        return [
          {
            text,
            judgement,
            face: faceWords(sheet, row.face),
            row: row.row,
            typed: row.text.trim(),
            place: row.place,
          },
        ];
      });
    });
  });
}

/** As many characters as the form takes, the last of them no letter of initials such as R&D. */
function isFull({ text }: TypedRow, characters: number): boolean {
  return charactersOf(text).length === characters && !/(?<![\p{L}\p{N}])\p{L}[&/.+-]\p{L}$/u.test(text);
}

/** Words, numbers and what is mixed of both; the apostrophe belongs to a word. */
function wordsIn({ text }: TypedRow): string[] {
  return (
    visible(text)
      .normalize("NFC")
      .match(/[\p{L}\p{N}][\p{L}\p{N}']*/gu) ?? []
  );
}

/** Names that the sheet itself spells elsewhere: what the project, the companies, streets and people are called. */
function namesOn({ project, contact, billTo, shipTo }: Sheet): Set<string> {
  const written = [project, contact.name, ...Object.values(billTo), ...Object.values(shipTo)];
  return new Set(written.flatMap((text) => (text?.match(/[\p{L}']{2,}/gu) ?? []).map(plainWord)));
}

import { plainText } from "./keys.ts";

/** What a sheet's notes say of where it belongs. */
export interface NotedPlace {
  readonly mark?: string;
  readonly position?: number;
  readonly gangs?: number;
}

const markAfterWord = /\b(?:plate|station|mark)\s*(?:no\.?|#|:)?\s*([A-Z]{1,4}[- ]?\d{1,5}[A-Z]?)\b/i;
const hyphenedMark = /\b([A-Z]{1,4}-\d{1,5}[A-Z]?)\b/i;
const kOfN = /\b(?:pos(?:ition)?\.?|gang|no\.?|#)?\s*(\d{1,2})\s*(?:of|\/)\s*(\d{1,2})\b/i;
const positionAlone = /\b(?:pos(?:ition)?\.?|gang)\s*#?\s*(\d{1,2})\b/i;

/** Reads "plate S-104 pos 3 of 6" out of notes. A mark that other sheets carry is preferred to a guess. */
export function readNotedPlace(notes: string, knownMarks: readonly string[]): NotedPlace {
  const words = notes.split(/[\s,;:()]+/).map(plainText);
  const known = knownMarks.find((mark) => words.includes(plainText(mark)));
  const mark = known ?? markAfterWord.exec(notes)?.[1] ?? hyphenedMark.exec(notes)?.[1];
  const of = kOfN.exec(notes);
  const position = of?.[1] ?? positionAlone.exec(notes)?.[1];
  return {
    ...(mark === undefined ? {} : { mark: mark.toUpperCase() }),
    ...(position === undefined ? {} : { position: Number(position) }),
    ...(of?.[2] === undefined ? {} : { gangs: Number(of[2]) }),
  };
}

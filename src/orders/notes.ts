import { numberKey, plainText } from "./keys.ts";

/** What a sheet's notes say of where it belongs. */
export interface NotedPlace {
  readonly mark?: string;
  readonly position?: number;
  readonly gangs?: number;
}

const afterWord = /\b(?:plate|station|mark)\s*(?:no\.?|#|:)?\s*([A-Z]{1,4} \d{1,5}\b|[\w-]+)/gi;
const shape = /^[A-Z]{1,4}-?\d{1,5}[A-Z]?$/i;
// A hyphen or stroke beside it makes it a piece of something else, such as a part key.
const hyphened = /(?<![\w/-])[A-Z]{1,4}-\d{1,5}[A-Z]?(?![\w/-])/gi;
const position =
  /\b(?:pos(?:ition)?\.?|gang|opening)\s*(?:no\.?|#|:)?\s*(\d{1,2})(?:\s*(?:of|\/)\s*(\d{1,2}))?\b/i;
// "3/6" by itself may be a date or a fraction, and "page 3 of 6" counts paper.
const kOfN = /(?<!\b(?:page|sheet|device|file)\s)\b(\d{1,2}) of (\d{1,2})\b/i;

/**
 * Reads "plate S-104 pos 3 of 6" out of notes. `marks` are those of the order's sheets. `numbers` are order numbers,
 * which look like marks. Notes that name several stations tie a sheet to none.
 */
export function readNotedPlace(
  notes: string,
  marks: readonly string[],
  numbers: readonly string[],
): NotedPlace {
  const mark = onlyMark(notes, marks, numbers);
  const [, k, n] = position.exec(notes) ?? kOfN.exec(notes) ?? [];
  return {
    ...(mark === undefined ? {} : { mark }),
    ...(k === undefined ? {} : { position: Number(k) }),
    ...(n === undefined ? {} : { gangs: Number(n) }),
  };
}

function onlyMark(notes: string, marks: readonly string[], numbers: readonly string[]): string | undefined {
  const named = [...notes.matchAll(afterWord)].map((match) => match[1] ?? "");
  // A bare word must have a letter and a digit to be a mark. Otherwise any "2" would be one.
  const words = notes.split(/[\s,;:()]+/).filter((word) => /\p{L}/u.test(word) && /\d/.test(word));
  const carried = byPlainText(marks);
  const spoken = new Set([...named, ...words].map(plainText));
  const known = [...spoken].flatMap((word) => carried.get(word) ?? []);
  const numberKeys = new Set(numbers.map(numberKey));
  const guesses = [...named.filter((word) => shape.test(word)), ...(notes.match(hyphened) ?? [])].filter(
    (guess) => !numberKeys.has(plainText(guess)),
  );
  const found = known.length > 0 ? known : guesses.map((guess) => guess.toUpperCase());
  return new Set(found.map(plainText)).size === 1 ? found[0] : undefined;
}

/** Kept, since every sheet of an order is held against the same marks and numbers. */
const listed = new WeakMap<readonly string[], ReadonlyMap<string, string>>();

/** Marks or numbers by their plain text, each as it was typed first. */
function byPlainText(typed: readonly string[]): ReadonlyMap<string, string> {
  const known = listed.get(typed) ?? new Map(typed.toReversed().map((text) => [plainText(text), text]));
  listed.set(typed, known);
  return known;
}

import { createHmac } from "node:crypto";
import { checkCharacter } from "../catalogue/part-key.ts";
import type { Answered } from "../ports/store.ts";
import { takeApart } from "../reading/reply/own-text.ts";
import type { Letter } from "../trade/letter.ts";
import type { Desk } from "./desk.ts";

/**
 * Characters that cannot be taken for one another, on paper or by telephone: no 0 and O, 1 and I and L, 2 and Z, 5 and
 * S, 8 and B, U and V. Without vowels they make no word.
 */
const characters = "34679CDFGHJKMNPRTWXY";
/** The number of the letter has so many characters at least, its code so many. */
const [numberLength, codeLength] = [3, 4];
/** More are not looked up. */
const mostReferences = 5;

const one = `[${characters}]`;
/** A reference as people type it, with the words around it: "(your ref: 34k7 cd9t)". */
const typed = new RegExp(
  `\\(?(?:\\b(?:(?:your|our|the|re|to|for|answer|with|under) ){0,4}(?:ref(?:erence)?\\b\\.?)(?: (?:no\\b\\.?|number|is))?[\\s:#]{0,4})?(?<![\\p{L}\\p{N}])(${one}{${numberLength},9})[-–\\s]?(${one}{${codeLength}}${one})(?![\\p{L}\\p{N}])\\)?[,:;.]?`,
  "giu",
);

/**
 * The reference of the answer to a letter, such as "34K-7CD9T": the letter's number, a code that nobody can guess, and
 * an ISO/IEC 7064 check character. Whoever writes anew can say by it which answer he has in hand.
 */
export function referenceOf(letter: number, secret: string): string {
  const number = inCharacters(letter);
  for (let turn = 0; ; turn++) {
    const bytes = createHmac("sha256", secret).update(`reference ${letter} ${turn}`).digest();
    const code = [...bytes.subarray(0, codeLength)]
      .map((byte) => characters[byte % characters.length])
      .join("");
    const check = checkCharacter(`${number}${code}`);
    // A check character may be any letter or digit. The code is changed until it is one that cannot be misread.
    if (characters.includes(check)) return `${number}-${code}${check}`;
  }
}

function inCharacters(number: number): string {
  const digit = (n: number): string => characters[n % characters.length] ?? "";
  let text = "";
  for (let left = number; left > 0; left = Math.floor(left / characters.length)) text = digit(left) + text;
  return text.padStart(numberLength, digit(0));
}

function numberOf(text: string): number {
  return [...text].reduce((sum, character) => sum * characters.length + characters.indexOf(character), 0);
}

/** The number of the letter that a reference names; undefined if it is mistyped. */
function letterNamed(number: string, code: string, secret: string): number | undefined {
  const [first, rest] = [number.toUpperCase(), code.toUpperCase()];
  if (checkCharacter(`${first}${rest.slice(0, -1)}`) !== rest.slice(-1)) return undefined;
  const letter = numberOf(first);
  return referenceOf(letter, secret) === `${first}-${rest}` ? letter : undefined;
}

/** The answers that a letter refers to, in its subject or in what its sender wrote. */
export async function refersTo(
  letter: Letter,
  { store, secret }: Pick<Desk, "store" | "secret">,
): Promise<readonly Answered[]> {
  const own = takeApart(letter.text, "").own.join("\n");
  const named = [...`${letter.subject}\n${own}`.matchAll(typed)].flatMap(
    ([, number = "", code = ""]) => letterNamed(number, code, secret) ?? [],
  );
  const some = [...new Set(named)].slice(0, mostReferences);
  const answers = await Promise.all(some.map((number) => store.answers.of(number)));
  return store.answers.answered(answers.flatMap((answer) => answer?.messageId ?? []));
}

/** A letter without the references that it gives. They say no more than which answer it is about. */
export function withoutReferences(letter: Letter, { secret }: Pick<Desk, "secret">): Letter {
  const without = (text: string): string =>
    text.replace(typed, (whole, number: string, code: string) =>
      letterNamed(number, code, secret) === undefined ? whole : "",
    );
  return { ...letter, subject: without(letter.subject), text: without(letter.text) };
}

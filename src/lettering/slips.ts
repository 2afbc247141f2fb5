import distance from "damerau-levenshtein";

/** A word in capitals, without accents. */
export function plainWord(text: string): string {
  return text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .trim()
    .toUpperCase()
    .replace(/Œ/g, "OE")
    .replace(/Æ/g, "AE");
}

/** Longer texts are no words. The cost of comparing two is the product of their lengths. */
const longest = 40;

/** Slips of the hand between two words: letters left out, added, mistaken, or swapped (optimal string alignment). */
export function slips(one: string, other: string): number {
  if (Math.max(one.length, other.length) > longest) return Number.POSITIVE_INFINITY;
  return distance(one, other).steps;
}

/** Whether `word` is `whole` with two or more vowels left out, and nothing else changed: LNDSCAP, CHANDLR. */
export function isSqueezed(word: string, whole: string): boolean {
  if (whole.length < word.length + 2 || word[0] !== whole[0]) return false;
  let next = 0;
  for (const letter of whole) {
    if (letter === word[next]) next += 1;
    else if (!/[AEIOUY]/.test(letter)) return false;
  }
  return next === word.length;
}

/**
 * Whether `word` is `whole` with three or more letters left out, and nothing else changed: BACKLT, CHMBRS, PROSC.
 * Hands that slip leave out one, seldom two. Its end is that of the whole, or of a beginning of it.
 */
export function isShortened(word: string, whole: string): boolean {
  // BALLRO leaves two letters out of BALLROOM, and not three out of BALLROOMS.
  const least = whole.endsWith("S") && !word.endsWith("S") ? 4 : 3;
  if (word.length < 4 || whole.length < word.length + least || word[0] !== whole[0]) return false;
  if (whole.startsWith(word)) return true;
  if (word.at(-1) !== whole.at(-1)) return false;
  let next = 0;
  for (const letter of whole) if (letter === word[next]) next += 1;
  return next === word.length;
}

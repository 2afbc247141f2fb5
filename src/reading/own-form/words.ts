/** A label, a tip or the name of a field, as words: "K1_lineTwo" → "k 1 line two". */
export function wordsOf(text: string): string {
  return text
    .replace(/(\p{Ll})(\p{Lu})/gu, "$1 $2")
    .replace(/(\p{Lu})(\p{Lu}\p{Ll})/gu, "$1 $2")
    .replace(/(\p{L})(\d)/gu, "$1 $2")
    .replace(/(\d)(\p{L})/gu, "$1 $2")
    .toLowerCase()
    .replace(/\be[- ]?mail\b/g, "email")
    .replace(/[^\p{L}\p{N}#]+/gu, " ")
    .trim();
}

/** What a tip says before it goes on to explain. */
export function headOf(tip: string): string {
  return (/^[^;\n(]*/.exec(tip)?.[0] ?? "").trim();
}

/** What several texts begin with alike, up to the end of a word. */
export function commonHead(texts: readonly string[]): string {
  const [first = "", ...others] = texts;
  let length = first.length;
  for (const other of others) while (!other.startsWith(first.slice(0, length))) length--;
  if (others.length === 0 || length === first.length) return first.slice(0, length).trim();
  return first
    .slice(0, length)
    .replace(/[\p{L}\p{N}]*$/u, "")
    .replace(/[\s:,–—-]+$/u, "");
}

const numbers = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];

/** The number that words begin with, in digits or spelt. */
export function numberIn(words: string): number | undefined {
  const [, digits, spelt] = new RegExp(`\\b(?:(\\d{1,3})|(${numbers.join("|")}))\\b`).exec(words) ?? [];
  if (digits !== undefined) return Number(digits);
  return spelt === undefined ? undefined : numbers.indexOf(spelt);
}

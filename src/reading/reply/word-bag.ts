/** Runs of letters and digits, in small letters. */
export function tokensOf(text: string): string[] {
  return text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
}

/** Question marks, arrows, crosses, smiling faces; not U+FFFC, which stands for a file. */
const sign = String.raw`\?|(?!\uFFFC)\p{So}|\p{Extended_Pictographic}`;
const anySign = new RegExp(sign, "u");
const wordOrSign = new RegExp(String.raw`[\p{L}\p{N}]+|${sign}`, "gu");

/** Whether a text has signs that say as much as words do. */
export function hasSigns(text: string): boolean {
  return anySign.test(text);
}

function signsOf(text: string): string[] {
  return text.toLowerCase().match(wordOrSign) ?? [];
}

/** What mail programs put behind an address that they turn into a link: <mailto:orders@quillgate.example>. */
const linked = /[<[](?=[^\s<>[\]]{0,300}[@:/])[^\s<>[\]]{1,600}[>\]]/g;

export function withoutLinks(text: string): string {
  return text.replace(linked, "");
}

/** "3 YES <mailto:orders@quillgate.example?subject=…>": a link that begins a letter, behind its words. */
const letterLink =
  /(?:[ \t]|\r?\n[> ]{0,20})?[<[](?:mailto:)?[^\s<>[\]@?]{1,64}@[^\s<>[\]@?]{1,255}\?[^\s<>[\]]{1,600}[>\]]/giu;

/** A text without links that begin letters. Mail programs put them between the words of our answers. */
export function withoutLetterLinks(text: string): string {
  return text.replace(letterLink, "");
}

/** A program that makes text of a table runs so many words together at most, no longer than that. */
const mostJoined = 4;
const mostRuns = 500;
const longestJoined = 80;

/** Whether a quotation has words that the quoted text has not, or has them more often. Their order does not count. */
export function hasMoreWords(quoting: string, quoted: string): boolean {
  return moreWords(quoting, quoted).length > 0;
}

/** Those words, and signs that say as much as words do. */
export function moreWords(quoting: string, quoted: string): string[] {
  const left = new Map<string, number>();
  for (const token of signsOf(quoted)) left.set(token, (left.get(token) ?? 0) + 1);
  const take = (token: string): boolean => {
    const count = left.get(token) ?? 0;
    if (count > 0) left.set(token, count - 1);
    return count > 0;
  };
  const tokens = signsOf(withoutLinks(quoting));
  const joined = tokens.filter((token) => !take(token));
  // Few words run together in a quotation. If many seem to, they are other words.
  return joined.filter((token, i) => i >= mostRuns || !partsOf(token, left)?.every(take));
}

/** The words that a token consists of; undefined if it does not consist of words. */
function partsOf(token: string, words: ReadonlyMap<string, number>, most = mostJoined): string[] | undefined {
  if ((words.get(token) ?? 0) > 0) return [token];
  if (most < 2 || token.length > longestJoined) return undefined;
  for (let end = token.length - 1; end > 0; end--) {
    const first = token.slice(0, end);
    if ((words.get(first) ?? 0) === 0) continue;
    const rest = partsOf(token.slice(end), words, most - 1);
    if (rest !== undefined) return [first, ...rest];
  }
  return undefined;
}

/*
 * What the answer that a reply goes to has called its points and its sheets, and how words of the reply name them.
 */

/** The text of that answer, and the numbers of the questions that are open. */
interface Answer {
  readonly open: readonly number[];
  readonly answer: string;
}

/** Whether a number is a point of our answer that is no open question. */
export function isOther(number: number, { open, answer }: Answer): boolean {
  return !open.includes(number) && new RegExp(`^\\s*${number}\\. `, "mu").test(answer);
}

/** The points of our answer that are no open questions. */
export function othersIn({ open, answer }: Answer): number[] {
  return [...answer.matchAll(/^\s*(\d{1,4})\. /gmu)]
    .map(([, one]) => Number(one))
    .filter((one) => !open.includes(one));
}

/** How lines of a reply read with names in place of what they name. */
interface Names {
  /** The words that the open questions ask about, in small letters. */
  readonly words: readonly string[];
  /** "Corrected sheet attached" for "corrected W-1.pdf attached". */
  readonly withSheets: (line: string) => string;
  /** "The word is right" for "SALONA is right". */
  readonly withWords: (line: string) => string;
  /** "3 is right", where one question alone is about the word. */
  readonly withNumbers: (line: string) => string;
}

export function namesIn(given: Answer): Names {
  const asked = wordsInQuestion(given);
  const words = asked.map(([, word]) => word.toLowerCase());
  const [word, sheet] = [patternOf(asked.map(([, one]) => one)), sheetsIn(given.answer)];
  const numberOf = (typed: string): number | undefined => {
    const bare = typed.replace(/["“”]/gu, "").toLowerCase();
    const [one, ...more] = asked.filter(([, about]) => about.toLowerCase() === bare);
    return one === undefined || more.length > 0 ? undefined : one[0];
  };
  return {
    words,
    withSheets: (line) => line.replace(sheet, "sheet"),
    withWords: (line) => line.replace(word, "the word"),
    withNumbers: (line) => line.replace(word, (typed) => `${numberOf(typed) ?? typed}`),
  };
}

/** The open questions that ask about words, each with its word, as it stands in “” at the beginning. */
function wordsInQuestion({ answer, open }: Answer): (readonly [number, string])[] {
  return answer.split("\n").flatMap((line) => {
    const [, number, word] = /^\s*(\d{1,4})\. “([^“”]{3,40})”/u.exec(line) ?? [];
    return word !== undefined && open.includes(Number(number)) ? [[Number(number), word] as const] : [];
  });
}

/** The names of sheets, also without their ending if they have a number. */
function sheetsIn(answer: string): RegExp {
  const named = answer.split("\n").flatMap((line) => /^(\S.{0,80})\.pdf$/iu.exec(line.trim())?.[1] ?? []);
  const each = [...new Set(named)]
    .toSorted((one, other) => other.length - one.length)
    .map((name) => `${RegExp.escape(name)}${/\d/u.test(name) ? "(?:\\.pdf)?" : "\\.pdf"}`);
  return each.length === 0
    ? /(?!)/u
    : new RegExp(
        `(?<![\\p{L}\\p{N}-])(?:(?:sheet|form|file) )?(?:${each.join("|")})(?![\\p{L}\\p{N}-]|\\.\\d)`,
        "giu",
      );
}

function patternOf(words: readonly string[]): RegExp {
  return words.length === 0
    ? /(?!)/u
    : new RegExp(
        `(?<![\\p{L}\\p{N}]|\\b(?:dr|mrs?|ms|miss)\\.? )["“]?(?:${words.map((word) => RegExp.escape(word)).join("|")})["”]?(?![\\p{L}\\p{N}])`,
        "giu",
      );
}

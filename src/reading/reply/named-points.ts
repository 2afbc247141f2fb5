/*
 * What the answer that a reply goes to has called its points and its sheets, and how words of the reply name them.
 */

import type { Said } from "./ways.ts";

/** The text of that answer, and the numbers of the questions that are open. */
interface Answer {
  readonly open: readonly number[];
  readonly answer: string;
}

/** Whether a number is a point of our answer that is no open question. */
export function isOther(number: number, { open, answer }: Answer): boolean {
  return !open.includes(number) && new RegExp(`^\\s*${number}\\. `, "mu").test(answer);
}

/** What our answer says at a number. */
export function pointIn(number: number, { answer }: Answer): string {
  const found = new RegExp(`^ *${number}\\. (.*(?:\\n {5}.*)*)`, "mu").exec(answer)?.[1] ?? "";
  return found.replace(/\s+/gu, " ");
}

/** The points of our answer that are no open questions. */
export function othersIn({ open, answer }: Answer): number[] {
  return [...answer.matchAll(/^\s*(\d{1,4})\. /gmu)]
    .map(([, one]) => Number(one))
    .filter((one) => !open.includes(one));
}

/** The points of our answer about which nothing is to be done: those below “Worth knowing”. */
export function notesIn(answer: string): number[] {
  const [, below = ""] =
    /^[>\s]*WORTH KNOWING\n([\s\S]*?)(?:^\p{Lu}[\p{Lu} ]{4,}|$(?![\s\S]))/mu.exec(answer) ?? [];
  return [...below.matchAll(/^ *(\d{1,4})\. /gmu)].map(([, one]) => Number(one));
}

/** How lines of a reply read with names in place of what they name. */
interface Names {
  /** The words that the open questions ask about, in small letters. */
  readonly words: readonly string[];
  /** "Corrected sheet attached" for "corrected W-1.pdf attached". */
  readonly withSheets: (line: string) => string;
  /** "Sheet for 1 attached" for "plate sheet attached", where no question is about that sheet. */
  readonly withPoints: (line: string) => string;
  /** "The word is right" for "SALONA is right". */
  readonly withWords: (line: string) => string;
  /** "3 is right", where one question alone is about the word. */
  readonly withNumbers: (line: string) => string;
  /** Whether a line that says this with a yes names a word that only other questions ask about: "1. The word of 2 is right". */
  readonly areOthers: (line: string, said: readonly Said[]) => boolean;
}

/** Where a line goes on with another number: "1 YES, 2 NO". */
const nextNumber = /(?<!\d)[.,;]\s+(?=#?\d)|\n/u;

const nextSentence = /(?<=\p{L}[.!?])\s+(?=\p{Lu})/u;
const apartNumber = /(?<![\p{L}\p{N}-])\d{1,4}(?![\p{L}\p{N}])/gu;

export function namesIn(given: Answer): Names {
  const asked = wordsInQuestion(given);
  const words = asked.map(([, word]) => word.toLowerCase());
  const word = patternOf(asked.map(([, one]) => one));
  const sheets = sheetsIn(given);
  const sheet = namesOf(sheets);
  const numbersOf = (typed: string): number[] => {
    const bare = typed.replace(/["“”]/gu, "").toLowerCase();
    return asked.flatMap(([number, about]) => (about.toLowerCase() === bare ? [number] : []));
  };
  const numberOf = (typed: string): number | undefined => {
    const [one, ...more] = numbersOf(typed);
    return more.length > 0 ? undefined : one;
  };
  return {
    words,
    withSheets: (line) =>
      (positioned.test(given.answer) ? line.replace(ofPositions, "sheet") : line)
        .replace(sheet, "sheet")
        .replace(severalSheets, "sheets"),
    withPoints: (line) =>
      pointed(sheets).reduce(
        (said, [pattern, points]) => said.replace(pattern, `sheet for ${points.join(" and ")}`),
        line,
      ),
    withWords: (line) => line.replace(word, "the word"),
    withNumbers: (line) =>
      finishesIn(given).reduce(
        (said, [number, finish]) => said.replace(finish, `${number}`),
        line.replace(word, (typed) => `${numberOf(typed) ?? typed}`),
      ),
    areOthers: (line, said) =>
      line.split(nextNumber).some((piece) => {
        const heads = /^[^\p{L}\p{N}]*\d/u.test(piece) ? [...piece.matchAll(apartNumber)].map(Number) : [];
        const here = said.filter(({ number }) => heads.includes(number));
        const answered = here.length > 0 ? here : said;
        const isOther = ([typed]: RegExpExecArray): boolean =>
          !numbersOf(typed).some((number) => answered.some((one) => one.number === number));
        // A sentence behind that of the number speaks for itself.
        const bound = here.length > 0 ? (piece.split(nextSentence)[0] ?? "") : piece;
        return answered.some(({ is }) => is) && [...bound.matchAll(word)].some(isOther);
      }),
  };
}

/** What each open question says, by its number. */
export function questionsIn({ answer, open }: Answer): ReadonlyMap<number, string> {
  const points = [...answer.matchAll(/^ *(\d{1,4})\. (.*(?:\n {5}.*)*)/gmu)];
  return new Map(
    points
      .map(([, number, words = ""]) => [Number(number), words.replace(/\s+/gu, " ")] as const)
      .filter(([number]) => open.includes(number)),
  );
}

/** The open questions that ask about words, each with its word, as it stands in “” at the beginning. */
function wordsInQuestion({ answer, open }: Answer): (readonly [number, string])[] {
  return answer.split("\n").flatMap((line) => {
    const [, number, word] = /^\s*(\d{1,4})\. “([^“”]{3,40})”/u.exec(line) ?? [];
    return word !== undefined && open.includes(Number(number)) ? [[Number(number), word] as const] : [];
  });
}

/** The question about a finish, if there is one alone, and how its words are named: "plum in barley", "the Chalk device". */
function finishesIn(given: Answer): (readonly [number, RegExp])[] {
  const all = [...questionsIn(given)].flatMap(([number, says]) => {
    const [, found, other] =
      /^The (?:finish|device) is (.+?)(?: here and (.+?) on|, but .+? is (.+?)\.)/u
        .exec(says)
        ?.filter(Boolean) ?? [];
    return found === undefined || other === undefined ? [] : [[number, found, other] as const];
  });
  return all.length > 1
    ? []
    : all.map(([number, found, other]) => [
        number,
        new RegExp(
          `(?<=^|[.,;:!(–—-]\\s*|\\band |\\bso )(?:the |an? )?${RegExp.escape(found)}(?: (?:device|one|finish))?(?: (?:on|in|with) (?:the |an? )?${RegExp.escape(other)}(?: (?:plate|one))?)?(?= (?:is|was|stays|yes)(?!\\p{L}))(?![^.;!]*(?<!\\p{L})(?:all|both|every\\p{L}*|others?|rest|throughout|now)(?!\\p{L}))`,
          "giu",
        ),
      ]);
}

/** A sheet of the answer. */
interface Sheet {
  /** The name of its file, without ".pdf". */
  readonly name: string;
  readonly isPlate: boolean;
  /** Its points, and whether one of them is an open question. */
  readonly points: readonly number[];
  readonly isAsked: boolean;
}

function sheetsIn({ answer, open }: Answer): readonly Sheet[] {
  const found = new Map<string, { isPlate: boolean; points: number[] }>();
  let last: { isPlate: boolean; points: number[] } | undefined;
  for (const line of answer.split("\n")) {
    const name = /^(\S.{0,80})\.pdf$/iu.exec(line.trim())?.[1];
    const [, point] = /^ *(\d{1,4})\. /u.exec(line) ?? [];
    if (name !== undefined) {
      last = found.get(name) ?? { isPlate: false, points: [] };
      found.set(name, last);
    } else if (point !== undefined) last?.points.push(Number(point));
    else if (last?.points.length === 0) last.isPlate ||= line.startsWith("Plate, ");
  }
  return [...found].map(([name, { isPlate, points }]) => ({
    name,
    isPlate,
    points,
    isAsked: points.some((one) => open.includes(one)),
  }));
}

const apart = "(?<![\\p{L}\\p{N}-])";
const whole = String.raw`(?![\p{L}\p{N}-]|\.\d)`;
const anySheet = "(?:sheets?|forms?|files?|pdfs?)";

/** A name of a sheet: with its ending, without it if it has a number, or as in "the lobby sheet". */
function named({ name }: Sheet): string {
  const typed = RegExp.escape(name);
  const behind = /\p{L}{3}/u.test(name) ? `\\.pdf| (?:sheet|form|page)` : "\\.pdf";
  return `${typed}(?:${behind})${/\d/u.test(name) ? "?" : ""}`;
}

function namesOf(sheets: readonly Sheet[]): RegExp {
  const each = sheets.toSorted((one, other) => other.name.length - one.name.length);
  const bare = each.filter(({ name }) => /\p{L}{3}/u.test(name)).map(({ name }) => RegExp.escape(name));
  const some = `(?:${bare.join("|")})`;
  const listed =
    bare.length === 0 ? "" : `|${anySheet} for (?:the )?${some}(?:(?:, | and |, and )(?:the )?${some})*`;
  return each.length === 0
    ? /(?!)/u
    : new RegExp(`${apart}(?:(?:${anySheet} )?(?:${each.map(named).join("|")})${listed})${whole}`, "giu");
}

/** "Sheets for pos 1 and pos 2", "pos 1 sheet", where our answer tells of positions. */
const positioned = /^Device, .* position \d of \d/mu;
const position = String.raw`(?:the )?pos(?:ition|\.)? ?[1-9](?!\d)`;
const ofPositions = new RegExp(
  `${apart}${anySheet} (?:for|of) ${position}(?:(?:, | and | & |, and )(?:${position}|[1-9](?!\\d)))*|${apart}${position} ${anySheet}(?!\\p{L})`,
  "giu",
);

/** "Sheet and sheet". */
const severalSheets = /(?<!\p{L})sheet(?:(?:, | and | & |, and )sheet)+(?!\p{L})/giu;

/** Names of sheets that no question is about, each with its points. A plate is one where no other plate is told of. */
function pointed(sheets: readonly Sheet[]): (readonly [RegExp, readonly number[]])[] {
  const plates = sheets.filter(({ isPlate }) => isPlate);
  return sheets
    .filter(({ points, isAsked }) => points.length > 0 && !isAsked)
    .map((sheet) => {
      const kind = sheet.isPlate && plates.length === 1 ? "|plate(?: (?:sheet|form|page|one))?" : "";
      return [new RegExp(`${apart}(?:${anySheet} )?(?:${named(sheet)}${kind})${whole}`, "giu"), sheet.points];
    });
}

function patternOf(words: readonly string[]): RegExp {
  return words.length === 0
    ? /(?!)/gu
    : new RegExp(
        `(?<![\\p{L}\\p{N}]|\\b(?:dr|mrs?|ms|miss)\\.? )["“]?(?:${words
          .toSorted((one, other) => other.length - one.length)
          .map((word) => RegExp.escape(word))
          .join("|")})["”]?(?![\\p{L}\\p{N}])`,
        "giu",
      );
}

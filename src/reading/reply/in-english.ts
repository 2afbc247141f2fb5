import { memoized } from "../../trade/memoized.ts";
import { dutch } from "./languages/dutch.ts";
import { french } from "./languages/french.ts";
import { german } from "./languages/german.ts";
import { italian } from "./languages/italian.ts";
import { nordic } from "./languages/nordic.ts";
import { polish } from "./languages/polish.ts";
import { portuguese } from "./languages/portuguese.ts";
import { spanish } from "./languages/spanish.ts";
import { isMarked } from "./leads.ts";
import { expanded, kindOf } from "./lexicon.ts";
import { isNearQuestion } from "./talk.ts";

/*
 * Answers and reasons in other languages, word for word in English. A clause is told in English only if all of its words
 * stand in a table of languages/. What denies does so there in whole phrases, and no word does that doubts, limits,
 * wishes or changes.
 */

/** English words, each with what says them in another language, in the templates of answer-words.ts. */
export type Words = Readonly<Record<string, string>>;

/** Words of those that English has too. A clause of these alone stays as it is. */
const alsoEnglish = new Set(
  `a ad al alt architect ark arrive as asap att au aux blanket boot boots breton chalet
  chef chefs clients client dank del dem den di die direct do dos due e en error
  errata es est exact excuses file filer fine gr hall hotel hotels hus i idem in is
  item jo joint joints la latin le les lg lo logo los madame mfg mot name nave
  nee no non nos nova o och of oi on os pardon patron per pkt plano point
  points pos position pronto pueblo question questions rue salutations salve sender service si sim so son sorry
  suit tack text till to tout twee um van villa village y yacht`.split(/\s+/u),
);
/** What may stand in a clause of any language. */
const neutral = /^(?:\d{1,4}|yes|ok|and|for|the word)$/u;

/** A word in capitals: part of a legend. */
const capitals = /^\p{Lu}[\p{Lu}\p{N}.&-]+$/u;

const spaced = (words: string): string => words.replace(/['’]/gu, "' ").replace(/\s+/gu, " ").trim();
const bare = (words: string): string => spaced(words).toLowerCase();

/**
 * A phrase as people type it who leave accents out. Short words keep theirs, and ends of words do: "si" is no "sí", and
 * "corrige" no "corrigé".
 */
const withoutAccents = (phrase: string): string =>
  phrase.replace(/\p{L}{4,}(?=\p{L})/gu, (word) => word.normalize("NFD").replace(/\p{M}+/gu, ""));

const tongues = [french, spanish, german, italian, portuguese, dutch, polish, nordic].map((words) => {
  const known = new Map(
    Object.entries(words).flatMap(([english, templates]) =>
      templates
        .split(",")
        .flatMap(expanded)
        .flatMap((phrase) => [phrase, withoutAccents(phrase)].map((one) => [bare(one), english] as const)),
    ),
  );
  return { known, longest: Math.max(...[...known.keys()].map((phrase) => phrase.split(" ").length)) };
});

interface InEnglish {
  readonly said: string;
  /** A word of it is none of English. */
  readonly isForeign: boolean;
}

/** A clause in English, or undefined if one of its words is not known in that language. */
function translated(clause: string, { known, longest }: (typeof tongues)[number]): InEnglish | undefined {
  const typed = spaced(clause)
    .replace(/\bthe word\b/gu, "the_word")
    .split(" ");
  const words = typed.map((word) => word.toLowerCase());
  const isShouted = !/\p{Ll}/u.test(clause);
  const english: string[] = [];
  let isForeign = false;
  for (let at = 0; at < words.length; ) {
    const word = (words[at] ?? "").replace("the_word", "the word");
    const isLegend = capitals.test(typed[at] ?? "");
    // "SALON" among small letters is no "salón", though "NEIN" is "nein".
    const isWhole = isLegend && word.length > 4 && !isShouted;
    const size = Array.from({ length: isWhole ? 0 : longest }, (_, i) => longest - i).find((length) =>
      known.has(words.slice(at, at + length).join(" ")),
    );
    if (size === undefined && !isLegend && !neutral.test(word)) return undefined;
    const phrase = words.slice(at, at + (size ?? 1));
    english.push(
      size === undefined ? (isLegend ? (typed[at] ?? "") : word) : (known.get(phrase.join(" ")) ?? ""),
    );
    isForeign ||= size !== undefined && phrase.some((one) => !alsoEnglish.has(one));
    at += size ?? 1;
  }
  return { said: inTurn(english.join(" ")), isForeign };
}

/** English words in the turn in which English has them. */
function inTurn(words: string): string {
  return words
    .replace(/^is\b/u, "it is")
    .replace(/^are\b/u, "they are")
    .replace(/\bthe (?=\d)/gu, "")
    .replace(/^to (?=\d)/u, "for ")
    .replace(/\bshould ((?:\p{Lu}[\p{Lu}\p{N}]+ )+)be\b/gu, "should be $1")
    .replace(/\b(sheets?) (corrected|new)\b/gu, "$2 $1")
    .replace(/\battached is$/u, "attached")
    .trim();
}

const isKnown = (clause: string): boolean =>
  spaced(clause)
    .split(" ")
    .every((word) => word === "" || capitals.test(word) || isKnownWord(word.toLowerCase()));
const isKnownWord = (word: string): boolean => neutral.test(word) || kindOf(word) !== undefined;

/** A sentence in English, if all of it is known in one of those languages, or in English. */
function sentenceInEnglish(sentence: string): string {
  const clauses = sentence.split(/(\s*[,;:()–—]+\s*|\s+[-=]+>?\s+)/u);
  for (const tongue of tongues) {
    const english = clauses.map((clause, at): InEnglish | undefined => {
      if (at % 2 === 1) return { said: clause, isForeign: false };
      return translated(clause, tongue) ?? (isKnown(clause) ? { said: clause, isForeign: false } : undefined);
    });
    if (!english.every((one) => one !== undefined) || !english.some(({ isForeign }) => isForeign)) continue;
    const said = english.map((one) => one.said).join("");
    return /^\p{Lu}/u.test(sentence) ? said.replace(/^\p{Ll}/u, (letter) => letter.toUpperCase()) : said;
  }
  return sentence;
}

/** "2 und 3", "zu 2", "E' giusto". */
function withNumbers(line: string): string {
  return line
    .replace(/(?<=\d,? )(?:y|e|et|und|en|i|och|og)(?= \d)/giu, "and")
    .replace(/(?<=^|[.;] )(?:zu|ad|al|au|pour le|para la|per il|voor|till?)(?= \d)/giu, "for")
    .replace(/(?<=^|[.,;:] )E['’](?= )/gu, "È");
}

/** A line whose sentences in other languages are in English. */
export const inEnglish = memoized((line: string): string => {
  return withNumbers(line)
    .split(/(\s*[.!\n]+\s*)/u)
    .map((sentence, at) => (at % 2 === 1 ? sentence : sentenceInEnglish(sentence)))
    .join("");
});

/**
 * A text whose own lines are in English, and those lines as they were typed, trimmed. Quotations of ours stay, and so
 * does a line with a word that is nearly one in question: "Salon" may be what should stand there, and no "salón".
 */
export function linesInEnglish(
  text: string,
  { answer, inQuestion }: { readonly answer: string; readonly inQuestion: readonly string[] },
): {
  readonly text: string;
  readonly typed: ReadonlyMap<string, string>;
} {
  const typed = new Map<string, string>();
  const ours = new Set(answer.split("\n").map((line) => line.trim()));
  const stays = (line: string): boolean =>
    isMarked(line) || ours.has(line.trim()) || isNearQuestion(withoutLegends(line), inQuestion);
  const lines = text.split(/\r\n|\r|\n/).map((line) => {
    const english = stays(line) ? line : inEnglish(line);
    if (english !== line) typed.set(english.trim(), line.trim());
    return english;
  });
  return { text: lines.join("\n"), typed };
}

/** A line without words in capitals among small letters, which stay as they are. */
function withoutLegends(line: string): string {
  return /\p{Ll}/u.test(line) ? line.replace(/(?<!\p{L})\p{Lu}{2,}(?!\p{L})/gu, "") : line;
}

import { plainWord } from "../../lettering/slips.ts";
import { speaksAgainst } from "./doubt.ts";
import { takeApart } from "./own-text.ts";
import { remarksIn } from "./remarks.ts";
import { hasSigns, tokensOf } from "./word-bag.ts";

/** What a reply says of the words that it was asked about. */
export interface Kept {
  /** Those that it keeps, in capitals without accents. */
  readonly words: ReadonlySet<string>;
  /** It says something else as well, so that somebody has to read it. */
  readonly more: boolean;
}

/** What a reply is read against. */
export interface Asked {
  /** The words that were asked about. */
  readonly words: Iterable<string>;
  /** The text of the answer that it replies to, which it may quote, and its subject. */
  readonly answer: string;
  readonly subject: string;
  /** What the sender is called. */
  readonly names: readonly string[];
}

/**
 * Reads lines such as "KEEP NIMBUS, CIRRUS" or "2: keep nimbus" among those that the sender of a reply wrote.
 * Only words that were asked about can be kept; greetings, thanks and names say nothing else. Where the sender
 * says anything else, no machine can tell whether it is a condition, and nothing is kept.
 */
export function readKeepLines(text: string, { words, answer, subject, names }: Asked): Kept {
  // Nobody needs so many words to keep some, whatever is quoted; and they would take their time.
  if (text.length > longestText) return { words: new Set(), more: true };
  const { own, quoted, aside } = takeApart(text.replace(/\p{Cf}/gu, ""), subject);
  const asked = new Set([...words].map(plainWord));
  const polite = politeWords(names);
  const lines = own.map((line) => readLine(line, asked, polite));
  const listed = lines.flatMap(({ list }) => list ?? []);
  const strange = listed.some((word) => !asked.has(word));
  const others = [
    ...lines.filter(({ list, blank }) => list === undefined && !blank).map(({ line }) => line),
    ...aside,
  ];
  const remarks = remarksIn(quoted, `${subject}\n${answer}`);
  const more = strange || others.length + remarks.length > 0;
  return { words: new Set(more ? [] : listed), more };
}

/** A line that the sender wrote, with the words that it asks to keep if it is such a line. */
interface Line {
  readonly line: string;
  readonly list: readonly string[] | undefined;
  /** It says nothing. */
  readonly blank: boolean;
}

function readLine(line: string, asked: ReadonlySet<string>, polite: ReadonlySet<string>): Line {
  const tokens = tokensOf(line);
  const says = tokens.length > 0 ? tokens.some((token) => !polite.has(token)) : /[^-–—_=*~.\s]/.test(line);
  return { line, list: wordsKept(line, asked), blank: !says && !hasSigns(line) };
}

/** In characters; our own answers about an order of 60 sheets are shorter. */
const longestText = 30_000;

/** Longer lines are sentences. */
const longestLine = 300;

/** The words that a line asks to keep; undefined if it says anything else, or says it in another way. */
export function wordsKept(line: string, asked: ReadonlySet<string>): string[] | undefined {
  if (line.length > longestLine) return undefined;
  const list = /^[-*•]?\s*(?:\(?\d{1,3}\s?[.:)]?\s*)?(?:please\s+)?keep(?:\s*:|\s)\s*(.+)$/iu.exec(line)?.[1];
  const items = list
    ?.replace(
      /(?:,?\s+(?:as (?:it |they )?(?:is|are|stands?)|as typed|please|thanks|thank you))*\s*[.!]?$/iu,
      "",
    )
    .split(/\s*[,;&]\s*(?:and\s+)?|\s+and\s+/iu)
    .map((item) => item.replace(/^(["“”„«»'‘’])(.*)["“”«»'’]$/u, "$2"));
  const found = items?.map((item) => {
    const several = item.split(/\s+/).map((word) => plainWord(word.replaceAll("’", "'")));
    // Of a row that may be cut off, the row itself was asked about.
    if (asked.has(several.join(" "))) return [several.join(" ")];
    // Words with nothing between them make a sentence, unless each was asked about.
    return several.length === 1 || several.every((word) => asked.has(word)) ? several : [""];
  });
  const all = found?.flat();
  return all?.every((word) => asked.has(word) || /^[\p{L}\p{N}][\p{L}\p{N}']*$/u.test(word))
    ? all
    : undefined;
}

/** What people write around what they have to say. Nothing that could be an answer is among it. */
const courtesies = tokensOf(
  `hi hello dear good morning afternoon evening day team everyone there burin thanks thank you so very much many
  in advance best kind kindest warm regards greetings wishes sincerely yours truly faithfully cheers have a nice
  sent from my iphone ipad android phone mobile`,
);

function politeWords(names: readonly string[]): ReadonlySet<string> {
  return new Set([...courtesies, ...names.flatMap(tokensOf).filter((name) => !speaksAgainst(name))]);
}

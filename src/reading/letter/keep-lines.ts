import { plainWord } from "../../lettering/slips.ts";
import { takeApart } from "./own-text.ts";
import { hasMoreWords, tokensOf } from "./word-bag.ts";

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
  /** The text of the answer that it replies to, which it may quote. */
  readonly answer: string;
  /** What the sender is called. */
  readonly names: readonly string[];
}

/**
 * Reads lines such as "KEEP NIMBUS, CIRRUS" or "2: keep nimbus" among those that the sender of a reply wrote.
 * Only words that were asked about can be kept; greetings, thanks and names say nothing else.
 */
export function readKeepLines(text: string, { words, answer, names }: Asked): Kept {
  const { own, quoted, between } = takeApart(text);
  const asked = new Set([...words].map(plainWord));
  const polite = new Set([...courtesies, ...names.flatMap(tokensOf)]);
  const kept = new Set<string>();
  let more = between || hasMoreWords(quoted.join("\n"), answer);
  for (const line of own) {
    const listed = wordsKept(line, asked);
    for (const word of listed ?? []) if (asked.has(word)) kept.add(word);
    more ||= listed?.some((word) => !asked.has(word)) ?? !tokensOf(line).every((token) => polite.has(token));
  }
  return { words: kept, more };
}

/** Longer lines are sentences. */
const longestLine = 300;

/** The words that a line asks to keep; undefined if it says anything else, or says it in another way. */
function wordsKept(line: string, asked: ReadonlySet<string>): string[] | undefined {
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

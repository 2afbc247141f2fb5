import { at, counts, numbers, rest } from "./clause-words.ts";
import type { Fits } from "./fits.ts";

/** The points that a clause is about: their numbers, or a word for some, with how many they are if it says so. */
export type Of =
  | readonly number[]
  | {
      readonly word: "all" | "both" | "rest" | "last" | "it" | "words";
      readonly count: number | undefined;
      /** "They", "both". */
      readonly isSeveral?: boolean;
    };

/** What a clause of a reply says or does. */
export type Act =
  | {
      readonly kind: "says";
      readonly of: Of;
      readonly is: boolean;
      /** It is a no only where a sheet comes: "2 is a typo". */
      readonly needsSheet: boolean;
      /** It is said only where nothing else was answered, and there are no points to mend. */
      readonly alone?: boolean;
    }
  /** "Yes, yes and no": the answers to all questions in turn. */
  | { readonly kind: "each"; readonly each: readonly boolean[] }
  /** "Apart from 2", behind what is said of all. `wrong`: the clause itself says that all others are. */
  | { readonly kind: "except"; readonly of: readonly number[]; readonly wrong?: Of }
  /** A sheet comes, perhaps for these points. */
  | { readonly kind: "sheet"; readonly of: readonly number[]; readonly needsSheet: boolean }
  /** What stands on a sheet that comes: words of legends, beside what was mended there. */
  | {
      readonly kind: "carries";
      readonly words: readonly string[];
      /** It stands right behind what tells of the sheet: "with the city". */
      readonly isBehind?: boolean;
    }
  /** "My typo", "good catch on 2". */
  | { readonly kind: "owns"; readonly of?: readonly number[] }
  /** "It should be LOBBY", and the words alone. */
  | { readonly kind: "should" | "words" }
  /** "2 is French": the next clause tells whether it is right. */
  | { readonly kind: "about"; readonly of: readonly number[]; readonly isSlip?: true }
  /** "Go ahead". */
  | { readonly kind: "go" }
  /** Why something is meant so, behind a yes, and ahead of one. */
  | { readonly kind: "why" | "because" }
  | { readonly kind: "idle" };

/** A clause of one shape. The pattern is sticky. */
export interface Form {
  readonly pattern: RegExp;
  readonly act: (found: RegExpExecArray) => Act | undefined;
  readonly fits?: Fits;
  /** It fits as soon as it does one of the questions that were spoken of. */
  readonly any?: true;
  /** Behind it a clause has to end. */
  readonly ends?: true;
  /** Any word may stand in it, but none that is nearly one in question. */
  readonly isOpen?: boolean;
}

export type Groups = Record<string, string | undefined>;

export const form = (
  source: string,
  act: (groups: Groups, whole: string) => Act | undefined,
  more: Pick<Form, "fits" | "any" | "ends" | "isOpen"> = {},
): Form => ({
  pattern: new RegExp(`(?:${source})(?![\\p{L}\\p{N}])`, "iuy"),
  act: ({ groups = {}, 0: whole }) => act(groups, whole),
  ...more,
});

const longestRange = 50;
const range = /(\d{1,3}) ?(?:[-–]|to|thru|through) ?(\d{1,3})/giu;

/** The numbers in words about points: "1 to 3", "number two". */
export function numbersIn(said = ""): number[] {
  const ranges = [...said.matchAll(range)].flatMap(([, first, last]) => {
    const length = Number(last) - Number(first) + 1;
    return length < 1 || length > longestRange ? [-1] : Array.from({ length }, (_, i) => Number(first) + i);
  });
  const single = [...said.replace(range, " ").matchAll(/\d{1,3}/gu)].map(([digits]) => Number(digits));
  const named = [...said.matchAll(/number ([a-z]+)/giu)].map(
    ([, word = ""]) => counts.indexOf(word.toLowerCase()) + 1,
  );
  return [...ranges, ...single, ...named.filter((one) => one > 0)];
}

const isRest = new RegExp(`^(?:${rest})$`, "iu");

/** "Both", "all three", "the other two". */
export function wordIn(said = ""): Exclude<Of, readonly number[]> {
  const [one] = /(?<!\p{L})(?:two|three|four|five|six)(?!\p{L})|\d/iu.exec(said) ?? [];
  const count = one === undefined ? undefined : counts.indexOf(one.toLowerCase()) + 1 || Number(one);
  return {
    word: isRest.test(said) ? "rest" : /both/iu.test(said) ? "both" : "all",
    count,
    isSeveral: true,
  };
}

export const ofIt: Of = { word: "it", count: undefined };
export const ofThem: Of = { ...ofIt, isSeveral: true };
export const several = /(?<!\p{L})(?:they|these|those|both|are|all)(?!\p{L})/iu;
export const saying = (of: Of, is: boolean, needsSheet = false): Act => ({
  kind: "says",
  of,
  is,
  needsSheet,
});
export const sheetFor = (of: readonly number[], needsSheet = false): Act => ({
  kind: "sheet",
  of,
  needsSheet,
});

/** How a clause names the points that it is about. */
export const subject = `(?:(?:the )?(?:words?|wordings?|spellings?|names?|legends?) (?:in|of|for|on|at) )?(?:${at}:? )?(?<of>${numbers})`;
export const mark = String.raw`(?: ?[:=)\]–—-]+ ?|, | )`;

/** No words of a legend, even in capitals. */
const shouted =
  /^(?:yes|no|not|never|stop|hold|wait|cancel|asap|urgent|rush|call|phone|please|pls|don'?t|capitals|caps|bold|order)$/iu;
/** Words in capitals, or a name: what shall stand on a sheet. */
export const isWritten = ({ words: said = "" }: Groups, each: RegExp): boolean =>
  said
    .replace(/ (?:with(?:out)? (?:an? )?\p{Lu}{1,6}|(?:as|in) (?:one|two) words?|now|\d)$/u, "")
    .replace(
      /(?<=\p{Lu} )the word|the word(?= (?:\p{Lu}(?!\p{Ll})|and \p{Lu}))|(?<=\p{Lu} and )the word$/gu,
      "W",
    )
    .split(/ (?:and )?/u)
    .every((word) => each.test(word) && !shouted.test(word));
export const capital = /^["“]?\p{Lu}/u;
export const capitals = /^["“]?\p{Lu}[^\p{Ll}]*$/u;

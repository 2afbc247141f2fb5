import { tokensOf } from "./word-bag.ts";

/*
 * Sentences beside sheets that came, which only tell that they are corrected, and how a slip came about: "the error was
 * ours when we retyped the list, it should read WAITING". Words that shall stand there do. What is wrong is a point that
 * was asked about, so that no other slip passes for talk.
 */

/** What such sentences consist of, in any turn. No verb that asks for anything is among it, and nothing that denies. */
const around = new Set(
  tokensOf(`a an the this that these those it its it's they them both we i he she you my our his her their i've we've i'm
    we're is are was were be been has have had did should of course obviously in on of for from at by as to so and with
    when while again now here there hi hello good morning afternoon thanks thank very sorry apologies about catching
    spotting noticing oops attached attach enclosed sent find see corrected correction corrections fixed revised redone
    amended updated mended retyped changed sheet sheets form forms pdf pdfs copy version new mistake mistakes error
    errors typo typos slip slips oversight wrong wrongly misspelt misspelled mistyped misread typed copied side part end
    fault ours mine bad fingers word words name spelling letter point read reads say says please`),
);
const tells =
  /(?<!\p{L})(?:mistakes?|errors?|typos?|slips?|oversight|misspel\p{L}+|mistyped|misread|corrected|fixed|revised|redone|amended|updated|mended|retyped|should (?:of course )?(?:read|say|be))(?!\p{L})/iu;
/** How a slip came about, and words that only lead to a sheet. */
const phrases =
  /(?<!\p{L})(?:when (?:i|we) (?:re)?typed (?:out )?(?:the|an?) (?:schedule|list|drawings?|plans?)|(?:copied|copying|typed|typing) (?:it |them )?(?:from|off) (?:the|an?) (?:schedule|list|drawings?|plans?)|right (?=now (?:on|in|with)))(?!\p{L})/giu;
/** "It should be corrected" asks for it, and so does what should stand on all sheets. */
const wished =
  /(?<!\p{L})should(?! (?:of course |obviously |both )*(?:be|read|say|have been|have read|have said) word(?!\p{L}))|^\W*(?:have|had|see|find|attach|copy|name|point|letter|spelling)(?! attached)(?!\p{L})|(?<!\p{L})(?:(?:on|in) both|please(?! (?:find|see)(?!\p{L})))(?!\p{L})/iu;
const point = /(?<!\p{L})(?:it|this|that|those|these|they|both|my|our|typos?)(?!\p{L})/iu;
const capitals = /(?<![\p{L}\p{N}.-])["“]?\p{Lu}[\p{Lu}\p{N}&’'-]+["”]?(?![\p{L}\p{N}])/gu;
const pointed =
  /(?:(?:points?|questions?|items?|numbers?|no\.?|nos\.?|#) ?)\d{1,2}(?:(?:,| and|, and| &) \d{1,2})*(?!\d)/giu;
const suggested = /If you\s+mean ([^,.]+(?:, [^,.]+)*?), send/gu;

/** In characters. */
const longest = 300;

/** What a sentence beside sheets that came is held against. */
export interface Mended {
  /** The answer that it replies to. */
  readonly answer: string;
  /** The words that the open questions ask about, in small letters. */
  readonly inQuestion: readonly string[];
  /** Whether words stand on a sheet that came, or are what it is called. */
  readonly isOnSheets: (words: string) => boolean;
}

/** Whether a sentence only tells what was corrected on sheets that came, and truly. */
export function tellsMended(sentence: string, { answer, inQuestion, isOnSheets }: Mended): boolean {
  if (sentence.length > longest || /[?%$€£]/u.test(sentence) || !/\p{Ll}/u.test(sentence)) return false;
  if (!tells.test(sentence)) return false;
  const asked = new Set(inQuestion);
  const meant = new Set([...answer.matchAll(suggested)].flatMap(([, words = ""]) => tokensOf(words)));
  const isNamed = (word: string): boolean => asked.has(word) || (meant.has(word) && isOnSheets(word));
  let [isTrue, isOfPoint] = [true, false];
  const rest = sentence
    .replace(phrases, "")
    .replace(pointed, () => {
      isOfPoint = true;
      return "point";
    })
    .replace(capitals, (typed) => {
      const word = typed.replace(/["“”]/gu, "");
      isOfPoint ||= asked.has(word.toLowerCase());
      isTrue &&= asked.has(word.toLowerCase()) || isOnSheets(word);
      return "word";
    });
  const words = tokensOf(rest);
  isOfPoint ||= point.test(rest) || words.some(isNamed);
  return (
    isTrue && isOfPoint && !wished.test(rest) && words.every((word) => around.has(word) || isNamed(word))
  );
}

/**
 * Whether a sentence that tells of a slip may be about what is said to be meant so: it names that, it names several, or
 * it names nothing and nothing is denied. `questions`: what each says, by its number.
 */
export function maySpeakOf(
  slip: string,
  yes: ReadonlySet<number>,
  no: ReadonlySet<number>,
  questions: ReadonlyMap<number, string>,
): boolean {
  if (yes.size === 0) return false;
  const tokens = new Set(tokensOf(slip));
  const numbers = [...slip.matchAll(pointed)].flatMap(([some]) => some.match(/\d+/gu) ?? []).map(Number);
  const isOf = (number: number): boolean => {
    const [, word = ""] = /^“([^”]+)”/u.exec(questions.get(number) ?? "") ?? [];
    return numbers.includes(number) || (word !== "" && tokensOf(word).every((one) => tokens.has(one)));
  };
  const isNamed = numbers.length > 0 || [...questions.keys()].some(isOf);
  return (
    [...yes].some(isOf) ||
    (!isNamed && (no.size === 0 || /(?<!\p{L})(?:both|these|those|they|them)(?!\p{L})/iu.test(slip)))
  );
}

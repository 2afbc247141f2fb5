import type { Letter } from "../../trade/letter.ts";
import { withoutCourtesies } from "./courtesy.ts";
import { asksFor } from "./cues.ts";
import { describes } from "./describes.ts";
import { speaksAgainstIt } from "./file-names.ts";
import { beginsAnswer } from "./leads.ts";
import { namesOtherBuilding } from "./other-buildings.ts";
import { isSubject, withoutPrefixes } from "./prefixes.ts";
import { hasOddTail } from "./tails.ts";
import { type LetterFacts, withoutFacts } from "./tallies.ts";
import { undoes } from "./undoes.ts";
import { tokensOf } from "./word-bag.ts";

/** What a subject is read against. */
interface Known {
  readonly facts: LetterFacts;
  /** Letters that the letter may quote. */
  readonly quoted: readonly Pick<Letter, "subject">[];
}

/** In characters. */
const longest = 1000;

/** Whether a subject says more than what the letter is about. It may be full of names and numbers. */
export function subjectSays(subject: string, known: Known): boolean {
  const bare = withoutPrefixes(subject);
  const isKnown = known.quoted.some(
    (one) =>
      tokensOf(one.subject).join(" ").startsWith(tokensOf(bare).join(" ")) || isSubject(subject, one.subject),
  );
  const own = withoutOurs(bare, known);
  if (isKnown || own === "" || saysNoSubject.test(own) || describes(own, known.facts)) return false;
  const whole = own.normalize("NFKC").slice(0, longest);
  const rest = withoutCourtesies(withoutFacts(whole, known.facts));
  return (
    asksFor(rest) ||
    undoes(whole) ||
    speaksAgainstIt(whole.replace(courtesies, " "), known.facts) ||
    asksForCall.test(whole) ||
    ofSubject.test(rest) ||
    hasOddTail(rest) ||
    namesOtherBuilding(`For ${whole}`, known.facts) ||
    contradicts(rest, known.facts)
  );
}

/** What a mail program writes where nothing is. */
const saysNoSubject = /^(?:\(?no subject\)?|\(?none\)?|sorry|apologies|oops)[.!]*$/iu;
/** Of a file's name they speak against what is in it, and of a subject they ask for what this desk does anyway. */
const courtesies = /(?<!\p{L})(?:please|pls|see|check|confirm|call(?= \d))(?!\p{L})/giu;
/** What a word alone says in a subject: that it is no order, or none for now. */
const ofSubject =
  /(?<!\p{L})(?:trial|practi[cs]e|samples?|next (?:year|season|spring|summer|fall|autumn|winter)|last year|semi-?final|half[- ]done|previous|missing|with (?:\p{L}+ )?(?:remarks|questions|comments)|sold|cop(?:y|ies) of|copy$|recall)(?!\p{L})/iu;
const asksForCall =
  /(?<!\p{L})(?:call|ring|phone|text) (?:me|us|back|asap)(?!\p{L})|^(?:please |pls |kindly )*(?:call|ring|phone)(?: back)?(?: please| pls)?[.!]*$/iu;

/** What somebody has written behind the subject of an answer of ours: "CONFIRM: order FM-72, 1 question - in gold". */
function withoutOurs(subject: string, { quoted }: Known): string {
  const word = beginsAnswer.exec(subject);
  if (word === null) return subject;
  const ours = quoted.find((one) => subject.toLowerCase().startsWith(one.subject.toLowerCase()));
  const end = ours?.subject.length ?? (tallied.exec(subject) ?? word)[0].length;
  return subject.slice(end).replace(/^[^\p{L}\p{N}]+/u, "");
}
/** Up to "2 to fix, 1 question", with which our subjects end. */
const tallied =
  /^.*?(?:(?:(?:\d+|nothing) (?:things? )?to fix|\d+ questions?(?: to answer)?|\d+ points? for a person|(?:\d+|more) sheets?(?: still)? to come)(?:, (?=\d))?)+(?![\p{L}\p{N}])/u;

/** Whether words have a number that looks like an order's or a mark and is another: BW-2208, or 40-2271 for 40-2217. */
function contradicts(words: string, { numbers, marks }: LetterFacts): boolean {
  const shapes = new Set(
    [...numbers, ...marks].flatMap((number) => /^\p{L}+(?=[-\s]?\d)/u.exec(number)?.[0].toLowerCase() ?? []),
  );
  const digits = new Set(numbers.filter((number) => (number.match(/\d/g) ?? []).length > 4).map(shapeOf));
  return (
    [...words.matchAll(/(?<![\p{L}\p{N}])(\p{L}+)[-\s]?\d+/gu)].some(([, letters = ""]) =>
      shapes.has(letters.toLowerCase()),
    ) ||
    [...words.matchAll(/(?<![\p{L}\p{N}])\d[\d-]*\d(?![\p{L}\p{N}])/gu)].some(([one]) =>
      digits.has(shapeOf(one)),
    )
  );
}

const shapeOf = (number: string): string => number.replace(/\d/g, "9");

import type { Statement } from "../../trade/statement.ts";
import { type Answers, type Asked, noAnswers, otherPoint, readAnswers } from "./answers.ts";
import { mayCancel } from "./cancels.ts";
import { sentencesOf } from "./idle.ts";
import { linesInEnglish } from "./in-english.ts";
import { namesIn, notesIn } from "./named-points.ts";

/** In characters. Our own answer about an order of 60 sheets is shorter. */
const longestText = 30_000;

type Besides = (understood: ReadonlySet<string>) => readonly Statement[];
type ReadReply = { readonly answers: Answers; readonly statements: readonly Statement[] };

/**
 * What a reply answers, and what else it says that a person has to read. Who says that a note of ours is right, such as
 * "2 is right" of a word that is not known here, says nothing that anybody must read. `besides` gives what is said
 * beside some lines.
 */
export function answersBeside(text: string, asked: Asked, besides: Besides): ReadReply {
  const first = answersOnly(text, asked, besides);
  const { open, questions = open } = asked;
  const notes = new Set(notesIn(asked.answer)).difference(new Set([...open, ...questions]));
  if (first.statements.length === 0 || notes.size === 0) return first;
  const apart = answersOnly(...withoutNotes(text, [...notes], asked, besides));
  if (apart.statements.length === 0) return apart;
  const { answers, statements } = answersOnly(text, { ...asked, open: [...asked.open, ...notes] }, besides);
  if (statements.length > 0 || (!answers.no.isDisjointFrom(notes) && !asked.bringsSheets)) return first;
  return {
    answers: { ...answers, yes: answers.yes.difference(notes), no: answers.no.difference(notes) },
    statements,
  };
}

/** The same without the sentences that only say of notes that they are right. */
function withoutNotes(
  text: string,
  notes: readonly number[],
  asked: Asked,
  besides: Besides,
): [string, Asked, Besides] {
  const ofNotes = { ...asked, open: notes, others: 0 };
  const { words } = namesIn(ofNotes);
  const namesNote = (sentence: string): boolean =>
    /\d/u.test(sentence) || words.some((word) => sentence.toLowerCase().includes(word));
  const isOfNote = (sentence: string): boolean => {
    if (asked.open.length === 1 && ofOthers.test(sentence)) return true;
    if (sentence.length > longestShown || !namesNote(sentence)) return false;
    const { answers } = answersOnly(sentence, ofNotes, () => []);
    return answers.yes.size > 0 && answers.no.size === 0;
  };
  const lines = text.split("\n").map((line) => {
    const sentences = line.startsWith(">") ? [] : sentencesOf(line.trim());
    const rest = sentences.filter((one) => !isOfNote(one));
    return { line, rest: rest.length === sentences.length ? line : rest.join(" ") };
  });
  const besidesRest: Besides = (understood) => {
    const whole = lines.filter(({ line, rest }) => rest !== line && (rest === "" || understood.has(rest)));
    return besides(new Set([...understood, ...whole.map(({ line }) => line.trim())]));
  };
  return [lines.map(({ rest }) => rest).join("\n"), asked, besidesRest];
}

/** "The other two are right", where there is a single question. */
const ofOthers =
  /^(?:and )?(?:the )?(?:others?|rest|other (?:one|two|three|words?|names?|ones|points?))(?: (?:is|are))?(?: (?:all|both))? (?:right|correct|fine|ok|okay|good|as intended|meant so|intentional)(?: as (?:is|typed|shown|they are))?[.!]*$/iu;

/**
 * The same where only questions may be answered. Other words may be a condition, so then it answers nothing, unless
 * they are only about another point.
 */
function answersOnly(text: string, asked: Asked, besides: Besides): ReadReply {
  if (text.length > longestText) return { answers: noAnswers, statements: besides(new Set()) };
  // A letter that was asked nothing is read like any other.
  const isAsked = asked.open.length + (asked.words?.length ?? 0) > 0;
  if (!isAsked && !mayCancel(text)) return { answers: noAnswers, statements: besides(new Set()) };
  const { unread, answering, mended, ...answers } = readInEnglish(text, asked);
  if (asked.open.length === 0 && answers.withdraws.size + answers.nothing.size === 0)
    return { answers: noAnswers, statements: besides(new Set()) };
  const statements = besides(answers.lines);
  if (answers.lines.size > 0 && statements.every((one) => isOfOtherPoint(one, answers))) {
    const untold = statements.length === 0 ? unread.find((line) => !answers.lines.has(line)) : undefined;
    return { answers, statements: untold === undefined ? statements : [asWords(untold)] };
  }
  const rest = besides(mended);
  // Whoever reads any of it reads all of it.
  const all = rest.length === 0 ? rest : besides(new Set());
  const [first] = unread;
  // A reply of words alone says something, even if it looks like a courtesy.
  const isUntold = all.length === 0 && first !== undefined && !asked.bringsSheets;
  return {
    answers: noAnswers,
    statements: isUntold ? [asWords(first)] : withAnswers(all, answering, unread),
  };
}

/** What a reply answers, with its lines as they were typed. */
function readInEnglish(text: string, asked: Asked): ReturnType<typeof readAnswers> {
  const english = linesInEnglish(text, { answer: asked.answer, inQuestion: namesIn(asked).words });
  const typed = (line: string): string =>
    line
      .split("\n")
      .map((one) => english.typed.get(one) ?? one)
      .join("\n");
  const read = readAnswers(english.text, asked);
  return {
    ...read,
    lines: new Set([...read.lines].map(typed)),
    answering: new Set([...read.answering].map(typed)),
    unread: read.unread.map(typed),
    mended: new Set([...read.mended].map(typed)),
  };
}

/** Statements with what they answer in one, and what stands unread beside it. Whoever reads it sees why. */
function withAnswers(
  all: readonly Statement[],
  answering: ReadonlySet<string>,
  unread: readonly string[],
): readonly Statement[] {
  const lines = [...answering, ...unread.filter((line) => answersNumber.test(line))];
  const isPart = (words: string): boolean => lines.some((line) => line.includes(words));
  const others = all.filter((one) => one.kind !== "said" || one.where !== "text" || !isPart(one.words));
  if (others.length === all.length) return all;
  const told = new Set(others.map((one) => ("words" in one ? one.words : "")));
  const words = [...new Set([...answering, ...unread.filter((line) => !told.has(line))])].join(" … ");
  return [{ kind: "said", where: "answer", words: words.slice(0, longestAnswer) }, ...others];
}

/** "1 YES. It is what they call the hall." */
const answersNumber = /^\W*\d{1,3}\W{0,3}(?:yes|no)(?!\p{L})/iu;
/** In characters. */
const longestAnswer = 300;
/** In characters. */
const longestShown = 160;

function asWords(line: string): Statement {
  return { kind: "said", where: "text", words: line.slice(0, longestShown) };
}

/**
 * Whether a statement is only about a point that is not answered: "4: make it SALON" beside "3 YES". Counts bind no
 * answer.
 */
function isOfOtherPoint(statement: Statement, { yes, no, withdraws, lines }: Answers): boolean {
  if (statement.kind === "counts") return true;
  if (lines.size === 0) return true;
  const number =
    statement.kind === "said" && statement.where === "text" ? otherPoint(statement.words) : undefined;
  return number !== undefined && !yes.has(number) && !no.has(number) && withdraws.size === 0;
}

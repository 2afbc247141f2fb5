import type { FileId } from "../../trade/sheet.ts";
import type { Statement } from "../../trade/statement.ts";
import { bared } from "./bare-line.ts";
import { cancelledIn } from "./cancels.ts";
import { withoutCourtesies } from "./courtesy.ts";
import { speaksAgainst } from "./doubt.ts";
import { isBoilerplate, isGoodBye, isOfSignature, withoutContacts } from "./furniture.ts";
import { type OwnLine, ownLines } from "./own-lines.ts";
import { takeApart } from "./own-text.ts";
import { isReason } from "./reasons.ts";
import { remarksIn } from "./remarks.ts";
import { longestLine, saidIn } from "./said.ts";
import { isOwnAffair, isThanks } from "./small-talk.ts";
import { areTerms } from "./terms.ts";
import { hasSigns, tokensOf } from "./word-bag.ts";

/** What a reply answers of the questions that it was asked, and what it takes back of its orders. */
export interface Answers {
  /** Numbers of the questions that it answers with yes: it is meant so. */
  readonly yes: ReadonlySet<number>;
  /** Numbers that it answers with no: a corrected sheet comes. */
  readonly no: ReadonlySet<number>;
  /** The sheets that it withdraws. */
  readonly withdraws: ReadonlySet<FileId>;
  /** The lines that say so, and the lines beside them that say nothing. Trimmed. */
  readonly lines: ReadonlySet<string>;
}

/** What a reply is read against. */
export interface Asked {
  /** Numbers of the open questions that the answer it replies to has asked. */
  readonly open: readonly number[];
  /** How many other points of that answer the sender must do something about. */
  readonly others: number;
  /** The text of that answer, which may be quoted, and its subject. */
  readonly answer: string;
  readonly subject: string;
  /** Whether a line stood in earlier letters of the sender. */
  readonly isFurniture: (line: string) => boolean;
  /** What the sender is called. */
  readonly names: readonly string[];
  /** Sheets came with the reply, and some of its words are about them. */
  readonly bringsSheets: boolean;
  /** The sheets that words name, of those that the reply may withdraw. Undefined if they name none, or may name others. */
  readonly sheetsNamed: (words: string) => readonly FileId[] | undefined;
}

const noAnswers: Answers = { yes: new Set(), no: new Set(), withdraws: new Set(), lines: new Set() };

/** In characters. Our own answer about an order of 60 sheets is shorter. */
const longestText = 30_000;
/** Words that make a YES beside them less than a YES. */
const binds =
  /\b(?:if|when|once|unless|until|till|provided|assuming|as long as|subject to|depends?|depending|but|only|except|wait|hold|maybe|perhaps|probably|think|guess|hope|not sure|unsure|kidding|jok(?:e|es|ing)|sarcas\w*|scratch|wenn|falls|aber|nur|si|mais|sauf|pero|cuando)\b/i;

/** Courtesies beside sheets. Where none came they may take something back. */
const mends = /\b(?:corrected|wrong|to follow|revised|amended|changed|fixed|updated|as far as)\b/i;

/**
 * Reads lines such as "3 YES", "3, 4: yes", "4 no, new sheet attached" or "all yes". They may stand above, below or
 * between the lines that the reply quotes. It is no answer if a number is answered twice and differently, if the
 * words beside it may be a condition, or if the number was not asked. Lines such as "CANCEL S-104" take sheets back.
 * Beside them stands nothing but answers to numbers and what says nothing.
 */
function readAnswers(text: string, asked: Asked): Answers & { readonly unread: readonly string[] } {
  const plain = text.replace(/\p{Cf}/gu, "");
  const { quoted } = takeApart(plain, asked.subject);
  const yes = new Set<number>();
  const no = new Set<number>();
  const withdraws = new Set<FileId>();
  const lines = new Set<string>();
  const unread: string[] = [];
  const idle: string[] = [];
  let [signed, isBound] = [false, remarksIn(quoted, `${asked.subject}\n${asked.answer}`).length > 0];
  /** Something is answered or said that a person would hold against a withdrawal beside it. */
  let isUnclear = false;
  const all = joined([...ownLines(plain, asked.subject)]);
  const inAnswer = new Set(tokensOf(asked.answer));
  for (const [i, own] of all.entries()) {
    const { line } = own;
    // A line below the answers is a name, unless it is a word that was asked about.
    const isLast = i > 0 && all.slice(i + 1).every((next) => isIdle(next.line, true, asked));
    const isSigned =
      isLast &&
      isSomebody.test(line) &&
      !isShort.test(line) &&
      !speaksAgainst(line) &&
      !tokensOf(line).some((token) => inAnswer.has(token));
    const isBefore = yes.size + no.size === 0;
    const said = saidIn(own, asked, (sentence, isBehind) =>
      saysNothing(sentence, isBefore && !isBehind, asked),
    );
    const named = asked.sheetsNamed(cancelledIn(line) ?? "");
    if (named !== undefined) {
      for (const sheet of named) withdraws.add(sheet);
      lines.add(line);
    } else if (said?.every(({ number }) => asked.open.includes(number)) === true) {
      for (const { number, is } of said) (is ? yes : no).add(number);
      isUnclear ||= said.length > 0 && !/\d/.test(line);
      for (const one of line.split("\n")) lines.add(one);
    } else if (isSigned || isIdle(line, signed, asked)) {
      idle.push(line);
      isUnclear ||=
        asked.bringsSheets && !isSigned && !isIdle(line, signed, { ...asked, bringsSheets: false });
    } else {
      unread.push(line);
      isUnclear = true;
      if (sentencesOf(line).every((one) => saysNothing(one, isBefore, asked))) idle.push(line);
      else isBound ||= otherPoint(line) === undefined;
    }
    signed ||=
      line === "--" ||
      isSigned ||
      isGoodBye(line) ||
      isSignedOff(line) ||
      namesSender(line, asked.names) ||
      beginsNamed(line, asked.names);
  }
  const isNone = isBound || lines.size === 0 || !yes.isDisjointFrom(no) || (withdraws.size > 0 && isUnclear);
  return isNone
    ? { ...noAnswers, unread }
    : { yes, no, withdraws, lines: new Set([...lines, ...idle]), unread };
}

/** "Bill", "C. Vireton", "HB", "/LZ". */
const isSomebody =
  /^[-–—/~]?\s?(?:(?:\p{Lu}\p{Ll}+|\p{Lu}\.-?){1,2}(?: \p{Lu}[\p{L}'’.-]*){0,2}|\p{Lu}{1,3})[.,]?$/u;

/** Words in capitals that are no initials. */
const isShort = /^\W*(?:n|no|tbc|tbd|tba|nvm|jk|idk|ish|lol)\W*$/iu;

/**
 * Whether a line neither answers anything nor binds an answer beside it. `signed`: it stands below a name or a
 * good-bye.
 */
function isIdle(given: string, signed: boolean, { names, isFurniture, bringsSheets }: Asked): boolean {
  const line = given
    .replace(/[*_|]+/g, " ")
    // What stands for a picture, and where it leads.
    .replace(/\[cid:[^\]\s]{1,200}\](?:<[^<>\s]{1,300}>)?/gu, " ")
    .trim();
  if (signed && areTermsOnly(line)) return true;
  const isLegend = /\p{Lu}{3}/u.test(line) && !/\p{Ll}/u.test(line);
  if (isLegend) return false;
  if (isFurniture(line) || isGoodBye(line) || isNamed(line, names) || isSignedOff(line)) return true;
  if (beginsNamed(line, names) && !binds.test(line)) return true;
  if (binds.test(line) && !isBoilerplate(line)) return false;
  if (!bringsSheets && mends.test(line) && !isBoilerplate(line)) return false;
  if (bringsSheets || isBoilerplate(line) || (signed && isOfSignature(line))) return true;
  return !/[\p{L}\p{N}]/u.test(withoutCourtesies(line)) && !hasSigns(line);
}

/** "Ricky Olmedo | Lighting Controls". */
function beginsNamed(line: string, names: readonly string[]): boolean {
  const [first = "", ...others] = line.split(/\s?[|,]\s?/u);
  return others.length > 0 && namesSender(first, names) && others.every(isOfSignature);
}

/** Whether a line is the sender's name. */
function namesSender(line: string, names: readonly string[]): boolean {
  const known = new Set(names.flatMap(tokensOf));
  return isNamed(line, names) && tokensOf(line).some((token) => known.has(token));
}

/** "Regards, Ros". */
function isSignedOff(line: string): boolean {
  const [, bye = "", who = ""] = /^([^,]+), (.+)$/u.exec(line) ?? [];
  return isGoodBye(bye) && isSomebody.test(who);
}

function sentencesOf(line: string): string[] {
  return line.split(/(?<=[.!;])\s+/u);
}

/** Whether a line of a footer consists of terms, and of what else stands in footers. */
function areTermsOnly(line: string): boolean {
  const sentences = sentencesOf(line);
  return (
    sentences.some((one) => areTerms(withoutContacts(one))) &&
    sentences.every(
      (one) =>
        areTerms(withoutContacts(one)) || (!binds.test(one) && (isBoilerplate(one) || isOfSignature(one))),
    )
  );
}

/** Whether a sentence in a line that answers something says nothing itself. `isBefore`: nothing is answered before it. */
function saysNothing(sentence: string, isBefore: boolean, asked: Asked): boolean {
  return (
    isIdle(sentence, false, { ...asked, bringsSheets: false }) ||
    isThanks(sentence) ||
    (!isBefore && isReason(bared(sentence))) ||
    (isBefore && isOwnAffair(sentence))
  );
}

/** A line such as "3:" goes on in the next one: "YES". */
function joined(lines: readonly OwnLine[]): OwnLine[] {
  const all: OwnLine[] = [];
  for (const own of lines) {
    const before = all.at(-1);
    if (
      before !== undefined &&
      /^#?\d{1,4} ?[:.)=–-]$/u.test(before.line) &&
      own.under === undefined &&
      !own.afterSeveral
    )
      all[all.length - 1] = { ...before, line: `${before.line}\n${own.line}` };
    else all.push(own);
  }
  return all;
}

/** Whether a line consists of the sender's names and of words that people write around them. */
function isNamed(line: string, names: readonly string[]): boolean {
  const known = new Set([...polite, ...names.flatMap(tokensOf).filter((name) => !speaksAgainst(name))]);
  const tokens = tokensOf(line);
  return tokens.length > 0 && tokens.every((token) => known.has(token)) && !hasSigns(line);
}

const polite = tokensOf(
  `hi hello dear good morning afternoon evening day team everyone all there burin order orders desk thanks thank you so
  very much many in advance for your help best kind kindest warm regards greetings wishes sincerely yours truly
  faithfully cheers have a nice sent from my iphone ipad android phone mobile ta hallo guten tag morgen moin goedemorgen goedemiddag goedendag buonasera bom dia boa tarde pozdrawiam danke und gruß grüße
  viele bonjour merci cordialement hola gracias saludo saludos un buenos días servus lg mfg gents folks bien à vous hei hej med
  vennlig hilsen mvh hälsning vänlig vänliga hälsningar buongiorno cordiali distinti saluti grazie met vriendelijke groet`,
);

/**
 * What a reply answers, and what else it says that a person has to read. Other words may be a condition, so then it
 * answers nothing, unless they are only about another point. `besides` gives what is said beside some lines.
 */
export function answersBeside(
  text: string,
  asked: Asked,
  besides: (understood: ReadonlySet<string>) => readonly Statement[],
): { readonly answers: Answers; readonly statements: readonly Statement[] } {
  if (text.length > longestText) return { answers: noAnswers, statements: besides(new Set()) };
  const { unread, ...answers } = readAnswers(text, asked);
  // A letter that was asked nothing is read like any other.
  if (asked.open.length === 0 && answers.withdraws.size === 0)
    return { answers: noAnswers, statements: besides(new Set()) };
  const statements = besides(answers.lines);
  if (answers.lines.size > 0 && statements.every((one) => isOfOtherPoint(one, answers)))
    return { answers, statements };
  const all = besides(new Set());
  const [first] = unread;
  // A reply of words alone says something, even if it looks like a courtesy.
  const isUntold = all.length === 0 && first !== undefined && !asked.bringsSheets;
  return {
    answers: noAnswers,
    statements: isUntold ? [{ kind: "said", where: "text", words: first.slice(0, longestLine) }] : all,
  };
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

/** The number that a line begins with. */
function otherPoint(line: string): number | undefined {
  const [, number] = /^(?:[#q(]|no\. ?|question |point |item )?(\d{1,4})(?![\p{L}\p{N}])/iu.exec(line) ?? [];
  return number === undefined ? undefined : Number(number);
}

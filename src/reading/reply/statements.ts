import type { Count } from "../../trade/count.ts";
import type { Letter } from "../../trade/letter.ts";
import { memory } from "../../trade/memory.ts";
import type { Counts, ForPerson, Statement } from "../../trade/statement.ts";
import type { FileWords } from "../facts.ts";
import { isFulfilled, listedIn, speaksOtherwise, withoutShares } from "./against-sheets.ts";
import { onlyChats, withoutStory, withoutTimes } from "./chat.ts";
import { countsInTable } from "./count-table.ts";
import { countsIn, type Goods, isAround, leadsToCounts } from "./counts.ts";
import { withoutCourtesies } from "./courtesy.ts";
import { isCoverNote } from "./cover-notes.ts";
import { asksFor, hasLegend, speaksOfMaking, speaksOfTrade } from "./cues.ts";
import { describes } from "./describes.ts";
import { speaksAgainst } from "./doubt.ts";
import { isForeign } from "./foreign.ts";
import {
  isBoilerplate,
  isGoodBye,
  isOfSignature,
  isRemembered,
  type LineKey,
  withoutContacts,
} from "./furniture.ts";
import { leadAt, quotedSubject } from "./leads.ts";
import { namesOtherBuilding } from "./other-buildings.ts";
import { takeApart } from "./own-text.ts";
import { isPaper, wordsAgainst } from "./papers.ts";
import { withoutRepeats } from "./repeats.ts";
import { paragraphsOf } from "./sentences.ts";
import { subjectSays } from "./subjects.ts";
import { trailsOff } from "./tails.ts";
import { type LetterFacts, withoutFacts } from "./tallies.ts";
import { areTerms } from "./terms.ts";
import { undoes } from "./undoes.ts";
import { onlyAssents, pointsToSheets } from "./vouches.ts";
import { moreWords, tokensOf } from "./word-bag.ts";

/** What a letter is read against. */
export interface KnownWords {
  readonly facts: LetterFacts;
  /** Keys of lines that stood in earlier letters of its sender, or of the sender's domain. */
  readonly furniture: ReadonlySet<LineKey>;
  /** Letters that it may quote: the answer of ours that it replies to, and earlier letters of its thread. */
  readonly quoted: readonly Pick<Letter, "text" | "subject">[];
  /** Lines that are understood already, since they answer a question. */
  readonly understood: ReadonlySet<string>;
  /** What can be counted. */
  readonly goods: Goods;
}

/** A file of a letter that is a text. */
export interface AttachedText extends FileWords {
  readonly file: string;
  /** It is what stands on the pages of a PDF. */
  readonly pages?: true;
}

/** In characters. Nobody writes so much beside sheets, quotations included. */
const longestText = 100_000;
const longestSentence = 1000;
const longestQuote = 200;
/** So many statements are told. Whoever reads these reads the others too. */
const mostStatements = 8;
/** More counts than these are no totals. */
const mostCounts = 20;

/** What a letter says beside its sheets: in its subject, its text, and what it forwards. */
export function statementsIn(
  letter: Pick<Letter, "subject" | "text" | "otherTexts" | "textUnsure">,
  given: KnownWords,
): Statement[] {
  const saysSubject = subjectSays(letter.subject, given);
  const texts = [letter.text, ...(letter.otherTexts ?? [])];
  if (texts.reduce((sum, { length }) => sum + length, 0) > longestText) return [{ kind: "long" }];
  const said = texts.flatMap((text) => [...saidIn(text, given)]);
  const all = [...(saysSubject ? [{ where: "subject", words: letter.subject } as const] : []), ...said];
  const once = new Map(all.map((one) => [tokensOf(one.words).join(" "), one]));
  return [
    ...(letter.textUnsure === true ? [{ kind: "unsure" } as const] : []),
    ...told([...once.values()], ({ where, words }) => ({ kind: "said", where, words: cut(words) })),
  ];
}

/** What is said, as statements. A person who reads the first few reads the others too. */
function told<S extends Sentence>(
  said: readonly S[],
  forPerson: (one: S) => ForPerson,
  file?: string,
): Statement[] {
  const counting = said.filter(({ counts }) => counts !== undefined);
  const isCounted = counting.length <= mostCounts;
  const read = isCounted ? said.filter(({ counts }) => counts === undefined) : said;
  return [
    ...read.slice(0, mostStatements).map(forPerson),
    ...(isCounted ? counting : []).map(
      ({ words, counts = [] }): Counts => ({
        kind: "counts",
        counts,
        words: cut(words),
        ...(file === undefined ? {} : { file }),
      }),
    ),
  ];
}

/** What a person has to read of attached texts. Together they may be as long as a letter. */
export function statementsInFiles(texts: readonly AttachedText[], given: KnownWords): Statement[] {
  let room = longestText;
  return texts.flatMap((text) => {
    if (text.pages && isPaper(text.text)) return statementsInFile(text, given);
    room -= text.text.length;
    return room < 0 ? [{ kind: "long", file: text.file } as const] : statementsInFile(text, given);
  });
}

function statementsInFile({ file, text, unsure, pages }: AttachedText, given: KnownWords): Statement[] {
  if (pages && isPaper(text))
    return told(
      wordsAgainst(text, given.facts, given.goods),
      ({ words }) => ({ kind: "said", where: "file", file, words: cut(words) }),
      file,
    );
  const counts = countsInTable(text, namesIn(given), given.goods);
  const said: Sentence[] = counts === undefined ? [...saidIn(text, given)] : [{ words: text, counts }];
  return [
    ...(unsure === true ? [{ kind: "unsure", file } as const] : []),
    ...told(said, ({ words }) => ({ kind: "said", where: "file", file, words: cut(words) }), file),
  ];
}

/** What a count may name without being of a part: the order, its project and its people. */
function namesIn({ facts: { numbers, projects, names } }: KnownWords): string[] {
  return [...projects, ...numbers, ...names];
}

interface Sentence {
  readonly words: string;
  /** What it counts, if it does nothing else. */
  readonly counts?: readonly Count[];
}

interface Said extends Sentence {
  readonly where: "subject" | "text" | "quotation";
}

function* saidIn(text: string, known: KnownWords): Generator<Said> {
  // The signature is read as well. takeApart() would leave out one under "-- ".
  const plain = text.replace(/\p{Cf}/gu, "").replace(/^-- $/gm, "--");
  const { own, quoted, aside } = takeApart(plain, known.quoted[0]?.subject ?? "");
  for (const sentence of readSigned(own, known)) yield { where: "text", ...sentence };
  const strange = strangeLines(quoted, known);
  for (const lines of [aside, strange]) {
    for (const line of lines) {
      const subject = quotedSubject(line);
      if (subject !== undefined && subjectSays(subject, known)) yield { where: "quotation", words: line };
    }
    for (const { words } of readSigned(withoutHeaders(lines), known, false))
      yield { where: lines === aside ? "text" : "quotation", words };
  }
}

/**
 * The sentences that say something. The last lines may be a signature. `own`: they are the sender's own words. What he
 * quotes was counted when it was written.
 */
function readSigned(lines: readonly string[], known: KnownWords, own = true): Sentence[] {
  const end = lines.findIndex(
    (line, i) =>
      isGoodBye(line) ||
      line === "--" ||
      (i > 0 && (isSender(line, known) || (lines[i - 1] === "" && isName(line)))),
  );
  const said =
    end < 0
      ? read(lines, known, false)
      : [...read(lines.slice(0, end), known, false), ...read(lines.slice(end), known, true)];
  const counting: Sentence[] = own ? withCounts(said, known) : said.map((words) => ({ words }));
  const hasCounts = counting.some(({ counts }) => counts !== undefined);
  return counting.filter(
    ({ words, counts }) =>
      counts !== undefined || (isStatement(words, known.facts) && !(hasCounts && leadsToCounts(words))),
  );
}

function withCounts(said: readonly string[], known: KnownWords): Sentence[] {
  const names = namesIn(known);
  const sentences = said.map((words): Sentence => {
    const counts = countsIn(words, names, known.goods);
    return counts === undefined ? { words } : { words, counts };
  });
  // "Lobby - 12 devices" counts a part: what a dash joins belongs together.
  const runs: Sentence[][] = [];
  for (const [i, sentence] of sentences.entries()) {
    const run = runs.at(-1);
    if (run !== undefined && / [-–—|]+$/u.test(said[i - 1] ?? "")) run.push(sentence);
    else runs.push([sentence]);
  }
  return runs.flatMap((run) =>
    run.every(({ words, counts }) => counts !== undefined || isAround(words, names))
      ? run
      : run.map(({ words }) => ({ words })),
  );
}

/** "====================" around a signature. */
const isRule = /^[=~*#_-]{4,}$/u;

/** The sentences of some lines, without furniture. `signed`: they stand below a name or a good-bye. */
function read(lines: readonly string[], known: KnownWords, signed: boolean): string[] {
  const open = lines.filter(
    (line) =>
      !isRule.test(line) && !isRemembered(line, known.furniture, signed) && !known.understood.has(line),
  );
  const paragraphs = paragraphsOf(open);
  const last = paragraphs.at(-1);
  return paragraphs.flatMap((sentences) => {
    const isLegal = sentences.some(isBoilerplate);
    return sentences.filter((sentence, i) => {
      if (isGoodBye(sentence) || (isLegal && isHarmless(sentence))) return false;
      if (
        signed &&
        (isSender(sentence, known) || isOfSignature(sentence) || areTerms(withoutContacts(sentence)))
      )
        return false;
      const isLast = sentences === last && i === sentences.length - 1;
      return !(isLast && (i > 0 || paragraphs.length > 1) && isName(sentence));
    });
  });
}

/** Whether a sentence beside a disclaimer's belongs to it. */
function isHarmless(sentence: string): boolean {
  return !speaksOfTrade(sentence);
}

/** "The rest is at https://…": what belongs to the order lies behind a link. */
const elsewhere =
  /^(?=[^]*https?:\/\/)[^]*(?<!\p{L})(?:rest|others?|remaining|remainder|missing|sheets?|files?|drawings?|pdfs?|plans|pictures|photos|markups?|folder)(?!\p{L})/iu;

function isStatement(sentence: string, facts: LetterFacts): boolean {
  if (sentence.length > longestSentence) return !isBoilerplate(sentence.slice(0, longestSentence));
  if (elsewhere.test(sentence.replace(/https?:\S+/g, "https://")) && !isBoilerplate(sentence)) return true;
  const plain = sentence.normalize("NFKC").replace(/^(?:[-*•·–]|\(?\d{1,2}[.)])\s+/u, "");
  const whole = plain.replace(/\batt(?:(?:c|ch|ach)?['’]?d\b|\.(?=$| \p{Lu}))/giu, "attached");
  const typed = withoutContacts(whole);
  const listed = listedIn(typed, facts);
  if (listed !== undefined) return listed === "differs";
  if (speaksOtherwise(typed, facts)) return true;
  if (isFulfilled(typed, facts) || onlyAssents(typed) || pointsToSheets(typed, facts)) return false;
  if (describes(typed, facts)) return false;
  const words = withoutRepeats(withoutShares(typed, facts), facts);
  if (isBoilerplate(words) || isCoverNote(withoutFacts(words, withShortNames(facts)))) return false;
  if (undoes(words) || namesOtherBuilding(words, facts) || missesOne(words, facts)) return true;
  const rest = withoutStory(words, withoutCourtesies(withoutFacts(withoutTimes(words), facts)));
  if (namesFinish(rest, facts) || hasLegend(rest) || /\d/.test(rest)) return true;
  return (
    speaksOfMaking(rest) ||
    trailsOff(words, rest) ||
    isForeign(rest) ||
    !onlyChats(words, rest, typed !== whole)
  );
}

/** A count that came out wrong, since a right one is a sign by now: "both plates", of which one came. */
const countsOthers =
  /(?<!\p{L})both (?:of )?(?:the )?(?:(?:plate|device|order|station|corrected|revised|new|attached) )*(?:plates|devices|keypads|stations|sheets|files|forms|pdfs)(?!\p{L})/iu;

/** "Both attached", where one came. */
function missesOne(words: string, facts: LetterFacts): boolean {
  if (countsOthers.test(withoutFacts(words, facts))) return true;
  const { attached, plates, devices, sheets } = facts;
  return (
    /(?<!\p{L})both(?: are| of them(?: are)?)? (?:attached|enclosed)(?!\p{L})/iu.test(words) &&
    ![...attached, ...plates, ...devices, sheets.length].includes(2)
  );
}

/** The facts, and projects as people call them: "Heron Court" is Heron Court Offices. */
const withShortNames = memory((facts: LetterFacts): LetterFacts => {
  const short = facts.projects.map((project) => project.split(/\s+/)).filter((words) => words.length > 2);
  return { ...facts, projects: [...facts.projects, ...short.map((words) => words.slice(0, 2).join(" "))] };
});

/** Whether words name a finish that not all sheets have. */
function namesFinish(rest: string, { otherFinishes }: LetterFacts): boolean {
  const tokens = new Set(tokensOf(rest));
  return otherFinishes.some((name) => tokensOf(name).every((token) => tokens.has(token)));
}

/** A name, or the initials of one, as it stands below a letter. */
function isName(words: string): boolean {
  return (
    /^[-–—~]?\s*\p{Lu}[\p{L}.'’-]*(?:(?:[ &,/]{1,2}| and )\p{Lu}[\p{L}.'’-]*){0,3}(?: \(\p{Ll}{3,12}\)|,(?: \p{Ll}{3,14}){1,3})?$/u.test(
      words,
    ) && !asksFor(words)
  );
}

function isSender(line: string, { facts }: KnownWords): boolean {
  const tokens = tokensOf(line);
  const names = new Set(facts.names.flatMap(tokensOf));
  return (
    tokens.length > 0 && tokens.length < 5 && tokens.every((token) => names.has(token)) && !asksFor(line)
  );
}

/** The lines of a quotation that stand in no letter that may be quoted. */
function strangeLines(lines: readonly string[], { quoted }: KnownWords): string[] {
  const own = lines.map((line) => line.replace(/^[>\s]+/, ""));
  if (quoted.length === 0) return own;
  const text = quoted.map((one) => `${one.subject}\n${one.text}`).join("\n");
  const more = new Set(moreWords(own.join("\n"), text));
  const running = ` ${tokensOf(text).join(" ")} `;
  return own.filter((line) => {
    const tokens = tokensOf(line);
    return (
      !running.includes(` ${tokens.join(" ")} `) &&
      (tokens.some((token) => more.has(token)) || speaksAgainst(line))
    );
  });
}

/** Lines without the headers that mail programs put above a forwarded or quoted letter. */
function withoutHeaders(lines: readonly string[]): string[] {
  const left: string[] = [];
  for (let at = 0; at < lines.length; ) {
    const lead = leadAt(lines, at, "");
    if (lead === undefined || lead.lines === 0) left.push(lines[at] ?? "");
    at += Math.max(1, lead?.lines ?? 0);
  }
  return left.filter(
    (line) =>
      !/^\*?(?:from|sent|date|to|cc|bcc|subject|von|gesendet|datum|an|betreff|de|envoyé|à|objet|enviado|fecha|para|asunto|importance|attachments)\s?:/iu.test(
        line,
      ),
  );
}

function cut(words: string): string {
  const line = words.replace(/\s+/g, " ").trim();
  return line.length > longestQuote ? `${line.slice(0, longestQuote - 1).trimEnd()}…` : line;
}

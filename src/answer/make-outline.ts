import type { Catalogue } from "../catalogue/catalogue.ts";
import type { OrderReport, Report, Withdrawn } from "../judging/report.ts";
import { sheetsOf } from "../judging/sheets-of.ts";
import type { FileKind } from "../trade/attachment.ts";
import type { Verdict } from "../trade/problem.ts";
import { answerLetter } from "./answer-letter.ts";
import { changedLines } from "./changed.ts";
import { movedWords } from "./moved.ts";
import { type Files, namedFiles, nameOf, whatIs } from "./named-files.ts";
import { nextSteps } from "./next-steps.ts";
import { numberedTopics } from "./numbered.ts";
import { counted, listed, oneLine } from "./one-line.ts";
import type { Chapter, Item, Outline, ProofsOfOrder, Section, Ways, Withdrawal } from "./outline.ts";
import { cameWith, cautions, headlineOf, howToOrder, signatureOf, wordOf, words } from "./phrases.ts";
import { proofsOf } from "./proofs.ts";
import { nothingOf, yesOf } from "./reply-line.ts";
import type { Numbered } from "./sections.ts";
import { rowsOf } from "./sheet-rows.ts";
import { leftWords, shownOf } from "./shown-stations.ts";
import { subjectOf } from "./subject.ts";
import { type Tally, tallyWords } from "./tally.ts";

/** Files of a held letter that are named. */
const mostNames = 12;

/**
 * All that there is to answer to a submission, in reading order. A report becomes an outline in these steps:
 *
 * 1. `topicsOf` sorts the problems into topics: one for each order, and one for what is about no order (topics.ts).
 * 2. `foldSame` folds problems that read the same into one *told* problem (told.ts).
 * 3. `numberedTopics` gives each told problem its number, which a question keeps for good (numbered.ts).
 * 4. `sectionsOf` makes an *item* of each. A *section* holds the items that ask the same of the reader: to fix, to
 *    confirm and so on. In it a *group* holds the items of one file, or of the order (sections.ts).
 * 5. `outlineOf` makes a *chapter* of each topic: its sections and the table of its sheets. What happens next and the proofs of
 *    all topics stand behind the chapters (outline.ts).
 * 6. `answerText` and `answerHtml` print the outline, and so cannot differ in what they say.
 *
 * Marked copies and the record take their numbers from step 3 as well.
 */
export function outlineOf(report: Report, catalogue: Catalogue, ways?: Ways): Outline {
  if (report.held) return heldOutline(report, catalogue);
  const files = namedFiles(report);
  const topics = numberedTopics(report, files);
  const numbers = topics.flatMap((topic) => topic.numbers);
  const found = topics.map((topic) => {
    const { order, verdict } = topic;
    // If a letter has several orders, what stands around them needs a verdict only if it is more than notes.
    const told = topics.length > 1 && (order !== undefined || verdict !== "pass");
    const outcome = told
      ? [words[verdict], tallyWords(verdict, tallyOf(topic.numbers, order === undefined ? [] : [order]))]
      : [];
    return { ...topic, outcome };
  });
  // A problem can point at a sheet of another order, so the tables wait until every number is given.
  const chapters = found.map(
    ({ title, verdict, order, sections, outcome }): Chapter => ({
      verdict,
      ...(report.orders.length === 0 ? {} : { title }),
      ...(outcome.length === 0 ? {} : { status: `${outcome.join(": ")}.` }),
      sections: sections.map((section) => withReference(section, ways?.reference, catalogue)),
      ...(order === undefined
        ? { rows: [] }
        : {
            received: receivedWords(order, report, files),
            ...(order.changed === undefined ? {} : { changed: changedLines(order.changed) }),
            ...rowsOf(order, numbers, files),
          }),
    }),
  );

  const proofs = topics.flatMap(({ title, verdict, order }): ProofsOfOrder[] => {
    if (order === undefined || verdict !== "pass") return [];
    const { order: shown, left } = shownOf(order, report);
    const sheets = proofsOf(shown, catalogue, files);
    const rest = left === 0 ? {} : { rest: leftWords(left) };
    return sheets.length === 0 ? [] : [{ ...(topics.length > 1 ? { title } : {}), sheets, ...rest }];
  });
  const tally = tallyOf(numbers, report.orders);
  const kept = chapters.some(keepsSheets);
  const [todo, ...next] = nextSteps(report, tally, { kept, ways }, catalogue);
  return {
    verdict: report.verdict,
    word: wordOf(report),
    headline: headlineOf(report, tally),
    subject: subjectOf(report, tally),
    ...(todo === undefined ? {} : { todo }),
    lead: found.flatMap(({ name, outcome }) =>
      outcome.length === 0 ? [] : [`${name}: ${outcome.join(", ")}`],
    ),
    withdrawn:
      report.moved === undefined
        ? report.withdrawn.map((one) => withdrawalOf(one, report.orders.length === 0))
        : [movedWords(report.moved, report.withdrawn)],
    chapters,
    howToOrder: knowsNoSheet(report) ? howToOrder(catalogue) : [],
    ...(ways?.link === undefined ? {} : { link: ways.link }),
    next,
    proofs,
    cautions,
    signature: signatureOf(catalogue),
  };
}

/**
 * The answer to a letter that a person must see first. It says only that. Its sender learns nothing else, and is
 * asked nothing.
 */
function heldOutline({ files }: Report, catalogue: Catalogue): Outline {
  const { maker } = catalogue;
  const names = files
    .filter(({ file }) => file.kind !== "decoration")
    .map(({ file }) => oneLine(file.file, 90));
  return {
    verdict: "person",
    word: words.person,
    headline: "thank you for your letter.",
    subject: `${words.person}: thank you for your letter`,
    todo: `A person at ${maker.name} reads your letter and writes to you.`,
    lead: names.length === 0 ? [] : [`With it came ${listed(names, mostNames)}.`],
    withdrawn: [],
    chapters: [],
    howToOrder: [],
    next: ["Nothing is cut before that.", `If it is urgent, call ${maker.phone}.`],
    proofs: [],
    cautions,
    signature: signatureOf(catalogue),
  };
}

/** Whether the sender seems not to know our sheets. */
export function knowsNoSheet(report: Report): boolean {
  if (report.sheets.length > 0 || report.withdrawn.length > 0) return false;
  const unlike: readonly FileKind[] = ["unknown-form", "picture", "small-picture", "list"];
  return cameWith(report) === "nothing" || report.files.some(({ file }) => unlike.includes(file.kind));
}

/** What can be answered bears the reference of its answer. Each YES or NOTHING that can settle it begins a letter under it. */
function withReference(section: Section, reference: string | undefined, { maker }: Catalogue): Section {
  const isAnswered = section.groups.some(({ items }) => items.some(({ reply }) => reply !== undefined));
  if (!isAnswered || reference === undefined) return section;
  const item = (one: Item): Item => {
    const words = [yesOf(one.number), nothingOf(one.number)].find((said) => one.reply?.includes(`“${said}”`));
    return words === undefined ? one : { ...one, letter: answerLetter(words, maker.email, reference) };
  };
  return {
    ...section,
    title: `${section.title} (reference ${reference})`,
    groups: section.groups.map((group) => ({ ...group, items: group.items.map(item) })),
  };
}

/** What is withdrawn from an order, sheet by sheet. `alone`: the answer is about nothing else. */
function withdrawalOf({ order, sheets, leaves }: Withdrawn, alone: boolean): Withdrawal {
  const [are, them] = sheets.length === 1 ? ["is", "the sheet"] : ["are", "the sheets"];
  const all = leaves === "nothing" && !alone ? "; nothing is left of it" : "";
  return {
    says: `As you ask, ${counted(sheets.length, "sheet")} of order ${oneLine(order, 40)} ${are} withdrawn and not made${all}:`,
    sheets: sheets.map((sheet) => `${whatIs(sheet)} (${oneLine(sheet.file, 90)})`),
    undo: `To undo it, send ${them} again.`,
  };
}

function keepsSheets({ rows, alsoRight }: Chapter): boolean {
  return alsoRight !== undefined || rows.some(({ kind }) => kind !== "fail" && kind !== "waiting");
}

function tallyOf(numbers: readonly Numbered[], orders: readonly OrderReport[]): Tally {
  const of = (kind: Verdict): number => numbers.filter((one) => one.kind === kind).length;
  return {
    fail: of("fail"),
    confirm: of("confirm"),
    person: of("person"),
    pass: of("pass"),
    waiting: orders.reduce((sum, { missing }) => sum + missing.length, 0),
  };
}

/** "2 sheets came with this letter, 3 came earlier, 1 missing." */
function receivedWords({ order, missing }: OrderReport, { late, untouched }: Report, files: Files): string {
  const sheets = [
    ...sheetsOf(order),
    ...late.filter(({ now }) => sheetsOf(order).includes(now)).map(({ old }) => old),
    ...untouched.filter(({ beside }) => sheetsOf(order).includes(beside)).map(({ blank }) => blank),
  ];
  const earlier = sheets.filter(({ id }) => nameOf(files, id).earlier).length;
  const came = sheets.length - earlier;
  const words = [
    ...(came === 0 && earlier > 0
      ? [`${counted(earlier, "sheet")} came earlier`]
      : [
          `${counted(came, "sheet")} came with this letter`,
          ...(earlier > 0 ? [`${earlier} came earlier`] : []),
        ]),
    ...(missing.length > 0 ? [`${missing.length} missing`] : []),
  ];
  return `${words.join(", ")}.`;
}

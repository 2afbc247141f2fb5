import { plainWord } from "../lettering/slips.ts";
import { isUntold } from "../trade/carried.ts";
import type { KeptWord } from "../trade/kept-word.ts";
import type { Order } from "../trade/order.ts";
import type { Problem } from "../trade/problem.ts";
import type { Sheet } from "../trade/sheet.ts";
import { isStillElsewhere } from "./called-elsewhere.ts";
import { letterSaysMore } from "./letter/letter-says-more.ts";
import { fileNameContradicts } from "./order/file-name-contradicts.ts";
import { letterStillOpen } from "./order/letter-still-open.ts";
import { everyCheck } from "./run.ts";
import { abbreviationUnknown } from "./sheet/abbreviation-unknown.ts";
import { rowMaybeCutOff } from "./sheet/row-maybe-cut-off.ts";
import { spelling } from "./sheet/spelling.ts";
import { wordSlip } from "./sheet/word-slip.ts";

/** The checks that ask about one word of a legend, or note it; each has the word, or the row that it ends, as its fact `typed`. */
const wordChecks = new Set([rowMaybeCutOff, spelling, wordSlip, abbreviationUnknown].map(({ id }) => id));

/** Whether a problem is about a word that its buyer can keep as it stands. */
export function isAboutWord({ check }: Pick<Problem, "check">): boolean {
  return wordChecks.has(check);
}

const settledBySender = new Set(everyCheck.filter((check) => check.sender === "settles").map(({ id }) => id));

/** Whether the sender alone may settle a question, by saying that it is meant so. */
export function maySettle({ check, verdict }: Pick<Problem, "check" | "verdict">): boolean {
  return verdict === "confirm" && settledBySender.has(check);
}

const waivable = new Set(everyCheck.filter((check) => check.waivable).map(({ id }) => id));

/** Whether one of our own people may let a problem stand that stops its order. */
export function mayWaive({ check }: Pick<Problem, "check">): boolean {
  return waivable.has(check);
}

const stayingOpen = new Set(
  everyCheck.flatMap(({ id, wordings }) =>
    Object.entries(wordings).flatMap(([name, { stays }]) => (stays === true ? [`${id} ${name}`] : [])),
  ),
);

/** Whether a question stays where nothing that stands shows what it is about. */
export function staysOpen({ check, wording }: Pick<Problem, "check" | "wording">): boolean {
  return stayingOpen.has(`${check} ${wording}`);
}

const saying = new Set([letterSaysMore, letterStillOpen].map(({ id }) => id));

/** Whether a problem is words of a letter that wait for a person. */
export function areWords({ check, facts: { words } }: Pick<Problem, "check" | "facts">): boolean {
  return saying.has(check) && words !== undefined && !isUntold(String(words));
}

/**
 * Whether a buyer may say that such words ask for nothing. Then nobody has to read them. What a manager writes is not
 * the buyer's to take back.
 */
export function areBuyersWords(problem: Pick<Problem, "check" | "facts">): boolean {
  return areWords(problem) && problem.facts["by"] === undefined;
}

/** Whether a question that stays still has something to ask, in its order as it stands now. */
export function stillStays(problem: Problem, order: Order): boolean {
  const isOfCopies = problem.check === fileNameContradicts.id && problem.wording === "same";
  return !isOfCopies || isStillElsewhere(problem, order);
}

const seenOnPage = new Set(everyCheck.filter((check) => check.seen).map(({ id }) => id));

/** Whether what one of our own people decides of a problem holds for that very sheet alone, and not for its next. */
export function holdsForSheetAlone({ check, verdict }: Pick<Problem, "check" | "verdict">): boolean {
  return verdict === "person" || seenOnPage.has(check);
}

/** A word that was asked about, and the number of the order that it stands in. */
export interface AskedWord extends KeptWord {
  readonly order: string;
}

/** The words that some problems ask about on sheets; on one without a project or a number nothing can be kept. */
export function askedWords(problems: readonly Problem[], sheets: readonly Sheet[]): AskedWord[] {
  return problems.filter(isAboutWord).flatMap(({ facts, spots }) => {
    const { project, order } = sheets.find(({ id }) => id === spots[0]?.file) ?? {};
    if (project === undefined || order === undefined || facts["typed"] === undefined) return [];
    return [{ word: plainWord(String(facts["typed"])), project, order }];
  });
}

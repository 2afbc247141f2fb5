import type { Catalogue } from "../catalogue/catalogue.ts";
import type { ReadFile } from "../trade/attachment.ts";
import type { Fact, Problem, Severity } from "../trade/problem.ts";
import type { Sheet } from "../trade/sheet.ts";
import { fileChecks, letterChecks, orderChecks, sheetChecks } from "./catalogue.ts";
import type { Check, LetterSubject, OrderSubject, Wording } from "./check.ts";

/** Everything wrong with one attachment as a file. */
export function checkFile(file: ReadFile, catalogue: Catalogue): Problem[] {
  return fileChecks.flatMap((check) => [...check.find(file, catalogue)]);
}

/** Everything wrong with one sheet, looked at alone. */
export function checkSheet(sheet: Sheet, catalogue: Catalogue): Problem[] {
  return sheetChecks.flatMap((check) => [...check.find(sheet, catalogue)]);
}

/** Everything wrong between the sheets of one order. */
export function checkOrder(subject: OrderSubject, catalogue: Catalogue): Problem[] {
  return orderChecks.flatMap((check) => [...check.find(subject, catalogue)]);
}

const mayStop = orderChecks.filter(({ severity, wordings }) =>
  [severity, ...Object.values<Wording>(wordings).map((wording) => wording.severity)].includes("stops"),
);

/** What the checks find that may stop an order. The others are not asked, since their answers are not wanted. */
export function checkWhatStops(subject: OrderSubject, catalogue: Catalogue): Problem[] {
  return mayStop.flatMap((check) => [...check.find(subject, catalogue)]);
}

/** Everything wrong with a letter as a whole. */
export function checkLetter(subject: LetterSubject, catalogue: Catalogue): Problem[] {
  return letterChecks.flatMap((check) => [...check.find(subject, catalogue)]);
}

/** What there is to say of any check, whatever it looks at. */
export type AnyCheck = Omit<Check<unknown>, "find" | "passing" | "failing">;

export const everyCheck: readonly AnyCheck[] = [
  ...fileChecks,
  ...sheetChecks,
  ...orderChecks,
  ...letterChecks,
];

const byId = new Map(everyCheck.map((check) => [check.id, check]));

/** A problem in words, for our own people. Throws for a check or wording that this program does not know. */
export function wordsOf(problem: Problem): { says: string; fix: string } {
  const { says, fix } = wordingOf(problem);
  return { says: fill(says, problem.facts), fix: fill(fix, problem.facts) };
}

/** The same in the words that others may read. */
export function wordsOutside(problem: Problem): { says: string; fix: string } {
  const { says, outside = says, fix } = wordingOf(problem);
  return { says: fill(outside, problem.facts), fix: fill(fix, problem.facts) };
}

function wordingOf({ check, wording: name }: Problem): Wording {
  const wording: Wording | undefined = byId.get(check)?.wordings[name];
  if (wording === undefined) throw new Error(`no wording ${check}/${name}`);
  return wording;
}

function fill(text: string, facts: Problem["facts"]): string {
  return text.replace(
    /\{([^}:|]+)(?::([^}]+)|\|(or|each))?\}/g,
    (_, name: string, noun?: string, how?: How) => {
      const fact = facts[name];
      if (fact === undefined) throw new Error(`no fact for the hole {${name}}`);
      return noun === undefined ? listed(fact, how ?? "and") : counted(Number(fact), noun);
    },
  );
}

function counted(n: number, noun: string): string {
  const [one = "", many = `${one}s`] = noun.split("/");
  return `${n} ${n === 1 ? one : many}`;
}

/** How a list is told: joined by a word, or a sentence each. */
type How = "and" | "or" | "each";

function listed(fact: Fact, word: How): string {
  if (typeof fact !== "object") return String(fact);
  if (word === "each") return fact.join(". ");
  if (fact.length < 2) return fact.join("");
  const inARow = fact.every((item, i) => item === String(Number(fact[0]) + i));
  return fact.length > 2 && inARow
    ? `${fact[0]} to ${fact.at(-1)}`
    : `${fact.slice(0, -1).join(", ")} ${word} ${fact.at(-1)}`;
}

/** What a weight means, behind “it”. */
export const severityWords = {
  stops: "stops the order until it is fixed",
  asks: "asks somebody to confirm",
  notes: "is worth knowing, and stops nothing",
} as const satisfies Record<Severity, string>;

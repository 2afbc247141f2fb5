import { holdsForSheetAlone } from "../checks/asked.ts";
import { contentKey, plainText } from "../orders/keys.ts";
import { wallPlaceOf } from "../orders/wall-place.ts";
import type { Fact, Problem } from "../trade/problem.ts";
import type { Question } from "../trade/question.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";

type Unnumbered = Omit<Question, "number">;

/** What some problems of one order leave to be confirmed or mended; each once. */
export function questionsOf(problems: readonly Problem[], sheets: ReadonlyMap<FileId, Sheet>): Unnumbered[] {
  const questions = problems
    .filter(({ severity, verdict }) => severity !== "notes" && verdict !== "pass")
    .map((problem) => questionOf(problem, sheets));
  return [...new Map(questions.map((question) => [question.key, question])).values()];
}

export function questionOf(problem: Problem, sheets: ReadonlyMap<FileId, Sheet>): Unnumbered {
  const { check, wording, spots } = problem;
  const about = spots.flatMap(({ file }) => sheets.get(file) ?? []);
  const stations = new Map(
    about.flatMap(({ mark }) => (mark === undefined ? [] : [[plainText(mark), mark]])),
  );
  const positions = new Set(about.map((sheet) => (sheet.kind === "device" ? sheet.position : undefined)));
  const [station] = stations.values();
  const [position] = positions;
  return {
    key: contentKey({
      check,
      wording,
      places: [...placesOf(problem, sheets)].toSorted(),
      facts: lasting(problem, about),
    }),
    problem,
    ...(stations.size === 1 && station !== undefined ? { station } : {}),
    ...(stations.size === 1 && positions.size === 1 && position !== undefined ? { position } : {}),
  };
}

/** The places that a problem is about: where a sheet belongs, or its file. */
function placesOf(problem: Problem, sheets: ReadonlyMap<FileId, Sheet>): ReadonlySet<string> {
  const places = problem.spots.map(({ file, place = "" }) => {
    const sheet = sheets.get(file);
    return [(sheet === undefined ? undefined : nameOf(problem, sheet)) ?? file, place].join(" ");
  });
  return new Set(places);
}

/** Whether a problem asks what is left of another: the same, of some of its places. The others are gone. */
export function isRestOf(rest: Problem, of: Problem, sheets: ReadonlyMap<FileId, Sheet>): boolean {
  const [left, all] = [rest.spots.length, of.spots.length];
  if (rest.check !== of.check || rest.wording !== of.wording || left === 0 || left >= all) return false;
  const isIn = (fact: Fact, before: Fact | undefined): boolean =>
    typeof fact === "object"
      ? typeof before === "object" && fact.every((one) => before.includes(one))
      : fact === before;
  return (
    Object.entries(rest.facts).every(([name, fact]) => isIn(fact, of.facts[name])) &&
    placesOf(rest, sheets).isSubsetOf(placesOf(of, sheets))
  );
}

/**
 * The facts of a problem without file names, so that they stay the same when a sheet comes again under another name.
 */
function lasting({ facts }: Problem, about: readonly Sheet[]): Problem["facts"] {
  const names = new Set(about.flatMap(({ file, named, list }) => [file, named, list?.file]));
  const isName = (fact: Fact): boolean =>
    Array.isArray(fact) ? fact.every((one) => names.has(one)) : names.has(String(fact));
  return Object.fromEntries(Object.entries(facts).filter(([, fact]) => !isName(fact)));
}

/** What stands for a sheet in the key of a question; undefined for the sheet alone. */
function nameOf(problem: Problem, sheet: Sheet): string | undefined {
  // Whoever has looked at one page has not seen the next.
  return holdsForSheetAlone(problem) ? undefined : wallPlaceOf(sheet);
}

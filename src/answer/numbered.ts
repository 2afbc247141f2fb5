import { areWords } from "../checks/asked.ts";
import { sheetFromList } from "../checks/sheet/sheet-from-list.ts";
import type { MarkedProblem } from "../drawing/marked/problem.ts";
import type { Report } from "../judging/report.ts";
import type { Problem } from "../trade/problem.ts";
import type { FileId } from "../trade/sheet.ts";
import type { Files } from "./named-files.ts";
import { namedFiles } from "./named-files.ts";
import type { ItemPicture, Section } from "./outline.ts";
import { type Numbered, picturesOf, sectionsOf } from "./sections.ts";
import type { Told } from "./told.ts";
import { type Topic, topicsOf } from "./topics.ts";

/** A topic with its problems numbered. */
export interface NumberedTopic extends Topic {
  readonly sections: readonly Section[];
  readonly numbers: readonly Numbered[];
}

/**
 * What an answer is about, numbered through all of it. A question keeps the number that it was first given. New
 * numbers go on after the last that its orders ever had.
 */
export function numberedTopics(report: Report, files: Files): NumberedTopic[] {
  let last = Math.max(0, ...report.orders.map(({ lastNumber }) => lastNumber));
  // Who writes the same once more finds it under the number that it has.
  const ofWords = new Map(
    report.orders
      .flatMap(({ asked }) => asked.filter(({ problem }) => areWords(problem)))
      .map(({ problem, number }) => [saidIn(problem), number] as const),
  );
  const keepsWords =
    !report.held && report.orders.length > 0 && report.orders.every(({ released }) => released === undefined);
  return topicsOf(report).map((topic) => {
    const asked = topic.order?.asked ?? [];
    const keys = new Map(asked.map(({ problem, key }) => [problem, key]));
    const given = new Map(
      asked.flatMap(({ key, number }) => (number === undefined ? [] : [[key, number] as const])),
    );
    const numberOf = ({ problems }: Told): number => {
      const those = problems.flatMap((problem) => keys.get(problem) ?? []);
      const before = problems.flatMap((one) => (areWords(one) ? (ofWords.get(saidIn(one)) ?? []) : []));
      const [number = (last += 1)] = [...those.flatMap((key) => given.get(key) ?? []), ...before];
      for (const key of those) given.set(key, number);
      return number;
    };
    return { ...topic, ...sectionsOf(topic.filed, files, { numberOf, keepsWords }) };
  });
}

/** What somebody says, as one text. */
function saidIn({ facts: { by = "", words } }: Problem): string {
  return `${String(by)}: ${String(words)}`;
}

/** The number under which an answer tells of each problem. */
export function numbersIn(report: Report): ReadonlyMap<Problem, number> {
  const all = numberedTopics(report, namedFiles(report)).flatMap(({ numbers }) => numbers);
  return new Map(all.flatMap(({ number, told }) => told.problems.map((problem) => [problem, number])));
}

/** The pictures that an answer can show, each once, in the order of their numbers. */
export function picturesIn(report: Report): ItemPicture[] {
  const all = numberedTopics(report, namedFiles(report)).flatMap(({ numbers }) => numbers);
  return all.flatMap(({ number, told }) => picturesOf(told, number));
}

/** The problems that the marked copy of each sheet shows, with the numbers of the answer. Notes are left out. */
export function marksOf(report: Report): Map<FileId, MarkedProblem[]> {
  const marks = new Map<FileId, MarkedProblem[]>();
  const came = new Set(report.sheets.map(({ sheet }) => sheet.id));
  for (const { number, told } of numberedTopics(report, namedFiles(report)).flatMap(
    ({ numbers }) => numbers,
  )) {
    const { kind, says, fix } = told;
    if (kind === "pass" || kind === "waiting") continue;
    // The sheet itself goes with the answer.
    if (told.problems.every(({ check }) => check === sheetFromList.id)) continue;
    const spots = told.problems.flatMap((problem) => problem.spots).filter(({ file }) => came.has(file));
    for (const [file, those] of Map.groupBy(spots, (spot) => spot.file)) {
      const places = [...new Set(those.flatMap(({ place }) => place ?? []))];
      // What was seen in a field is outlined as that field.
      const seen = those.flatMap(({ place, seen }) => (place === undefined && seen?.box ? [seen] : []));
      marks.set(file, [
        ...(marks.get(file) ?? []),
        { number, says, fix, kind, places, ...(seen.length === 0 ? {} : { seen }) },
      ]);
    }
  }
  return marks;
}

import type { MarkedProblem } from "../drawing/marked/problem.ts";
import type { Report } from "../judging/report.ts";
import type { FileId } from "../trade/sheet.ts";
import type { Files } from "./named-files.ts";
import { namedFiles } from "./named-files.ts";
import type { ItemPicture, Section } from "./outline.ts";
import { type Numbered, picturesOf, sectionsOf } from "./sections.ts";
import { type Topic, topicsOf } from "./topics.ts";

/** A topic with its problems numbered. */
export interface NumberedTopic extends Topic {
  readonly sections: readonly Section[];
  readonly numbers: readonly Numbered[];
}

/** What an answer is about, numbered through all of it. */
export function numberedTopics(report: Report, files: Files): NumberedTopic[] {
  let last = 0;
  return topicsOf(report).map((topic) => {
    const { sections, numbers } = sectionsOf(topic.filed, files, last);
    last += numbers.length;
    return { ...topic, sections, numbers };
  });
}

/** The pictures that an answer can show, each once, in the order of their numbers. */
export function picturesIn(report: Report): ItemPicture[] {
  const all = numberedTopics(report, namedFiles(report)).flatMap(({ numbers }) => numbers);
  return all.flatMap(({ number, told }) => picturesOf(told, number));
}

/** What the marked copy of each sheet of this letter shows, under the numbers of the answer; notes are left out. */
export function marksOf(report: Report): Map<FileId, MarkedProblem[]> {
  const marks = new Map<FileId, MarkedProblem[]>();
  const came = new Set(report.sheets.map(({ sheet }) => sheet.id));
  for (const { number, told } of numberedTopics(report, namedFiles(report)).flatMap(
    ({ numbers }) => numbers,
  )) {
    const { kind, says, fix } = told;
    if (kind === "pass" || kind === "waiting") continue;
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

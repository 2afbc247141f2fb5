import { faceWords } from "../checks/limits.ts";
import type { FaceName } from "../trade/legend.ts";
import type { Place } from "../trade/place.ts";
import type { Sheet } from "../trade/sheet.ts";
import { type Files, nameOf } from "./named-files.ts";
import { listed, oneLine } from "./one-line.ts";
import type { Told } from "./told.ts";

/** So many files are named in one line. The others carry the item's number in the table of sheets. */
export const mostNames = 12;

/** A problem with more fields than these is about a part of the sheet, which its words name. */
const mostFields = 3;

/** Where to look: files that neither the words nor the heading name, and fields that the words do not name. */
export function whereOf(told: Told, files: Files): string | undefined {
  const { kind, says, fix, under } = told;
  if (kind === "waiting" || (kind === "pass" && under !== undefined)) return undefined;
  const words = `${says} ${fix}`.toLowerCase();
  const where = [
    ...(under === undefined ? [] : fileWords(told, words, files)),
    ...fieldWords(told, words, files),
    ...cellWords(told, files),
  ];
  return where.length === 0 ? undefined : where.join(". ");
}

function fileWords(told: Told, words: string, files: Files): string[] {
  const names = told.files.map((id) => nameOf(files, id));
  if (names.every(({ name, earlier }) => words.includes(name.toLowerCase()) && !earlier)) return [];
  const list = names.map(({ name, earlier }) => (earlier ? `${name} (earlier letter)` : name));
  return [`On: ${listed(list, mostNames)}`];
}

/** The fields in words: all of them or none, since half of them would mislead. */
function fieldWords({ problems }: Told, words: string, files: Files): string[] {
  const fields = problems
    .flatMap(({ spots }) => spots)
    .flatMap(({ file, place }) => {
      const { sheet } = nameOf(files, file);
      const label = place === undefined ? undefined : sheet?.prints[place]?.label;
      if (sheet === undefined || place === undefined || label === undefined) return [];
      return [{ label: oneLine(label, 60), said: words.includes(saidAs(sheet, place, label)) }];
    });
  const labels = [...new Set(fields.map(({ label }) => label))];
  if (labels.length > mostFields || fields.every(({ said }) => said)) return [];
  return [`${labels.length === 1 ? "Field" : "Fields"}: ${listed(labels, mostFields)}`];
}

/** The cells of the lists from which the fields were filled in; the row where a list has no column for one. */
function cellWords({ problems }: Told, files: Files): string[] {
  const cells = problems
    .flatMap(({ spots }) => spots)
    .flatMap(({ file, place }) => {
      const { list } = nameOf(files, file).sheet ?? {};
      return list === undefined || place === undefined
        ? []
        : [{ list: list.file, cell: list.cells[place] ?? `row ${list.row}` }];
    });
  return [...Map.groupBy(cells, ({ list }) => list)].map(
    ([list, found]) =>
      `In ${oneLine(list, 60)}: ${listed([...new Set(found.map(({ cell }) => cell))], mostNames)}`,
  );
}

/**
 * How words name a field: by its label. A row of a legend may be named by its face, if the form calls the face so
 * too.
 */
function saidAs(sheet: Sheet, place: Place, label: string): string {
  const [what, face] = place.split(".");
  const words = what === "row" ? faceWords(sheet, face as FaceName).replace("the ", "") : label;
  return (label.toLowerCase().includes(words.toLowerCase()) ? words : label).toLowerCase();
}

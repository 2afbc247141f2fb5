import { recordsIn, separators, separatorTold, type TextRecord } from "../reading/records.ts";

/** A row of a list of what is engraved. */
export interface EngravedRow {
  /** The line of the list, counted from 1. */
  readonly line: number;
  readonly order: string;
  readonly station: string;
  /** One place of the station: a device, or its plate. Absent for all of it. */
  readonly position?: number | "plate";
  /** One face of the piece there, as the schedule says it: "button 3". */
  readonly face?: string;
  /** The day, as "2026-11-09". */
  readonly on?: string;
}

/** What is wrong with a row of such a list. */
export interface RowFault {
  readonly line: number;
  readonly says: string;
}

/** The rows of a list, and those that cannot be read; or why it is no such list. */
export type EngravedList =
  | { readonly rows: readonly EngravedRow[]; readonly faults: readonly RowFault[] }
  | { readonly why: string };

const columns = ["order", "station", "position", "face", "when"] as const;
type Cells = Readonly<Record<(typeof columns)[number], string>>;

/** A CSV with the columns order and station, and if need be position, face and when; others are passed over. */
export function engravedListIn(text: string): EngravedList {
  const { head, told } = separatorTold(text);
  const before = head.split(/\r\n?|\n/).length - 1;
  const tables = (told === undefined ? separators : [told]).map((one) =>
    recordsIn(text.slice(head.length), one),
  );
  const table = tables.find(({ records }) => {
    const titles = titlesIn(firstOf(records));
    return titles.includes("order") && titles.includes("station");
  });
  if (table === undefined) return { why: "its first line does not name the columns order and station" };
  const { records, unclosed } = table;
  if (unclosed !== undefined) return { why: "a quotation mark is not closed" };
  const first = firstOf(records);
  const titles = titlesIn(first);
  const twice = columns.find((column) => titles.indexOf(column) !== titles.lastIndexOf(column));
  if (twice !== undefined) return { why: `it has two columns ${twice}` };
  const read = records
    .filter((record) => record !== first && !isEmpty(record))
    .map(({ line, cells }) => {
      const cellOf = (column: string): string => plainCell(cells[titles.indexOf(column)] ?? "");
      return rowOf(
        before + line,
        Object.fromEntries(columns.map((column) => [column, cellOf(column)])) as Cells,
      );
    });
  if (read.length === 0) return { why: "it has no row" };
  return {
    rows: read.flatMap((row) => ("says" in row ? [] : [row])),
    faults: read.flatMap((row) => ("says" in row ? [row] : [])),
  };
}

function rowOf(line: number, { order, station, position, face, when }: Cells): EngravedRow | RowFault {
  if (order === "") return { line, says: "no order is named" };
  const [on, ...rest] = when.split(/[T ]/);
  if (when !== "" && !(isDay(on ?? "") && rest.every((time) => /^\d{1,2}:\d{2}(?::\d{2})?$/.test(time))))
    return { line, says: `“${when}” is no day: write it as 2026-11-09` };
  if (!/^(?:[1-9]\d?|plate)?$/i.test(position))
    return { line, says: `“${position}” is not a position in a plate` };
  const isPlate = position.toLowerCase() === "plate" || (position === "" && face !== "");
  return {
    line,
    order,
    station,
    ...(isPlate ? { position: "plate" } : position === "" ? {} : { position: Number(position) }),
    ...(face === "" ? {} : { face: face.toLowerCase().replaceAll(/\s+/g, " ") }),
    ...(when === "" ? {} : { on: on ?? "" }),
  };
}

/** Whether a text is a day that there is. */
function isDay(text: string): boolean {
  const moment = /^\d{4}-\d{2}-\d{2}$/.test(text) ? Date.parse(`${text}T00:00:00Z`) : Number.NaN;
  return !Number.isNaN(moment) && new Date(moment).toISOString().startsWith(text);
}

function firstOf(records: readonly TextRecord[]): TextRecord | undefined {
  return records.find((record) => !isEmpty(record));
}

function titlesIn(record: TextRecord | undefined): string[] {
  return (record?.cells ?? []).map((cell) => cell.trim().toLowerCase());
}

function isEmpty({ cells }: TextRecord): boolean {
  return cells.every((cell) => cell.trim() === "");
}

/** A cell without the apostrophe that keeps a text of ours a text in spreadsheets (`asText`). */
function plainCell(cell: string): string {
  return cell.trim().replace(/^'/, "");
}

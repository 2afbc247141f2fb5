import type { ListFault } from "../../trade/list-fault.ts";
import {
  addressOf,
  type Cell,
  helpTitle,
  isTitle,
  type ListFacts,
  type Oddity,
  placeAt,
  type Table,
} from "./list-facts.ts";
import { type ListField, type ListForm, labelKey } from "./list-form.ts";

/** What a list says for one field, with its cell. The cell of an empty entry is where one would fill it in. */
export interface Said {
  readonly text: string;
  readonly at: string;
  readonly odd?: Oddity;
}

/** One device of a list. */
export interface ListedDevice {
  readonly row: number;
  readonly said: ReadonlyMap<ListField, Said>;
}

/** A station list, field by field. */
export interface StationList {
  readonly head: ReadonlyMap<ListField, Said>;
  readonly devices: readonly ListedDevice[];
  readonly faults: readonly ListFault[];
  /** It has lines or headings of ours, and not only the title. */
  readonly isOurs: boolean;
}

/** The texts that stand in every list of ours: beside the head, and on the sheet that explains. */
export interface Printed {
  readonly beside: readonly string[];
  readonly help: readonly string[];
}

/** The cells of a list → what it says. */
export function readList({ tables, more }: ListFacts, form: ListForm, printed: Printed): StationList {
  const [beside, help] = [printed.beside, printed.help].map(
    (texts) => new Set(texts.map(labelKey).filter((key) => key !== "")),
  );
  const head = new Map<ListField, Said>();
  const devices: ListedDevice[] = [];
  const faults = more.filter((fault) => !isHarmless(fault, tables, form));
  let hasColumns = false;
  for (const table of tables) {
    const nameIn = (at: Address): string =>
      table.name === "" ? addressOf(at) : `${table.name}!${addressOf(at)}`;
    const refuse = (cells: readonly Cell[]): void => {
      for (const cell of cells) faults.push({ what: "unplaced", where: nameIn(cell), text: cell.text });
    };
    const except = (cells: readonly Cell[], ours: ReadonlySet<string> | undefined): Cell[] =>
      cells.filter(({ text }) => ours?.has(labelKey(text)) !== true);
    // The example on the sheet that explains is no order.
    const isHelp = table.rows[0]?.[0]?.text === helpTitle;
    let fields: ReadonlyMap<number, ListField> | undefined;
    for (const row of table.rows) {
      if (isHelp) refuse(except(row, help));
      else if (fields !== undefined) {
        devices.push(deviceIn(row, fields));
        refuse(row.filter(({ column }) => fields?.has(column) === false));
      } else {
        fields = columnsIn(row, form.columns);
        const line = fields === undefined ? lineIn(row, form.head, nameIn) : undefined;
        if (fields !== undefined) {
          hasColumns = true;
          refuse(row.filter(({ column }) => fields?.has(column) === false));
          const twice = twiceIn(row, fields);
          if (twice !== undefined) faults.push({ what: "twice", where: nameIn(twice), text: twice.text });
        } else if (line !== undefined) {
          if (head.has(line.field))
            faults.push({ what: "twice", where: line.said.at, text: line.field.label });
          head.set(line.field, line.said);
          refuse(
            except(
              row.filter(({ column }) => column > 1),
              beside,
            ),
          );
        } else refuse(isTitle(row[0]?.text ?? "") ? except(row.slice(1), beside) : row);
      }
    }
  }
  if (devices.length === 0 && faults.length === 0) faults.push({ what: "empty", where: "" });
  return { head, devices, faults, isOurs: head.size > 0 || hasColumns };
}

/** Whether a fault is none: a page header says what cells say too, or a title is merged above the headings of devices. */
function isHarmless(fault: ListFault, tables: readonly Table[], form: ListForm): boolean {
  if (fault.what === "header") {
    const said = new Set(tables.flatMap(({ rows }) => rows.flat().flatMap(({ text }) => wordsIn(text))));
    return wordsIn(fault.text ?? "").every((word) => said.has(word));
  }
  return fault.what === "merged" && isTitleMerged(fault, tables, form);
}

function wordsIn(text: string): string[] {
  return text.toUpperCase().match(/\p{L}+|\p{N}+/gu) ?? [];
}

/** Of merged cells all but the first have to be empty, or nobody sees what they hold. */
function isTitleMerged({ where }: ListFault, tables: readonly Table[], form: ListForm): boolean {
  const [, name, from = "", to = ""] = /^(.*)!([A-Z]+\d+):([A-Z]+\d+)$/u.exec(where) ?? [];
  const rows = tables.find((table) => table.name === name)?.rows ?? [];
  const headings = rows.find((row) => columnsIn(row, form.columns) !== undefined)?.[0]?.row ?? 0;
  const [first, last] = [from, to].map(placeAt);
  if (first === undefined || last === undefined || last.row >= headings) return false;
  const isOf = ({ column, row }: Cell): boolean =>
    column >= first.column && column <= last.column && row >= first.row && row <= last.row;
  return rows
    .flat()
    .filter(isOf)
    .every(({ column, row }) => column === first.column && row === first.row);
}

type Address = Pick<Cell, "column" | "row">;

/** A line of the head: a label, and beside it what is filled in. */
function lineIn(
  row: readonly Cell[],
  head: readonly ListField[],
  nameIn: (at: Address) => string,
): { readonly field: ListField; readonly said: Said } | undefined {
  const label = cellIn(row, 0);
  const field = label === undefined ? undefined : fieldOf(label.text, head);
  if (label === undefined || field === undefined) return undefined;
  return { field, said: saidIn(cellIn(row, 1), nameIn({ column: 1, row: label.row })) };
}

/** The heading of a column that another one has too. */
function twiceIn(row: readonly Cell[], fields: ReadonlyMap<number, ListField>): Cell | undefined {
  const all = [...fields];
  const [column] = all.find(([at, field]) => all.some(([other, one]) => other < at && one === field)) ?? [];
  return column === undefined ? undefined : cellIn(row, column);
}

function deviceIn(row: readonly Cell[], fields: ReadonlyMap<number, ListField>): ListedDevice {
  const number = row[0]?.row ?? 0;
  const said = [...fields].map(
    ([column, field]) => [field, saidIn(cellIn(row, column), addressOf({ column, row: number }))] as const,
  );
  return { row: number, said: new Map(said) };
}

function saidIn(cell: Cell | undefined, at: string): Said {
  return { text: cell?.text ?? "", at, ...(cell?.odd === undefined ? {} : { odd: cell.odd }) };
}

/** The fields of a row of headings, by column; undefined for any other row. */
function columnsIn(row: readonly Cell[], columns: readonly ListField[]): Map<number, ListField> | undefined {
  const found = row.flatMap(({ column, text }) => {
    const field = fieldOf(text, columns);
    return field === undefined ? [] : [[column, field] as const];
  });
  return found.length >= leastHeadings ? new Map(found) : undefined;
}

/** A row of headings has at least so many. The head of a list has two labels that are headings too. */
const leastHeadings = 3;

function fieldOf(text: string, fields: readonly ListField[]): ListField | undefined {
  const key = labelKey(text);
  return fields.find(({ label }) => labelKey(label) === key);
}

function cellIn(row: readonly Cell[], column: number): Cell | undefined {
  return row.find((cell) => cell.column === column);
}

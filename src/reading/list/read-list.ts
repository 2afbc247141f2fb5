import type { ListFault } from "../../trade/list-fault.ts";
import { addressOf, type Cell, isTitle, type ListFacts, type Oddity, type Table } from "./list-facts.ts";
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
}

/** The cells of a list → what it says. `printed` are the texts that stand in every list of ours. */
export function readList(
  { tables, more }: ListFacts,
  { head: lines, columns }: ListForm,
  printed: readonly string[],
): StationList {
  const ours = new Set(printed.map(labelKey));
  const head = new Map<ListField, Said>();
  const devices: ListedDevice[] = [];
  const faults: ListFault[] = [...more];
  for (const table of tables) {
    let fields: ReadonlyMap<number, ListField> | undefined;
    const nameOf = (at: Pick<Cell, "column" | "row">): string =>
      fields === undefined && table.name !== "" ? `${table.name}!${addressOf(at)}` : addressOf(at);
    const isRead = new Set<Cell>();
    for (const row of table.rows) {
      if (fields === undefined) {
        const [label, value] = [cellIn(row, 0), cellIn(row, 1)];
        fields = columnsIn(row, columns);
        const line = label === undefined ? undefined : fieldOf(label.text, lines);
        if (fields !== undefined) {
          for (const column of fields.keys()) isRead.add(cellIn(row, column) as Cell);
          if (new Set(fields.values()).size < fields.size)
            faults.push({ what: "twice", where: nameOf(row[0] as Cell), text: "a column" });
        } else if (label !== undefined && line !== undefined) {
          const at = nameOf({ column: 1, row: label.row });
          if (head.has(line)) faults.push({ what: "twice", where: at, text: label.text });
          head.set(line, saidIn(value, at));
          isRead.add(label);
          if (value !== undefined) isRead.add(value);
        } else if (label !== undefined && isTitle(label.text)) isRead.add(label);
      } else {
        const device = deviceIn(row, fields, nameOf);
        for (const cell of row) if (fields.has(cell.column)) isRead.add(cell);
        if (device !== undefined) devices.push(device);
      }
      for (const cell of row)
        if (!isRead.has(cell) && !ours.has(labelKey(cell.text)))
          faults.push({ what: "unplaced", where: nameOf(cell), text: cell.text });
    }
  }
  if (devices.length === 0 && faults.length === 0) faults.push({ what: "empty", where: placeOfRows(tables) });
  return { head, devices, faults };
}

function placeOfRows(tables: readonly Table[]): string {
  return tables.at(-1)?.name ?? "";
}

function deviceIn(
  row: readonly Cell[],
  fields: ReadonlyMap<number, ListField>,
  nameOf: (at: Pick<Cell, "column" | "row">) => string,
): ListedDevice | undefined {
  const [first] = row;
  if (first === undefined || !row.some(({ column }) => fields.has(column))) return undefined;
  const said = [...fields].map(
    ([column, field]) => [field, saidIn(cellIn(row, column), nameOf({ column, row: first.row }))] as const,
  );
  return { row: first.row, said: new Map(said) };
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

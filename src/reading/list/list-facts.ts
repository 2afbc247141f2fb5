import type { ListFault } from "../../trade/list-fault.ts";

/** Why the text of a cell may be other than what its sender sees, or means. */
export type Oddity =
  | "formula"
  /** A date, a number with a format, a yes or no: it shows otherwise than it is held. */
  | "shown-otherwise"
  /** In a text: what a spreadsheet makes of 1-2 or 1E5. */
  | "remade"
  | "struck"
  /** In the colour of its ground, or in a format that shows nothing. */
  | "unseen";

/** A cell that holds something. */
export interface Cell {
  /** Counted from 0. */
  readonly column: number;
  /** Counted from 1, as a spreadsheet counts. */
  readonly row: number;
  readonly text: string;
  readonly odd?: Oddity;
}

/** One sheet of a workbook, or the whole of a CSV file: its filled cells, row by row. */
export interface Table {
  /** Its name; "" in a CSV file. */
  readonly name: string;
  readonly rows: readonly (readonly Cell[])[];
}

/** What a reader process found in a station list of ours. */
export interface ListFacts {
  readonly kind: "list";
  readonly tables: readonly Table[];
  /** What it holds that is no plain cell, so that nobody can say what it means for the order. */
  readonly more: readonly ListFault[];
}

/** Stands in the first cell of every station list. */
export const listTitle = "Station list";

/** Stands in the first cell of the sheet that explains a list. Nothing may be filled in there. */
export const helpTitle = "How to fill in this list";

/** Rows of a table that are read, and columns of a row. */
export const mostCells = { rows: 2_000, columns: 200 } as const;

/** Whether tables are a station list: one of them begins with the title. */
export function isList(tables: readonly Table[]): boolean {
  return tables.some(({ rows }) => isTitle(rows[0]?.[0]?.text ?? ""));
}

export function isTitle(text: string): boolean {
  return text.trim().toLowerCase() === listTitle.toLowerCase();
}

/** The address of a cell, "B14". */
export function addressOf({ column, row }: Pick<Cell, "column" | "row">): string {
  return `${lettersOf(column)}${row}`;
}

/** The place of an address. */
export function placeAt(address: string): Pick<Cell, "column" | "row"> | undefined {
  const [, letters, row] = /^([A-Z]{1,3})(\d{1,7})$/.exec(address) ?? [];
  return letters === undefined ? undefined : { column: columnOf(letters), row: Number(row) };
}

/** The column of an address, or of its letters. */
export function columnOf(address: string): number {
  const letters = /[A-Z]+/i.exec(address)?.[0].toUpperCase() ?? "A";
  return [...letters].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}

export function lettersOf(column: number): string {
  const last = String.fromCharCode(65 + (column % 26));
  return column < 26 ? last : lettersOf(Math.floor(column / 26) - 1) + last;
}

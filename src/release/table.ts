export type Cell = string | number;

/** Rows under titled columns. A text is what somebody typed; a number is a number. */
export interface Table {
  readonly name: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
}

export interface Column {
  readonly title: string;
  /** In characters. */
  readonly width: number;
}

/** A column and what stands in it for an item of a list. */
export interface ColumnOf<T> extends Column {
  readonly of: (item: T) => Cell;
}

export function tableOf<T>(name: string, columns: readonly ColumnOf<T>[], items: readonly T[]): Table {
  return {
    name,
    columns: columns.map(({ title, width }) => ({ title, width })),
    rows: items.map((item) => columns.map((column) => column.of(item))),
  };
}

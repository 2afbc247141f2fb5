import type { Cell } from "../audit/cells.ts";

/** Rows under titles. A text is what somebody typed; a number is a number. */
export interface Table {
  readonly name: string;
  readonly titles: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

/** A column: its title, and what stands in it for an item of a list. */
export type Column<T> = readonly [title: string, of: (item: T) => Cell | undefined];

/** A table with a row for each item. What is undefined is an empty cell. */
export function tableOf<T>(name: string, columns: readonly Column<T>[], items: readonly T[]): Table {
  return {
    name,
    titles: columns.map(([title]) => title),
    rows: items.map((item) => columns.map(([, of]) => of(item) ?? "")),
  };
}

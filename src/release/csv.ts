import { asText, csvText } from "../audit/cells.ts";
import type { Table } from "./table.ts";

/** A table as CSV. Every legend stays the text that was typed. */
export function tableCsv({ titles, rows }: Table): string {
  return csvText(
    titles,
    rows.map((row) => row.map((cell) => (typeof cell === "number" ? cell : asText(cell)))),
  );
}

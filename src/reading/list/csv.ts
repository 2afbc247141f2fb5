import type { ListFault } from "../../trade/list-fault.ts";
import { recordsIn, separators, separatorTold, type TextRecords } from "../records.ts";
import { addressOf, type Cell, isList, type ListFacts, mostCells, type Table } from "./list-facts.ts";

/** Characters of a text that may be a list. */
const longest = 400_000;

/** A text as a station list; undefined for any other text. */
export function listInText(text: string): ListFacts | undefined {
  const { head, told } = separatorTold(text);
  const plain = text.slice(head.length);
  if (!/^[\s"]*station list/i.test(plain)) return undefined;
  const { table, unclosed } = tableOf(plain.slice(0, longest), told);
  if (!isList([table])) return undefined;
  const isLong = plain.length > longest || table.rows.length > mostCells.rows;
  return {
    kind: "list",
    tables: isLong ? [] : [table],
    more: isLong ? [{ what: "too-long", where: "the list" }] : unclosed,
  };
}

/** The cells of a text, by the separator that it tells, or by whichever makes most of its rows. */
function tableOf(
  text: string,
  told: string | undefined,
): { readonly table: Table; readonly unclosed: readonly ListFault[] } {
  const [widest = { records: [] }] = (told === undefined ? separators : [told])
    .map((separator) => recordsIn(text, separator))
    .toSorted((one, other) => widthOf(other) - widthOf(one));
  const rows = widest.records
    .map(({ cells }, i) =>
      cells.flatMap((cell, column): Cell[] =>
        cell.trim() === ""
          ? []
          : [{ column, row: i + 1, text: cell, ...(remade.test(cell.trim()) ? { odd: "remade" } : {}) }],
      ),
    )
    .filter((cells) => cells.length > 0);
  return { table: { name: "", rows }, unclosed: unclosedIn(widest) };
}

/** What a spreadsheet writes where somebody typed 1-2, 1/2 or 1E5 into it: "2-Jan", "Jan-02", "1/2/2026", "1.00E+05". */
const month = "(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)";
const remade = new RegExp(
  String.raw`^(?:\d{1,2}-${month}(?:-\d{2}|-\d{4})?|${month}-\d{2}|\d{1,2}/\d{1,2}/\d{4}|\d{1,2}:\d{2}:\d{2}(?: [AP]M)?|\d(?:\.\d+)?E[+-]\d{2,})$`,
);

function widthOf({ records }: TextRecords): number {
  return records.reduce((width, { cells }) => Math.max(width, cells.length), 0);
}

function unclosedIn({ records, unclosed }: TextRecords): ListFault[] {
  if (unclosed === undefined) return [];
  const where = addressOf({ column: (records.at(-1)?.cells.length ?? 1) - 1, row: records.length });
  return [{ what: "unclosed", where, text: unclosed.replace(/\s+/g, " ").trim() }];
}

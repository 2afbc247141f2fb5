import type { ListFault } from "../../trade/list-fault.ts";
import { addressOf, type Cell, isList, type ListFacts, mostCells, type Table } from "./list-facts.ts";

/** Characters of a text that may be a list. */
const longest = 400_000;

/** A text as a station list; undefined for any other text. */
export function listInText(text: string): ListFacts | undefined {
  // Its first line may tell a spreadsheet what separates the cells, and is none of its rows.
  const [head = "", told] = /^\uFEFF?(?:sep=([;,\t|])[ \t]*(?:\r\n?|\n))?/iu.exec(text) ?? [];
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
  const [widest = { records: [], unclosed: [] }] = (told === undefined ? ["\t", ";", ","] : [told])
    .map((separator) => recordsIn(text, separator))
    .toSorted((one, other) => widthOf(other.records) - widthOf(one.records));
  const rows = widest.records
    .map((cells, i) =>
      cells.flatMap((cell, column): Cell[] =>
        cell.trim() === ""
          ? []
          : [{ column, row: i + 1, text: cell, ...(remade.test(cell.trim()) ? { odd: "remade" } : {}) }],
      ),
    )
    .filter((cells) => cells.length > 0);
  return { table: { name: "", rows }, unclosed: widest.unclosed };
}

/** What a spreadsheet writes where somebody typed 1-2, 1/2 or 1E5 into it: "2-Jan", "Jan-02", "1/2/2026", "1.00E+05". */
const month = "(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)";
const remade = new RegExp(
  String.raw`^(?:\d{1,2}-${month}(?:-\d{2}|-\d{4})?|${month}-\d{2}|\d{1,2}/\d{1,2}/\d{4}|\d{1,2}:\d{2}:\d{2}(?: [AP]M)?|\d(?:\.\d+)?E[+-]\d{2,})$`,
);

function widthOf(records: readonly (readonly string[])[]): number {
  return records.reduce((width, { length }) => Math.max(width, length), 0);
}

interface Records {
  readonly records: readonly (readonly string[])[];
  readonly unclosed: readonly ListFault[];
}

/**
 * RFC 4180 §2: a cell in quotation marks may hold separators, line ends and, doubled, quotation marks. A mark that
 * does not begin a cell stands for itself.
 */
function recordsIn(text: string, separator: string): Records {
  const records: string[][] = [[]];
  let cell = "";
  let quoted = false;
  const end = (): void => {
    records.at(-1)?.push(cell);
    cell = "";
  };
  for (let at = 0; at < text.length; at++) {
    const sign = text[at] ?? "";
    if (quoted) {
      if (sign !== '"') cell += sign;
      else if (text[at + 1] === '"') cell += text[++at];
      else quoted = false;
    } else if (sign === '"' && cell === "") quoted = true;
    else if (sign === separator) end();
    else if (sign === "\n" || sign === "\r") {
      if (sign === "\r" && text[at + 1] === "\n") at++;
      end();
      records.push([]);
    } else cell += sign;
  }
  const last = { column: records.at(-1)?.length ?? 0, row: records.length };
  const unclosed = quoted
    ? [{ what: "unclosed", where: addressOf(last), text: cell.replace(/\s+/g, " ").trim() } as const]
    : [];
  end();
  return { records, unclosed };
}

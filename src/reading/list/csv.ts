import { isList, type ListFacts, mostCells, type Table } from "./list-facts.ts";

/** Characters of a text that may be a list. */
const longest = 400_000;

/** A text as a station list; undefined for any other text. */
export function listInText(text: string): ListFacts | undefined {
  const plain = text.replace(/^\uFEFF/, "");
  if (!/^[\s"]*station list/i.test(plain)) return undefined;
  const table = tableOf(plain.slice(0, longest));
  if (!isList([table])) return undefined;
  const isLong = plain.length > longest || table.rows.length > mostCells.rows;
  return {
    kind: "list",
    tables: isLong ? [] : [table],
    more: isLong ? [{ what: "too-long", where: "the list" }] : [],
  };
}

/** The cells of a text, by whichever separator makes most of its rows. */
function tableOf(text: string): Table {
  const [widest = []] = ["\t", ";", ","]
    .map((separator) => recordsIn(text, separator))
    .toSorted((one, other) => widthOf(other) - widthOf(one));
  return {
    name: "",
    rows: widest
      .map((cells, i) =>
        cells.flatMap((cell, column) => (cell.trim() === "" ? [] : [{ column, row: i + 1, text: cell }])),
      )
      .filter((cells) => cells.length > 0),
  };
}

function widthOf(records: readonly (readonly string[])[]): number {
  return records.reduce((width, { length }) => Math.max(width, length), 0);
}

/**
 * RFC 4180 §2: a cell in quotation marks may hold separators, line ends and, doubled, quotation marks. A mark that
 * does not begin a cell stands for itself.
 */
function recordsIn(text: string, separator: string): string[][] {
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
  end();
  return records;
}

/** A record of a text of separated cells, and the line of the text at which it begins, counted from 1. */
export interface TextRecord {
  readonly line: number;
  readonly cells: readonly string[];
}

export interface TextRecords {
  readonly records: readonly TextRecord[];
  /** The cell whose quotation mark nothing closes: the last one. */
  readonly unclosed?: string;
}

/** The first line of a text may tell a spreadsheet what separates the cells; it is none of its rows. */
export function separatorTold(text: string): { readonly head: string; readonly told?: string } {
  const [head = "", told] = /^\uFEFF?(?:sep=([;,\t|])[ \t]*(?:\r\n?|\n))?/iu.exec(text) ?? [];
  return { head, ...(told === undefined ? {} : { told }) };
}

/** What separates cells where nothing tells. */
export const separators = ["\t", ";", ","] as const;

/**
 * RFC 4180 §2: a cell in quotation marks may hold separators, line ends and, doubled, quotation marks. A mark that
 * does not begin a cell stands for itself.
 */
export function recordsIn(text: string, separator: string): TextRecords {
  const records: { line: number; cells: string[] }[] = [{ line: 1, cells: [] }];
  let [cell, quoted, line] = ["", false, 1];
  const end = (): void => {
    records.at(-1)?.cells.push(cell);
    cell = "";
  };
  for (let at = 0; at < text.length; at++) {
    const sign = text[at] ?? "";
    // "\r\n" ends one line.
    const endsLine = sign === "\n" || (sign === "\r" && text[at + 1] !== "\n");
    if (endsLine) line++;
    if (quoted) {
      if (sign !== '"') cell += sign;
      else if (text[at + 1] === '"') cell += text[++at];
      else quoted = false;
    } else if (sign === '"' && cell === "") quoted = true;
    else if (sign === separator) end();
    else if (endsLine) {
      end();
      records.push({ line, cells: [] });
    } else if (sign !== "\r") cell += sign;
  }
  const unclosed = quoted ? { unclosed: cell } : {};
  end();
  return { records, ...unclosed };
}

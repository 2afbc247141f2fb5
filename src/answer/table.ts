/** Rows of text as columns that line up; the first row is the head. Wide cells are cut to `most` characters. */
export function table(rows: readonly (readonly string[])[], most = 44): string {
  const cells = rows.map((row) => row.map((cell) => cut(cell, most)));
  const widths = (cells[0] ?? []).map((_, column) =>
    Math.max(...cells.map((row) => row[column]?.length ?? 0)),
  );
  const line = (row: readonly string[]): string =>
    row
      .map((cell, column) => cell.padEnd(widths[column] ?? 0))
      .join("  ")
      .trimEnd();
  const [head = [], ...body] = cells;
  return [line(head), widths.map((width) => "-".repeat(width)).join("  "), ...body.map(line)].join("\n");
}

function cut(text: string, most: number): string {
  return text.length <= most ? text : `${text.slice(0, most - 1)}…`;
}

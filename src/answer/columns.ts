/** Cells in columns, two blanks apart. The last cell of a line stays as it is. */
export function columns(lines: readonly (readonly string[])[]): string[] {
  const widths = lines.reduce<number[]>((most, line) => {
    const needed = line.slice(0, -1).map((cell, i) => Math.max(most[i] ?? 0, [...cell].length));
    return [...needed, ...most.slice(needed.length)];
  }, []);
  return lines.map((line) =>
    line
      .map((cell, i) =>
        i === line.length - 1 ? cell : cell + " ".repeat((widths[i] ?? 0) - [...cell].length + 2),
      )
      .join("")
      .trimEnd(),
  );
}

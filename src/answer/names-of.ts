import type { Enclosure } from "./message.ts";
import { listed, oneLine } from "./one-line.ts";

/** Files named in one line. */
const most = 6;

/** The names of files, fit for a line. */
export function namedInLine(files: readonly string[]): string {
  return listed(
    files.map((file) => oneLine(file, 90)),
    most,
  );
}

/** The names of what is enclosed. */
export function namesOf(files: readonly Pick<Enclosure, "file">[]): string {
  return namedInLine(files.map(({ file }) => file));
}

import { readdirSync, readFileSync, statSync } from "node:fs";
import { join, relative } from "node:path";

/** Every letter below a path: .eml files, and the letters of mboxes, which are told by their first line. */
export function* lettersIn(path: string): Generator<{ name: string; bytes: Uint8Array }> {
  const files = statSync(path).isDirectory()
    ? readdirSync(path, { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map((entry) => join(entry.parentPath, entry.name))
        .toSorted()
    : [path];
  for (const file of files) {
    const bytes = readFileSync(file);
    const name = relative(path, file) || file;
    if (bytes.toString("latin1", 0, 5) !== "From ") yield { name, bytes };
    else for (const [i, letter] of ofMbox(bytes).entries()) yield { name: `${name}#${i + 1}`, bytes: letter };
  }
}

/** RFC 4155: a line that begins with "From " behind an empty one begins a letter; within one it has a ">" before it. */
function ofMbox(bytes: Buffer): Buffer[] {
  const starts = [0];
  for (let at = 0; (at = bytes.indexOf("\n\nFrom ", at)) >= 0; ) starts.push((at += 2));
  return starts.map((start, i) => bytes.subarray(bytes.indexOf("\n", start) + 1, starts[i + 1]));
}

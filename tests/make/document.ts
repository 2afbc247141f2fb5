import { readFileSync, writeFileSync } from "node:fs";
import { expect } from "vitest";

/** The part of a document between its markers; with UPDATE=1 it is written instead of compared. */
export function expectPart(file: string, marker: string, wanted: string): void {
  const text = readFileSync(file, "utf8");
  const part = new RegExp(`(<!-- ${marker} -->\n)([\\s\\S]*?)(<!-- /${marker} -->)`);
  if (process.env["UPDATE"] === "1")
    writeFileSync(
      file,
      text.replace(part, (_, open, _old, end) => `${open}${wanted}\n${end}`),
    );
  expect(part.exec(readFileSync(file, "utf8"))?.[2]).toBe(`${wanted}\n`);
}

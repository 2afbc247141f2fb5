import { expect, test } from "vitest";
import { rivalsOf } from "../../../src/reading/page/rivals.ts";
import { glyphs } from "./drawn.ts";

/** The characters that one may be taken for, in the order of their codes. */
function rivals(character: string): string {
  const found = new Set(rivalsOf(character, glyphs));
  return [...glyphs].flatMap(([other, glyph]) => (found.has(glyph) ? other : [])).join("");
}

test("a small letter may be taken for those that look like it, whichever of two is named first", () => {
  expect(["h", "v", "z", "p", "x"].map(rivals)).toEqual(["abekn", "uy", "s", "oqu", ""]);
});

test("a capital or a digit may be taken for capitals and digits alone", () => {
  for (const [one, other] of ["O0", "EF", "8B", "UV", "CG"]) {
    expect(rivals(one ?? "")).toMatch(new RegExp(`^[A-Z0-9]*${other}[A-Z0-9]*$`));
    expect(rivals(one ?? "")).not.toContain(one);
  }
  expect(rivals("I")).not.toContain("O");
});

// Measured. Those that lie over each other by half, edge on edge or middle on middle.
test.each([
  ["1", "347AI"],
  ["7", "12389BEFISTXYZ"],
  ["A", "012345689BEFKNPRSWXZ"],
  ["I", "01678BCDEFHKLMNPRTUY"],
  ["J", "02345689BCDEGSUVZ"],
  ["T", "7EFIYZ"],
  ["W", "4568ABGKMNOQRV"],
  ["Y", "2378IMNSTVXZ"],
])("%s may be taken for %s", (one, others) => {
  expect([...rivals(one)].toSorted().join("")).toBe(others);
});

test("a sign, and what Helvetica lacks, may be taken for nothing", () => {
  expect(["“", "-", "Ж"].map(rivals)).toEqual(["", "", ""]);
});

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

test("a sign, and what Helvetica lacks, may be taken for nothing", () => {
  expect(["“", "-", "Ж"].map(rivals)).toEqual(["", "", ""]);
});

import { readFileSync } from "node:fs";
import { isDeepStrictEqual } from "node:util";
import { expect, test } from "vitest";
import { capUnits, glyphsOf } from "../../src/lettering/glyph.ts";
import { romanSimplex } from "../../src/lettering/roman-simplex.ts";
import { catalogue } from "../make/config.ts";

const [box] = glyphsOf("→", "RS");

/** The characters that are drawn as a crossed box. */
function withoutGlyph(text: string): string[] {
  return [...text].filter((character) => isDeepStrictEqual(glyphsOf(character, "RS"), [box]));
}

test("there is a glyph for each of the 95 printable characters of ASCII", () => {
  const ascii = Array.from({ length: 95 }, (_, i) => String.fromCodePoint(0x20 + i));
  expect(Object.keys(romanSimplex).toSorted()).toEqual(ascii.toSorted());
  expect(withoutGlyph(ascii.join(""))).toEqual([]);
});

test("whatever the catalogue lets people type can be cut", () => {
  expect(withoutGlyph(catalogue.characters)).toEqual([]);
});

test("a letter of another alphabet has no glyph and is drawn as a crossed box", () => {
  expect(withoutGlyph("S\u0421ENE→")).toEqual(["\u0421", "→"]);
  expect(box?.advance).toBe(20);
  expect(box?.strokes.length).toBeGreaterThan(0);
});

test("an accent leaves its letter as wide and as high as it was, and takes the dot from an i", () => {
  const [plain, accented] = glyphsOf("EE\u0301", "RS");
  expect(accented?.advance).toBe(plain?.advance);
  expect(accented?.strokes.slice(0, plain?.strokes.length)).toEqual(plain?.strokes);
  // The stem, and the accent in place of the dot.
  expect(glyphsOf("í", "RS")[0]?.strokes).toHaveLength(2);
  expect(glyphsOf("i", "RS")[0]?.strokes).toHaveLength(2);
  expect(glyphsOf("ï", "RS")[0]?.strokes).toHaveLength(3);
});

test("accents stand clear of their letters and leave the next row its place", () => {
  const { cap, row_gap, cutter } = catalogue.plate.face;
  const unit = cap / capUnits;
  for (const letter of "ÀÁÂÃÄÅÈÉÊËÌÍÎÏÑÒÓÔÕÖÙÚÛÜÝ") {
    const accent =
      glyphsOf(letter, "RS")[0]
        ?.strokes.flat()
        .filter(([, y]) => y > capUnits) ?? [];
    const heights = accent.map(([, y]) => y);
    expect((Math.min(...heights) - capUnits) * unit - cutter).toBeGreaterThan(cutter / 2);
    expect((Math.max(...heights) - capUnits) * unit + cutter).toBeLessThan(row_gap);
  }
});

test("both acknowledgements go with the font, wherever its data goes", () => {
  for (const file of ["roman-simplex.ts", "NOTICE.md"]) {
    const text = readFileSync(`src/lettering/${file}`, "utf8").replaceAll(/[\s*]+/g, " ");
    expect(text).toMatch(
      /Hershey Fonts were originally created by Dr\. A\. V\. Hershey while working at the U\. S\. National Bureau of Standards/,
    );
    expect(text).toMatch(/originally created by James Hurt, Cognition, Inc\./);
  }
});

test("the data is not in the format that its owner keeps for itself", () => {
  // U.S. NTIS: each point in eight bytes, "xxx yyy:".
  expect(readFileSync("src/lettering/roman-simplex.ts", "utf8")).not.toMatch(
    /[\d ]{3} [\d ]{3}:[\d ]{3} [\d ]{3}:/,
  );
});

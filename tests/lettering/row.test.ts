import { expect, test } from "vitest";
import { type Cut, lettersOf, offCentre, pairsNearer, widthOf } from "../../src/lettering/row.ts";
import { distanceBetween, extentOf } from "../../src/lettering/stroke.ts";
import { catalogue } from "../make/config.ts";

/** Three millimetres high, without tracking. */
const plain: Cut = { font: "RS", cap: 3, tracking: 0, cutter: 0.3 };

// Advances of Roman Simplex in the Hershey Fonts as distributed (rowmans.jhf): right less left side of each glyph.
const advances =
  "A18 B21 C21 D21 E19 F18 G21 H22 I8 J16 K21 L17 M24 N22 O22 P21 Q22 R21 S20 T16 U22 V18 W24 X20 Y18 Z20";

test.each(advances.split(" "))("%s is as wide as the font has it", (entry) => {
  expect(widthOf(entry[0] ?? "", { ...plain, cap: 21 })).toBeCloseTo(Number(entry.slice(1)), 9);
});

// Measured with the same data by another program: cap height / 21 · Σ advance.
test.each([
  ["ALL OFF", 18],
  ["CONF RM", 20.5714],
  ["RECEPTION", 24.1429],
  ["IIIIIIIIII", 11.4286],
  ["WWWWWWWWWW", 34.2857],
])("“%s” is %d mm wide at a height of 3 mm", (text, width) => {
  expect(widthOf(text, plain)).toBeCloseTo(width, 4);
});

test("tracking is added between letters, blanks among them, and nowhere else", () => {
  expect(widthOf("ALL OFF", { ...plain, tracking: 0.3 })).toBeCloseTo(18 + 6 * 0.3, 4);
  expect(widthOf("I", { ...plain, tracking: 0.3 })).toBeCloseTo(widthOf("I", plain), 9);
  expect(widthOf("", { ...plain, tracking: 0.3 })).toBe(0);
});

test("the narrow font is as high and not as wide", () => {
  const narrow: Cut = { ...plain, font: "RN" };
  expect(widthOf("ALL OFF", narrow)).toBeCloseTo(0.85 * 18, 4);
  expect(extentOf(lettersOf("H", narrow).flat())?.top).toBe(-3);
});

test("capitals stand on the baseline and are as high as the row says", () => {
  for (const letter of "ABDEFHIKLMNPRTVWXYZ") {
    const extent = extentOf(lettersOf(letter, plain).flat());
    expect(extent?.top, letter).toBeCloseTo(-3, 9);
    expect(extent?.bottom, letter).toBeCloseTo(0, 9);
  }
});

test("unlike air beside the first and last letter shifts the middle of what is cut", () => {
  for (const text of ["LOBBY", "TV", "A", "DIM", "É"]) {
    const extent = extentOf(lettersOf(text, plain).flat());
    const middle = ((extent?.left ?? 0) + (extent?.right ?? 0)) / 2;
    expect(offCentre(text, plain)).toBeCloseTo(middle - widthOf(text, plain) / 2, 9);
  }
  // A blank in front is meant: it stays.
  expect(offCentre("  ", plain)).toBe(0);
});

/** How every face of the catalogue is cut, at its greatest height. */
const faces = [...catalogue.layouts.map(({ face }) => face), catalogue.plate.face];
const cuts = [...new Map(faces.map((face) => [face.cap, face])).values()].map(
  ({ font = "RS", cap, tracking, cutter }): Cut => ({ font, cap, tracking, cutter }),
);
const gapOf = (text: string, cut: Cut): number =>
  pairsNearer(text, cut, Number.POSITIVE_INFINITY)[0]?.gap ?? 0;

// ISO 3098, lettering, from memory: line width h/14 (type A) to h/10 (type B); 2h/10 between letters, of which half may be taken
// where it looks better, as between L and A; 6h/10 between words. At h = 5 mm, type B: 0.5, 1 and 3 mm.
test.each(cuts)("letters $cap mm high keep the proportions of ISO 3098", (cut) => {
  expect(cut.cutter).toBeGreaterThanOrEqual(cut.cap / 14);
  expect(cut.cutter).toBeLessThanOrEqual(cut.cap / 10);
  expect(gapOf("HH", cut)).toBeGreaterThanOrEqual((2 * cut.cap) / 10);
  for (const pair of ["LA", "TV", "AA", "RA"]) expect(gapOf(pair, cut)).toBeGreaterThanOrEqual(cut.cutter);
  const [first = [], , last = []] = lettersOf("I I", cut);
  expect(distanceBetween(first, last) - cut.cutter).toBeGreaterThanOrEqual((6 * cut.cap) / 10);
});

// NUREG-0700 Revision 2 (2002), 11.4, from memory: letters at least one stroke apart.
test("no two letters, digits or marks touch; some accents side by side are the only close ones", () => {
  // A small letter bears the same accents as its capital, and leaves more air.
  const all = [...catalogue.characters].filter((character) => !/[à-ý]/.test(character));
  const near = new Set(
    cuts.flatMap((cut) =>
      all.flatMap((one) =>
        all.flatMap((other) => pairsNearer(one + other, cut, cut.cutter).map(({ letters }) => letters)),
      ),
    ),
  );
  expect([...near].filter((letters) => !/[ÌÍÎÏ]/.test(letters))).toEqual([]);
  expect(near.size).toBeLessThan(15);
});

test("a gap is measured between the edges of the strokes", () => {
  // Two I: eight units of air from stem to stem.
  expect(gapOf("II", plain)).toBeCloseTo((8 * 3) / 21 - 0.3, 9);
  expect(gapOf("II", { ...plain, tracking: 0.2 })).toBeCloseTo((8 * 3) / 21 + 0.2 - 0.3, 9);
});

import { wcagContrast } from "culori";
import * as fc from "fast-check";
import { expect, test } from "vitest";
import { contrastRatio, luminance } from "../../src/lettering/contrast.ts";

// Published values of the WCAG 2.x formula. W3C, "Understanding Success Criterion 1.4.3": a ratio is not
// rounded up to its threshold, so #777777 on white stays under 4.5 and #959595 under 3.
test.each([
  ["#000000", "#FFFFFF", 21],
  ["#FFFFFF", "#FFFFFF", 1],
  ["#777777", "#FFFFFF", 4.4781],
  ["#767676", "#FFFFFF", 4.5422],
  ["#959595", "#FFFFFF", 2.9953],
  ["#FF0000", "#FFFFFF", 3.9985],
  ["#0000FF", "#FFFFFF", 8.5925],
])("%s on %s has the contrast %d", (one, other, ratio) => {
  expect(contrastRatio(one, other)).toBeCloseTo(ratio, 4);
});

test("agrees with culori on any two colours", () => {
  const colour = fc.integer({ min: 0, max: 0xffffff }).map((n) => `#${n.toString(16).padStart(6, "0")}`);
  fc.assert(
    fc.property(colour, colour, (one, other) => {
      expect(contrastRatio(one, other)).toBeCloseTo(wcagContrast(one, other), 4);
      expect(contrastRatio(one, other)).toBe(contrastRatio(other, one));
    }),
  );
});

test.each(["red", "#FFF", "#GGGGGG", "#12345"])("%s is no colour", (text) => {
  expect(() => luminance(text)).toThrow(text);
});

import * as fc from "fast-check";
import { expect, test } from "vitest";
import { distanceBetween, type Point, type Stroke, strokesFrom } from "../../src/lettering/stroke.ts";

const point = fc.tuple(fc.integer({ min: -20, max: 20 }), fc.integer({ min: -20, max: 20 }));
const stroke = fc.array(point, { minLength: 2, maxLength: 5 });

test.each([
  ["0,0 0,10", "3,0 3,10", 3],
  ["0,0 0,10", "3,14 3,20", 5],
  ["0,0 10,10", "0,10 10,0", 0],
  ["0,0 10,0", "5,0 5,5", 0],
  ["0,0 4,0 4,4", "4,6 9,6", 2],
])("from %s to %s it is %d", (one, other, distance) => {
  expect(distanceBetween(strokesFrom(one), strokesFrom(other))).toBeCloseTo(distance, 9);
});

test("nothing is infinitely far from anything", () => {
  expect(distanceBetween([], strokesFrom("0,0 1,1"))).toBe(Number.POSITIVE_INFINITY);
});

test("the distance is that of the nearest of many points along both strokes, whichever comes first", () => {
  fc.assert(
    fc.property(stroke, stroke, (one, other) => {
      const exact = distanceBetween([one], [other]);
      expect(distanceBetween([other], [one])).toBeCloseTo(exact, 9);
      const sampled = Math.min(
        ...along(one).flatMap(([x, y]) => along(other).map((to) => Math.hypot(x - to[0], y - to[1]))),
      );
      expect(exact).toBeLessThanOrEqual(sampled + 1e-9);
      // Two steps along lines of at most 57 units.
      expect(sampled - exact).toBeLessThan(1.5);
    }),
    { numRuns: 60 },
  );
});

/** Points along a stroke, 41 to a piece. */
function along(line: Stroke): Point[] {
  return line.slice(1).flatMap(([x, y], i) =>
    Array.from({ length: 41 }, (_, step): Point => {
      const [fromX, fromY] = line[i] ?? [x, y];
      return [fromX + ((x - fromX) * step) / 40, fromY + ((y - fromY) * step) / 40];
    }),
  );
}

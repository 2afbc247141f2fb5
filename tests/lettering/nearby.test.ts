import * as fc from "fast-check";
import { expect, test } from "vitest";
import { makeNearby } from "../../src/lettering/nearby.ts";
import { slips } from "../../src/lettering/slips.ts";
import { glossary } from "../make/config.ts";

const known = [...glossary.words.keys()];
const nearby = makeNearby(known);

const capital = fc.constantFrom(..."ABCDEFGHIJKLMNOPQRSTUVWXYZ'");
const nonsense = fc.array(capital, { minLength: 1, maxLength: 12 }).map((letters) => letters.join(""));

/** A word with up to three slips in it. */
const slipped = fc
  .tuple(fc.constantFrom(...known), fc.array(fc.tuple(fc.nat(), fc.nat(3), capital), { maxLength: 3 }))
  .map(([word, made]) =>
    made.reduce((text, [place, kind, letter]) => {
      const at = place % Math.max(1, text.length);
      const [head, here, next, tail] = [
        text.slice(0, at),
        text.charAt(at),
        text.charAt(at + 1),
        text.slice(at + 2),
      ];
      return (
        head + [next + tail, letter + next + tail, letter + here + next + tail, next + here + tail][kind]
      );
    }, word),
  );

test("near words are those that a plain count of slips finds, in the same order", () => {
  fc.assert(
    fc.property(fc.oneof(slipped, nonsense), fc.constantFrom(1, 2), (word, reach) => {
      expect(nearby(word, reach)).toEqual(known.filter((other) => slips(word, other) <= reach));
    }),
    { numRuns: 300 },
  );
});

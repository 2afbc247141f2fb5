import { expect, test } from "vitest";
import { splices, stillYes, unheardWishes, untoldWishes } from "../../bench/splices.ts";

/** What is still taken for a yes: words that say yes once more, or that tell of a sheet that comes for another point. */
const harmless = [
  "See attached as soon as revised S-101 and S-104. 3 YES per customer.",
  "Yes as it should be stands cheers",
  "Sheet corrected in attachment replace (1). For the 2, yes, it is so.",
  "It's meant as is it right it stands.",
  "Hi, 1 12.5 attached, 2 YES.",
  // A heading of ours, quoted without marks.
  "PLEASE CONFIRM (REFERENCE 314-KHRGM) 12.5",
  "Yes to 2 and 3. New sheet for pos 12.5 1 attached.",
  "2 YES, by noon plate sheet attached shortened",
];

test("whatever binds or asks in a sentence that says yes leaves it to a person", () => {
  const all = [...splices(7, 0.02)];
  expect(all.length).toBeGreaterThan(1000);
  const wrong = all.filter((one) => stillYes(one).length > 0).map(({ line }) => line);
  expect(wrong).toEqual(harmless);
});

test("a wish below, behind or before a yes leaves it to a person", () => {
  expect(unheardWishes()).toEqual([]);
});

test.each([
  ["behind a sheet for a point to fix", 16],
  ["behind a no with a sheet", 26],
  ["below both", 15],
  ["below answers, where a sheet came", 5],
  ["behind a yes beside a point to fix", 4],
] as const)("%s, at most %i wishes are told to nobody, all of the sheet or its slip", (frame, most) => {
  expect(untoldWishes(frame).length).toBeLessThanOrEqual(most);
});

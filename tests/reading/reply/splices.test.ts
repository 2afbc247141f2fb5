import { expect, test } from "vitest";
import { splices, stillYes, unheardWishes, untoldWishes } from "../../bench/splices.ts";

/** What is still taken for a yes: words within a greeting, or of a sheet that comes. None of them binds the answer. */
const harmless = [
  "regarding points 2, 3, 4: everything is as it should be (the words are Croatian). Point 1 is corrected same as in attached PDF.",
  "Confirmo 5 y 7 (YES). La 12.5 6 ya va corregida en la hoja adjunta. Saludos",
  "Hi from Friday on there, 2, 3 and 4 are all YES.",
  "See attached revised S-101 by noon and S-104. 3 YES per customer.",
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
  ["behind a no with a sheet", 23],
  ["below both", 14],
  ["behind a yes beside a point to fix", 4],
] as const)("%s, at most %i wishes are told to nobody, all of the sheet or its slip", (frame, most) => {
  expect(untoldWishes(frame).length).toBeLessThanOrEqual(most);
});

import { expect, test } from "vitest";
import { splices, stillYes, unheardWishes } from "../../bench/splices.ts";

test("whatever binds or asks in a sentence that says yes leaves it to a person", () => {
  const all = [...splices(7, 0.02)];
  expect(all.length).toBeGreaterThan(1000);
  const wrong = all.filter((one) => stillYes(one).length > 0).map(({ words, line }) => ({ words, line }));
  // Both stand in the reason beside a plain yes, and neither takes it back.
  expect(wrong).toEqual([
    { words: "what", line: "4: yes, it is correct, it what is written like this in Spanish." },
    { words: "xq", line: "5 YES - owner confirmed spelling this xq morning." },
  ]);
});

test("a wish below, behind or before a yes leaves it to a person", () => {
  expect(unheardWishes()).toEqual([]);
});

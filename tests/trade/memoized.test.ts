import { expect, test } from "vitest";
import { memoized } from "../../src/trade/memoized.ts";

/** A function, and how often it was asked. */
function counted(): { of: (text: string) => number | undefined; asked: () => number } {
  let asked = 0;
  const of = memoized((text: string) => {
    asked += 1;
    return text === "" ? undefined : text.length;
  });
  return { of, asked: () => asked };
}

test("a text is looked at once, whatever comes of it", () => {
  const { of, asked } = counted();
  expect([of("SAUNA"), of(""), of("SAUNA"), of("")]).toEqual([5, undefined, 5, undefined]);
  expect(asked()).toBe(2);
});

test("what was asked about lately is kept beside thousands of others", () => {
  const { of, asked } = counted();
  for (let i = 0; i < 5000; i++) expect([of(`text ${i}`), of("SAUNA")]).toEqual([`text ${i}`.length, 5]);
  expect(asked()).toBe(5001);
});

test("old texts and long ones are not kept", () => {
  const { of, asked } = counted();
  of("SAUNA");
  for (let i = 0; i < 5000; i++) of(`text ${i}`);
  expect([of("SAUNA"), asked()]).toEqual([5, 5002]);
  const long = "S".repeat(501);
  expect([of(long), of(long), asked()]).toEqual([501, 501, 5004]);
});

import { expect, test } from "vitest";
import { isBoilerplate, mottoIn } from "../../../src/reading/reply/furniture.ts";

test.each([
  ["Reliable information, as ever", false],
  ["Our newsletter is nice to read", false],
  ["I saw it on LinkedIn", false],
  ["LinkedIn shows the lobby", false],
  ["LinkedIn", true],
  ["Follow us on LinkedIn", true],
  ["Please keep it confidential.", false],
  ["Sent from my iPhone", true],
  [`${"z ".repeat(994)}zunsubscribe`, true],
  [`${"z ".repeat(995)}unsubscribe`, false],
])("%j is boilerplate: %s", (words, is) => {
  expect(isBoilerplate(words)).toBe(is);
});

test("what bids somebody to do something is no motto", () => {
  expect(mottoIn("“Light is the first of all colours.”")).toBe("Light is the first of all colours.");
  expect(mottoIn("“Please make it bigger.”")).toBeUndefined();
});

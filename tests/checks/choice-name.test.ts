import { expect, test } from "vitest";
import { quotedChoice } from "../../src/checks/choice-name.ts";
import { catalogue } from "../make/config.ts";

test.each([
  ["", "(empty)"],
  ["OAT", "“Oat”"],
  ["INK", "“Ink”"],
  ["D4", "“Four buttons”"],
  ["Mauve", "“Mauve”"],
  [" ", "“ ”"],
])("“%s” is quoted as %s", (typed, quoted) => {
  expect(quotedChoice(typed, catalogue)).toBe(quoted);
});

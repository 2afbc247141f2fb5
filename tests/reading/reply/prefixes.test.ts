import { expect, test } from "vitest";
import { mayTurn } from "../../../src/reading/reply/other-tongues.ts";
import { isSubject, withoutPrefixes } from "../../../src/reading/reply/prefixes.ts";

const subject = "CONFIRM: order EL-100";

test.each([
  ["Re: CONFIRM: order EL-100", true],
  // Behind a prefix that is known the end may be cut off.
  ["RE[2]: FW: CONFIRM", true],
  ["[EXT] CONFIRM: order", true],
  ["[abcdefghijklmnopqrst] CONFIRM", true],
  ["[abcdefghijklmnopqrstu] CONFIRM", false],
  ["RE[123]: CONFIRM", false],
  ["Vá: CONFIRM: order EL-100", true],
  ["Vá[2]: Re: CONFIRM: order EL-100", true],
  [" Vá： CONFIRM: order EL-100", true],
  ["Vá: CONFIRM: order", false],
  ["Vá[222]: CONFIRM: order EL-100", false],
  ["abcdef: CONFIRM: order EL-100", true],
  ["abcdefg: CONFIRM: order EL-100", false],
  ["NIE: CONFIRM: order EL-100", false],
  ["order EL-100", false],
])("“%s” is our subject with what mail programs add: %s", (given, is) => {
  expect(isSubject(given, subject)).toBe(is);
});

test("prefixes are taken off as often as they stand there, and nothing else", () => {
  expect(withoutPrefixes(" Re: AW[3]: [EXTERNAL] Stations ")).toBe("Stations");
  expect(withoutPrefixes("Stations, re: lobby")).toBe("Stations, re: lobby");
});

test.each([
  ["Hallo", false],
  ["Hallo!", true],
  ["Hallo?", true],
  ["nie", true],
  ["not", true],
])("“%s” may turn what it stands beside: %s", (words, turns) => {
  expect(mayTurn(words)).toBe(turns);
});

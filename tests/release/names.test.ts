import * as fc from "fast-check";
import { expect, test } from "vitest";
import { safeName, safeNames } from "../../src/release/names.ts";

// Microsoft, "Naming Files, Paths, and Namespaces", from memory: reserved names, reserved characters, no blank or dot at
// the end. Linux takes 255 bytes a name (NAME_MAX).
test.each([
  ["S-104", "S-104"],
  ["CON", "_CON"],
  ["nul.pdf", "_nul.pdf"],
  ["COM1", "_COM1"],
  ["lpt¹", "_lpt¹"],
  ["AUX .txt", "_AUX .txt"],
  ["CONSOLE", "CONSOLE"],
  ["COM10", "COM10"],
  ['A/B\\C:D*E?F"G<H>I|J', "A-B-C-D-E-F-G-H-I-J"],
  ["../../etc/passwd", "etc-passwd"],
  ["..", "unnamed"],
  ["", "unnamed"],
  ["S-104. . .", "S-104"],
  ["a\u0000b\nc\u202Ed", "a-b-c-d"],
  ["-rf", "rf"],
  [".hidden", "hidden"],
  ["CAFE\u0301", "CAF\u00C9"],
  ["\uD800", "\uFFFD"],
])("%j becomes %j", (typed, name) => {
  expect(safeName(typed)).toBe(name);
});

test("names that any disk holds for one are told apart", () => {
  expect(safeNames(["S-1", "s-1", "S-1", "S/1", "CAF\u00C9", "CAFE\u0301", "\uFF33-1"])).toEqual([
    "S-1",
    "s-1 (2)",
    "S-1 (3)",
    "S-1 (4)",
    "CAF\u00C9",
    "CAF\u00C9 (2)",
    "\uFF33-1 (5)",
  ]);
});

test("whatever is typed, all names are safe, short and different", () => {
  const typed = fc.array(
    fc.oneof(
      fc.string({ unit: "binary", maxLength: 200 }),
      fc.string({ unit: "grapheme", maxLength: 200 }),
      fc.stringMatching(/^(?:con|NUL|Com[0-9]|lpt1|aux)[ .]{0,3}[a-z]?$/),
    ),
    { maxLength: 20 },
  );
  fc.assert(
    fc.property(typed, (texts) => {
      const names = safeNames(texts);
      expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(texts.length);
      for (const name of names) {
        expect(name).toBe(name.normalize("NFC"));
        expect(name).not.toMatch(/[<>:"/\\|?*\p{Cc}]|^[. -]|[. ]$|^$/u);
        expect(name).not.toMatch(/^(con|prn|aux|nul|com\d|lpt\d) *(\.|$)/i);
        expect(Buffer.byteLength(`${name}.json`)).toBeLessThan(200);
      }
    }),
  );
});

import { describe, expect, test } from "vitest";
import { headerEnd, headerLines } from "../../../src/reading/letter/header-lines.ts";

describe("the fields of a header", () => {
  test.each<[string, string, [string, string][]]>([
    [
      "end at a blank line",
      "A: 1\r\nB: 2\r\n\r\nC: 3",
      [
        ["a", "1"],
        ["b", "2"],
      ],
    ],
    ["end at a blank line of line feeds", "A: 1\n\nC: 3", [["a", "1"]]],
    ["end at the first of both", "A: 1\n\nB: 2\r\n\r\nC: 3", [["a", "1"]]],
    ["end at the first of both, the other way round", "A: 1\r\n\r\nB: 2\n\nC: 3", [["a", "1"]]],
    [
      "end with the letter",
      "A: 1\r\nB: 2",
      [
        ["a", "1"],
        ["b", "2"],
      ],
    ],
    [
      "go on in lines that begin with a blank",
      "A: 1\r\n 2\n\t3\r\nB: 4",
      [
        ["a", "1 2\t3"],
        ["b", "4"],
      ],
    ],
    ["may have blanks around the colon", "A : \t1 \r\n\r\n", [["a", "1"]]],
    ["may have a colon in them", "A: b:c", [["a", "b:c"]]],
    ["may be empty", "A:", [["a", ""]]],
    ["have a name of one letter at least", ": 1\r\nA: 2", [["a", "2"]]],
    ["have a colon", "nonsense\r\nA: 2", [["a", "2"]]],
    ["are none in a letter without a header", "\n\nA: 1", []],
  ])("%s", (_, text, fields) => {
    const bytes = Buffer.from(text);
    expect(headerLines(bytes).map(({ name, value }) => [name, value])).toEqual(fields);
  });
});

test.each([
  ["A: 1\r\n\r\nB", 4],
  ["A: 1\n\nB", 4],
  ["A: 1", 4],
  ["\n\nB", 0],
])("the header of %j ends at byte %i", (text, end) => {
  expect(headerEnd(Buffer.from(text))).toBe(end);
});

import { expect, test } from "vitest";
import { operatorsIn } from "../../../src/reading/pdf/content-operators.ts";

const read = (content: string): unknown[] =>
  [...operatorsIn(content)].map(({ name, operands }) => [name, ...operands]);

test.each<[string, string, unknown[]]>([
  [
    "numbers and names",
    "q 1 0 -.5 +2. 0 .25 cm /Im1 Do Q",
    [["q"], ["cm", 1, 0, -0.5, 2, 0, 0.25], ["Do", "/Im1"], ["Q"]],
  ],
  ["strings that nest, with escapes", String.raw`(a \(b\) (c)\051\n) Tj`, [["Tj", "(a (b) (c))\n"]]],
  ["strings in hexadecimal, with a digit missing", "<4F 4B5> Tj", [["Tj", "(OKP"]]],
  ["arrays", "[(A) -20 (B)] TJ", [["TJ", "(A", -20, "(B"]]],
  [
    "dictionaries",
    "/Tag <</MCID 3 /On true>> BDC EMC",
    [["BDC", "/Tag", "/MCID", 3, "/On", "true"], ["EMC"]],
  ],
  ["comments", "q % (not this) Do\nQ", [["q"], ["Q"]]],
  [
    "the bytes of an inline image",
    "BI /W 2 ID \u0000EI(x \u00ff\nEI Q",
    [["BI"], ["ID", "/W", 2], ["EI"], ["Q"]],
  ],
  ["what has no end", "(abc", []],
  ["what makes no sense", ") > ] q", [["q"]]],
])("%s", (_, content, operators) => {
  expect(read(content)).toEqual(operators);
});

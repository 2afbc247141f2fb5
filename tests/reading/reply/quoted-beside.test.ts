import { describe, expect, test } from "vitest";
import { plainly, read } from "./read-reply.ts";

describe("a greeting or a sheet that is quoted with our answer binds nothing", () => {
  test.each([
    "> Sehr geehrte Damen und Herren,",
    "> > Sehr geehrte Damen und Herren,",
    "> Bonjour madame",
    "> New sheet attached.",
    "> > New sheet attached, sorry.",
    "> The corrected sheet will follow",
    "> thanks for the updated form",
  ])("%s", (line) => {
    const quoted = "> 3. “SALONA” in row 1 of button 2 looks misspelt.";
    expect(read(`3 YES\n\n${quoted}\n${line}`)).toEqual(plainly([3]));
  });
});

test.each([
  ["a telephone's number below it", "3 YES\n555-0142", [3]],
  ["a word of our answer below it, which may be meant for it", "3 YES\nButton", []],
  ["a firm alone", "Goldfinch House\n555-0142", []],
])("%s: %j says yes to %j", (_, text, yes) => {
  expect(read(text)).toEqual({ yes, no: [], person: yes.length === 0 });
});

test("the rest are the questions that are left, where nothing else has to be mended", () => {
  expect(read("2 no, sheet attached. The rest is right", { others: 0 })).toEqual(plainly([3], [2]));
  expect(read("2 no, new sheet attached\nThe other is right", { others: 0 })).toEqual(plainly([3], [2]));
});

import { describe, expect, test } from "vitest";
import { asking, mending, misspelt, said } from "./read-clauses.ts";

describe("the last one of all is known by its number", () => {
  test.each([
    ["All fine except the last one", { 2: true, 3: false }],
    ["Both fine except the last", { 2: true, 3: false }],
    ["That last one is right, 2 is a typo", { 2: false, 3: true }],
    ["The very last question is right, 2 is a typo", { 2: false, 3: true }],
    ["All fine but the last, sheet attached", { 2: true, 3: false }],
    ["All fine except the last one in gold", undefined],
  ])("%s", (line, is) => {
    expect(said(line)).toEqual(is);
  });

  test("beside points to mend only where one is named before", () => {
    expect(said("The last one is right", mending)).toBeUndefined();
    expect(said("1 corrected, the last one is right", mending)).toEqual({ 3: true });
  });
});

describe("short forms are spelled out", () => {
  test.each<[string, Record<number, boolean>]>([
    ["Everything's right", { 2: true, 3: true }],
    ["Leave em both like that", { 2: true, 3: true }],
    ["2 is right :)", { 2: true }],
    ["2. right, 3. wrong", { 2: true, 3: false }],
    ["2 n, 3 y", { 2: false, 3: true }],
    ["2 y 3 n", { 2: true, 3: false }],
    ["2 is right, thats the name of the bar", { 2: true }],
    ["2 yes that is the name of the bar", { 2: true }],
    ["2 is right whats on the doors", { 2: true }],
    ["We'll send the sheet for 2, 3 is right", { 2: false, 3: true }],
    ["Ill send the sheet for 2, 3 is right", { 2: false, 3: true }],
  ])("%s", (line, is) => {
    expect(said(line)).toEqual(is);
  });

  test("of “because”, and of what is left", () => {
    const comdor = { ...asking(misspelt("COMDOR", "CONDOR")), others: [] };
    expect(said("2 is right cos it wouldnt fit", comdor)).toEqual({ 2: true });
    expect(said("The rest's fine", { answered: new Set([2]) })).toEqual({ 3: true });
  });
});

describe("lights are of the word in question, or of another", () => {
  test.each<[string, string, boolean]>([
    ["it is our cove lights", "coves", true],
    ["it is the cove lamps", "coves", true],
    ["these are the Cove lights", "coves", true],
    ["these are the coves lights", "cove", true],
    ["it is the salon lights", "salona", false],
  ])("“%s” where “%s” is in question: %s", (why, word, is) => {
    expect(said(`2 is right, ${why}`, { inQuestion: [word] })).toEqual(is ? { 2: true } : undefined);
  });
});

import { describe, expect, test } from "vitest";
import { plainly, read } from "./read-reply.ts";

/** An answer with two questions, and two notes about which nothing is to be done. */
const answer = [
  "CONFIRM: questions to answer.",
  "",
  "PLEASE CONFIRM",
  "  2. “SALONA” in row 1 of button 1 looks misspelt.",
  "  3. “LOBBIE” in row 1 of button 2 looks misspelt.",
  "",
  "WORTH KNOWING",
  "  4. “SPORCH” in row 1 of button 3 is in no list of words.",
  "  5. “KEPSAKE” in row 1 of button 4 is in no list of words.",
].join("\n");
const noted = { answer, others: 0 };

describe("who says that a note is right says nothing that anybody must read", () => {
  test.each([
    "2 YES\n3 YES\n4 is right",
    "2 YES\n3 YES\n4 YES",
    "2 YES\n3 YES\n4 and 5 YES",
    "2, 3, 4 and 5 yes",
    "2 YES\n3 YES\nSPORCH is right",
    "2 YES, 3 YES. SPORCH is right. KEPSAKE is right.",
    "Both YES\nSPORCH is right",
    "Both YES\n  SPORCH is right",
    "Both YES.\nSporch is correct.",
    "Both YES. SPORCH is right.",
    "Both YES. 4 is right.",
    "Both YES. 4 is right. 5 is right.",
  ])("beside answers: %j", (text) => {
    expect(read(text, noted)).toEqual(plainly([2, 3]));
  });

  test.each(["4 is right", "4 YES\n5 YES", "Hello, SPORCH is right.", "SPORCH is right. KEPSAKE is right."])(
    "alone: %j",
    (text) => {
      expect(read(text, noted)).toEqual(plainly([]));
      expect(read(text, { ...noted, open: [] })).toEqual(plainly([]));
    },
  );
});

describe("a person reads", () => {
  test.each([
    ["a note that is wrong", "2 YES\n3 YES\n4 NO"],
    ["one of two notes that is wrong", "2 YES\n3 YES\n4 is right and 5 is wrong"],
    ["a wish about a note", "2 YES\n3 YES\n4: make it red"],
  ])("%s, beside answers that count", (_, text) => {
    expect(read(text, noted)).toEqual({ yes: [2, 3], no: [], person: true });
  });

  test.each([
    ["a note that is wrong, named by its word", "2 YES\n3 YES\nSPORCH is wrong"],
    ["a wish below it", "2 YES\n3 YES\nSPORCH is right\nmake it red"],
    ["a wish behind it", "2 YES\n3 YES\nSPORCH is right. Make it red."],
    ["what is quoted of it", "Both YES\n\n> 4 is right"],
    ["a wish that is quoted below it", "Both YES. SPORCH is right.\n\n> make it red"],
    ["a condition", "Both YES. SPORCH is right if he says so."],
  ])("%s, and no answer counts", (_, text) => {
    expect(read(text, noted)).toEqual({ yes: [], no: [], person: true });
  });

  test("a wish beside a note, where nothing is asked", () => {
    expect(read("SPORCH is right, make it red", { ...noted, open: [] }).person).toBe(true);
  });
});

test("a note that is wrong needs nobody where sheets came with the reply", () => {
  expect(read("2 YES\n3 YES\n4 NO", { ...noted, bringsSheets: true })).toEqual(plainly([2, 3]));
  expect(read("2 YES\n3 YES\n4 is wrong", { ...noted, bringsSheets: true })).toEqual(plainly([2, 3]));
});

test("a sentence of 160 characters may be about a note, and a longer one is read with the answers", () => {
  const right = (length: number): string => `Both YES\nSPORCH${" ".repeat(length - 14)}is right`;
  expect(read(right(160), noted)).toEqual(plainly([2, 3]));
  expect(read(right(161), noted)).toEqual({ yes: [], no: [], person: true });
});

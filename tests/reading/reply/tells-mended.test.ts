import { describe, expect, test } from "vitest";
import { tellsMended } from "../../../src/reading/reply/tells-mended.ts";
import { readTo } from "./read-letters.ts";
import { plainly } from "./read-reply.ts";

const answer = [
  "X-1.pdf",
  "  1. “STABELS” in row 1 of button 1 looks misspelt.",
  "     If you mean STABLES, send the sheet again.",
  "  2. “WAITNG” in row 1 of button 2 looks misspelt.",
  "     If you mean WAITING or WADING, send the sheet again.",
].join("\n");

/** Whether a sentence only tells what was corrected, beside a sheet X-1 with STABLES and WAITING. */
const isTold = (sentence: string): boolean =>
  tellsMended(sentence, {
    answer,
    inQuestion: ["stabels", "waitng"],
    isOnSheets: (words) => /^(?:stables|waiting|x-1)$/iu.test(words),
  });

describe("what a sheet that came bears out", () => {
  test.each([
    "Both of those are mistakes from when I retyped the schedule.",
    "WAITNG is our typo and is fixed on the attached X-1.",
    "Typo on our part, it should read WAITING.",
    "Waitng has been corrected to WAITING on the attached sheet.",
    "I corrected no. 2 to WAITING and attach the sheet.",
    "It is fixed on the attached X-1, please see the new sheet.",
    "Stables and waiting were both misspelt, sorry about that.",
  ])("says nothing more: %s", (sentence) => {
    expect(isTold(sentence)).toBe(true);
  });

  test.each([
    // Words that stand on no sheet.
    "Typo on our part, it should read WADING.",
    "I corrected WAITNG to WATTING and attach the sheet.",
    "The corrected X-2 is attached.",
    "The typo is fixed on the attached X-2.",
    // Slips that nobody asked about.
    "The plate legend is wrong too, sheet attached.",
    "The finish was also a mistake.",
    // What is asked for.
    "It should be corrected.",
    "It should read WAITING on both sheets.",
    "That name is wrong too, it should read WAITING.",
    "Have it corrected.",
    "It should read WAITING in two rows, bold.",
    "Please correct it to WAITING.",
    "Corrected sheet attached, please add one more.",
    "Corrected sheet attached, change the finish too.",
    "Corrected sheet attached but do not cut it.",
    "New sheet attached, the others stay as they are.",
    "New sheet attached once the owner has read it.",
    "All three sheets are attached.",
    "Is the corrected sheet attached?",
    "STABLES CORRECTED",
    // What tells of no sheet and of no slip.
    "It is the word.",
  ])("says more: %s", (sentence) => {
    expect(isTold(sentence)).toBe(false);
  });
});

describe("what tells of a slip beside a yes", () => {
  test.each<[string, number[], number[]]>([
    ["2 NO\nTypo on our part, it should read STRETCH.\n1 YES\nSheet attached", [1], [2]],
    ["STRECH is our typo and is fixed on the attached G-1. HIIT is right.", [1], [2]],
    ["STRECH was mistyped when we typed the list.\n1 YES\nSheet attached", [1], []],
  ])("may be about another point: %s", (text, yes, no) => {
    expect(readTo("L11", text, ["STRETCH", "G-1"])).toEqual(plainly(yes, no));
  });

  test.each([
    "1 YES\nTypo on our part, it is fixed on the attached sheet.",
    "Typo on our part, it is fixed on the attached sheet.\n1 YES",
    "1 yes, it is a typo, fixed on the attached sheet. 2 no",
    "1 yes\n2 no\nBoth were mistyped, they are fixed on the attached sheet.",
    "HIIT is our typo, fixed on the attached sheet.\n1 YES\n2 NO",
    "The mistake in no. 1 is fixed on the attached sheet.\n1 YES\n2 NO",
  ])("and may not be: %s", (text) => {
    expect(readTo("L11", text)).toMatchObject({ yes: [], person: true });
  });
});

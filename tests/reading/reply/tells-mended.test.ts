import { describe, expect, test } from "vitest";
import { tellsMended } from "../../../src/reading/reply/tells-mended.ts";

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

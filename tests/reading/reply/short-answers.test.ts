import { describe, expect, test } from "vitest";
import { readTo } from "./read-letters.ts";
import { plainly } from "./read-reply.ts";

/*
 * Answers as busy people type them, each beside its near misses. The words are our own.
 */

describe("short answers to two questions", () => {
  test.each<[string, number[]]>([
    ["1 YES\n2 YES\n\nOK to proceed.", [1, 2]],
    ["1 YES\n2 YES\n\nOK to engrave", [1, 2]],
    ["All correct, please release.", [1, 2]],
    ["1 yes\n2 yes\n👍", [1, 2]],
    ["1 n 2 both yes thx", [1, 2]],
    ["Architect confirms 1 and 2.", [1, 2]],
    ["Owner signed off on both.", [1, 2]],
    ["The client approved both spellings.", [1, 2]],
    ["Confirmed both as shown", [1, 2]],
    ["Please proceed with both as shown.", [1, 2]],
    ["No changes needed.", [1, 2]],
    ["Leave as is.", [1, 2]],
    ["as shown please", [1, 2]],
    ["Legends are correct as written.", [1, 2]],
    ["In reply to your letter about our order X-4410:\n\n1 YES\n2 YES", [1, 2]],
    ["1 YES\n2 YES\n\nAny questions call me.", [1, 2]],
    ["1 yes its a class 2 yes spoke with the owner this morning", [1, 2]],
    ["Hi, just seeing this. 1 YES 2 YES", [1, 2]],
    ["1 YES, matches what's on the sheet.\n2 YES, correct as drawn up.", [1, 2]],
  ])("%s", (text, yes) => {
    expect(readTo("L11", text)).toEqual(plainly(yes));
  });

  test.each([
    "1 YES\n2 YES\n\nOK to proceed once the owner agrees.",
    "1 YES\n2 YES\n\nOK to proceed with S-101 only.",
    "1 YES\n2 YES\n\nNot ok to proceed.",
    "1 YES\n2 YES. Please release only S-101.",
    "OK to proceed",
    "👍",
    "2 n 1 yes",
    "Architect approved 1 but not 2.",
    "Architect approved both, with changes.",
    "Owner signed off on all but 2.",
    "The owner approved both sheets.",
    "Please proceed with all as shown on the new drawing",
    "No changes yet.",
    "No changes except 2",
    "As is, but bold",
    "leave as is for now",
    "He wants it like that",
    "In reply to your letter about our order FC-32:\n\n1 YES\n2 YES",
    "1 YES. See you in court. 2 YES",
    "1 yes family name 2 yes if it fits",
    "1 yes its for exam 2 yes",
    "1 yes wrong 2 yes",
    "1 yes bold 2 yes",
    "1 yes it matches the old drawings 2 yes",
    "1 yes 2 no typo",
  ])("and for a person: %s", (text) => {
    expect(readTo("L11", text)).toMatchObject({ person: true });
  });
});

describe("short answers to one question", () => {
  test.each<[string, number[], number[]]>([
    ["He wants it that way.", [1], []],
    ["She wants it spelled like that. 1 YES", [1], []],
    ["My bad, corrected sheet attached", [], [1]],
    ["Should be WATCH. See attached.", [], [1]],
    ["1 NO typo. New sheet attached.", [], [1]],
  ])("%s", (text, yes, no) => {
    expect(readTo("L02", text)).toEqual(plainly(yes, no));
  });

  test.each([
    "He wants it that way but bold",
    "She wants it that way now",
    "My bad, corrected sheet attached. Also change the finish to Ink.",
    "Should be WATCH.",
  ])("and for a person: %s", (text) => {
    expect(readTo("L02", text)).toMatchObject({ person: true });
  });
});

describe("short answers beside what is mended", () => {
  test.each<[string, string, number[], number[]]>([
    ["L13", "2 yes, working on 1", [2], []],
    ["L13", "2 yes. plate sheet tomorrow when im back in the office", [2], []],
    [
      "L01",
      "1 fixed, sheet attached. 2 yes 3 yes, plate and device are supposed to be different",
      [2, 3],
      [],
    ],
    ["L27", "1 phone number corrected, 2 and 3 typos corrected. Sheets attached.", [], [2, 3]],
    ["L08", "1, 2 and 3 are German. 4 is a typo, corrected sheet attached.", [1, 2, 3], [4]],
    ["L06", "1 NO, make them all caps. New sheet attached.", [], [1]],
    ["L06", "yes it's meant to be mixed", [1], []],
    ["L09", "We need 4. Sheets for all four attached.", [], [1]],
    ["L14", "1 YES, that one is meant to be Chalk. 2 YES", [1, 2], []],
    ["L29", "1 yes both the same on purpose 2 no TIMER sheet attached", [1], [2]],
    ["L23", "1 YES. The others are right.", [1], []],
    ["L31", "1 no 2 no 3 yes tack room", [3], [1, 2]],
    ["L12", "All typos except 4, which is deliberate. Amended sheet attached.", [4], [1, 2, 3]],
    [
      "L12",
      "Corrected sheet attached, spellings at 1, 2 and 3 now put right. 4 is intentional.",
      [4],
      [1, 2, 3],
    ],
    ["L12", "1, 2 and 3 no, sheet attached. 4 yes, both buttons work the lounge", [4], [1, 2, 3]],
    ["L20", "Correct, the positions are exchanged, good catch. Both sheets attached.", [], [1]],
    ["L20", "1 NO. They got swapped in CAD. Both sheets attached.", [], [1]],
    ["L20", "The positions are NOT exchanged, please proceed as submitted.", [1], []],
    ["L25", "1 no needs the dots on it, new one coming\n2 yes", [2], [1]],
    ["L07", "3 no LOBBY. 4 yes cove lights. Redoing the lobby one with shorter names", [4], [3]],
    ["L03", "Yes on 1 and 2. 3 no. I will have my daughter make up a new sheet.", [1, 2], [3]],
  ])("%s: %s", (letter, text, yes, no) => {
    expect(readTo(letter, text, ["TIMER"])).toEqual(plainly(yes, no));
  });

  test.each<[string, string]>([
    ["L08", "1, 2 and 3 are German."],
    ["L08", "1 and 2 are German, 3 is a typo but leave it"],
    ["L01", "3 device changed to Ink"],
    ["L01", "1 shortened. 2 yes. 3 device changed to Ink. Sheets attached."],
    ["L19", "2 YES. Lettering changed to gold."],
    ["L06", "1 YES, make them all caps"],
    ["L06", "1 YES rooms in caps and scenes in lower case please"],
    ["L09", "We need 4."],
    ["L14", "1 YES, that one is meant to be Slate. 2 YES"],
    ["L04", "2 YES. The others are right."],
    ["L23", "1 YES. The others are wrong."],
    ["L31", "1 no 2 no 3 yes TACK ROOM"],
    ["L31", "1 no 2 no 3 yes tack & feed"],
    ["L31", "1 no 2 no 3 yes brass tack"],
    ["L31", "1 no 2 no 3 yes tack italic"],
    ["L12", "All typos except 4, which is deliberate."],
    ["L12", "All typos except 4, which is urgent. Amended sheet attached."],
    ["L12", "1, 2 and 3 put right with gold lettering, sheet attached. 4 yes"],
    ["L12", "1, 2 and 3 no, sheet attached. 4 yes, both buttons work the lounge and should be red"],
    ["L20", "Correct, the positions are exchanged."],
    ["L20", "Correct, the positions are exchanged. Swap them please. Both sheets attached."],
    ["L20", "The positions are not exchanged yet."],
    ["L25", "1 no needs bigger letters, new one coming\n2 yes"],
    ["L25", "1 yes needs the dots on it\n2 yes"],
    ["L07", "3 no. 4 yes. Redoing the lobby one in Coal"],
    ["L03", "Yes on 1 and 2. 3 no. I will have my daughter make up a new sheet with gold letters."],
  ])("and for a person: %s: %s", (letter, text) => {
    expect(readTo(letter, text)).toMatchObject({ person: true });
  });
});

import { describe, expect, test } from "vitest";
import { read } from "./read-reply.ts";

describe("what is said of a point that comes again anyway leaves the answers beside it as they are", () => {
  test.each([
    ["1. Legend has been shortened to fit. Revised S-101 attached.\n2. Yes\n3. Yes", [2, 3], []],
    ["1 – aye, redone and attached\n2 YES\n3 YES", [2, 3], []],
    ["Item 1 - Amended. Pls refer to attached S-201 Rev 1.\nItem 2 - Yes.\nItem 3 - Yes.", [2, 3], []],
    ["1. The fitter will redo it and send it over.\n2. YES\n3. YES", [2, 3], []],
    ["1: new sheet attached with the ship-to filled in\n2 yes\n3 yes", [2, 3], []],
    ["2. Yes\n3. No. It should read Terrace. Corrected sheet attached.", [2], [3]],
    ["2 yes\n3 NO, superseded by rev P04, which is attached again here", [2], [3]],
    ["2 y\n3 n, new one coming", [2], [3]],
    ["2 YES\nFor item 3 kindly find attached the corrected sheet.", [2], [3]],
    ["For 1, the new sheet is attached. 2 yes, 3 yes.", [2, 3], []],
    ["Number 2 yes. Number 3 no, typo on our side. New sheet attached.", [2], [3]],
  ])("%j", (text, yes, no) => {
    expect(read(text)).toEqual({ yes, no, person: false });
  });
});

describe("what reaches beyond such a point is for a person", () => {
  test.each([
    "1. New sheet attached, and brass for the others\n2 yes\n3 yes",
    "1. Shortened, attached. Call me before you start.\n2 yes\n3 yes",
    "1 not shortened, it fits\n2 yes\n3 yes",
    "1. Leave it, the sheet is attached as it was\n2 yes\n3 yes",
    "1. New sheet attached. Why was it too long?\n2 yes\n3 yes",
    "1. Attached. The owner prefers the dark version.\n2 yes\n3 yes",
    "1. Attached. Add a pilot light.\n2 yes\n3 yes",
    "1. Fixed. Three of them.\n2 yes\n3 yes",
    "1. New sheet attached with deeper letters\n2 yes\n3 yes",
    "1. New sheet attached. The hall plate goes in the kitchen now.\n2 yes\n3 yes",
    "1. New sheet attached, the wife fancies something curly\n2 yes\n3 yes",
    "2 yes\n3 NO, new sheet attached. The inspector has yet to sign.",
    "2 yes\n3 NO, it should be TERRACE",
    "2 yes\n3 NO, new sheet attached, and cancel the other",
    "2 yes\n3 NO, new sheet attached if the owner agrees",
  ])("%j", (text) => {
    expect(read(text)).toMatchObject({ person: true });
  });
});

describe("a reason behind a yes at its number is heard", () => {
  test.each([
    ["2 YES, it's Welsh\n3 YES", [2, 3]],
    ["2. Yes - confirmed against the room schedule\n3. Yes, as per approved drawing", [2, 3]],
    ["2 yes, it's the client's surname\n3 yes, that's how he wants it", [2, 3]],
    ["2 YES, I did ask twice!\n3 YES :-)", [2, 3]],
  ])("%j", (text, yes) => {
    expect(read(text)).toEqual({ yes, no: [], person: false });
  });
});

describe("a yes is none beside what may take something of it back", () => {
  test.each([
    "2 yes?",
    "2 yes-ish",
    "2 yes, you are right",
    "2 YES, once the owner signs",
    "2 YES, confirmed with the inspector tomorrow",
    "2 YES, it is brass now",
    "2 YES, it is the second one",
    "2 YES, it is SALOON",
    "2 YES, that is what they wanted before",
    "2 YES, these are to go in black",
    "2 YES, two of them",
    "2 YES, but smaller",
    "2 YES, it will change",
    "2 YES, call me",
    "2 YES, add a star",
    "2 YES, it's Saloona",
  ])("%j", (text) => {
    expect(read(text)).toMatchObject({ yes: [], person: true });
  });
});

describe("who introduces answers says nothing", () => {
  test.each([
    "Replies inline.",
    "Please see our responses below:",
    "See my answers in red below.",
    "With reference to trailing mail, please find below our confirmation.",
    "Per Mark:",
    "With regard to the questions:",
  ])("%j", (words) => {
    expect(read(`${words}\n2 YES\n3 YES`)).toEqual({ yes: [2, 3], no: [], person: false });
    expect(read(`${words.replace(/[.:]$/u, "")} and hold the order.\n2 YES\n3 YES`)).toMatchObject({
      person: true,
    });
  });
});

import { describe, expect, test } from "vitest";
import { finishNotThere, wordsNotThere } from "../../../src/reading/reply/promised-words.ts";
import { alone } from "../../make/came.ts";
import { catalogue } from "../../make/config.ts";
import { aloneDevice } from "../../make/sample.ts";

const sheets = [alone("A-1", ["MAIN HALL", "FOYER"], "DEN"), alone("A-2", ["SALON", "BOARD ROOM"])];

describe("what shall stand on a sheet", () => {
  test.each([
    "2 NO, should be SALON, sheet attached.",
    "2 NO, should be Salon, sheet attached.",
    "2 no, it should say “BOARD ROOM” on two rows",
    "2 no. The correct word is FOYER, 3 no, it must be DEN",
    "2 NO - now reads MAIN HALL",
    "2 NO, changed to SALON now",
    "2 NO SHOULD BE SALON SHEET ATTACHED",
    "2 NO, sheet attached. It should be all right now.",
    "2 NO, now I see it, sheet attached",
    "SALOON was wrong",
    "2 NO, new sheet attached with MAIN HALL and FOYER",
    "2 NO - Den, see the PDF",
  ])("stands there: %j", (line) => {
    expect(wordsNotThere(line, sheets)).toBeUndefined();
  });

  test.each([
    ["2 NO, should be SALOON, sheet attached.", "SALOON"],
    ["2 NO, should be Saloon.", "Saloon"],
    ["2 no, it should say “BOARD ROOMS”", "BOARD ROOMS"],
    ["2 no, it ought to read GREAT HALL and 3 should be DEN", "GREAT HALL"],
    ["2 should be DEN and 3 should be LOUNGE", "LOUNGE"],
    ["2 NO - now MAIN DEN SALON", "MAIN DEN SALON"],
    ["2 NO, new sheet attached with MAIN HALL and SALOON", "SALOON"],
    ["2 no, HUDDLE. hall.pdf attached", "HUDDLE"],
    ["2 NO. Client has gone off it, he wants SNUG instead.", "SNUG"],
    ["2 NO, the room is now to be called Ballroom", "Ballroom"],
    // Each of the words stands on a sheet, and all of them on none.
    ["2 NO, the right spelling is MAIN SALON", "MAIN SALON"],
    ["2 NO SHOULD BE SALOON SHEET ATTACHED", "SALOON SHEET ATTACHED"],
  ])("does not: %j", (line, words) => {
    expect(wordsNotThere(line, sheets)).toBe(words);
  });
});

describe("what finish a sheet shall have", () => {
  const came = [aloneDevice({ finish: "OAT", lettering: "MLK" }), alone("A-3", ["INK"])];
  test.each([
    "3 NO, changed to Oat, sheet attached",
    "3 should be oat",
    "3 changed to Milk",
    "3 NO, was Slate",
    // A legend may read like a finish.
    "3 NO, should be INK",
  ])("it has: %j", (line) => {
    expect(finishNotThere(line, came, catalogue)).toBeUndefined();
  });

  test.each([
    ["3 NO, changed to slate, sheet attached", "Slate"],
    ["2 should be Oat and 3 should be Slate", "Slate"],
  ])("it has not: %j", (line, name) => {
    expect(finishNotThere(line, came, catalogue)).toBe(name);
  });
});

import { describe, expect, test } from "vitest";
import { asking, finish, misspelt, said, twice } from "./read-clauses.ts";
import { readTo } from "./read-letters.ts";
import { plainly } from "./read-reply.ts";

describe("what stands behind a yes tells only why", () => {
  test.each<[string, string, number[]]>([
    [
      "L01",
      "New sheet for 1 attached.\n2 yes its the name of the bar, two Gs\n3 yes, owner wants the contrast",
      [2, 3],
    ],
    ["L01", "1 sheet attached\n2 YES\n3 YES, plum on barley is what the designer asked for", [2, 3]],
    ["L02", "CWTCH is right, definitely not WATCH!", [1]],
    ["L02", "1 yes, C-W-T-C-H", [1]],
    ["L02", "1 yes, pronounced kutch", [1]],
    ["L02", "1 yes it's what everyone here calls the snug", [1]],
    [
      "L03",
      "1 and 2 are YES (church words).\n3 YES one for each side of the aisle, the verger knows which is which",
      [1, 2, 3],
    ],
    [
      "L05",
      "mezz is right, everyone on the job calls it that. lamps is right too, 2 is on and 4 is the dimmed scene.",
      [1, 2],
    ],
    ["L05", "1 yes, short for mezzanine\n2 yes, 2-way from both ends of the room", [1, 2]],
    ["L06", "1 YES. Library has it that way on all their signs", [1]],
    ["L06", "Yes, the mix of capitals and small letters is intended.", [1]],
    ["L09", '1 YES, just the one wanted. The "typ of 4" is the mark off the architect\'s drawing', [1]],
    [
      "L11",
      "Yes to both. STRECH is the name of the class, its on all their posters with no second T",
      [1, 2],
    ],
    ["L14", "1 YES, the east wall is white.\n2 YES, algae tanks in the science block", [1, 2]],
    ["L14", "1 YES - E-12 is in the kitchen, white tile\n2 YES", [1, 2]],
    ["L15", "all 3 are ok as typed, FOYR is short on purpose it wouldnt fit otherwise", [1, 2, 3]],
    ["L16", "2 to 4 yes, that's what they call the rooms. Sheet for 1 attached.", [2, 3, 4]],
    ["L17", "1 YES\n2. Yes, CORRIDOR wouldn't fit at the size they wanted", [1, 2]],
    ["L18", "Yes that is fine as it is thank you. SENCO is correct too.", [1]],
    ["L18", "1. yes\n2. yes", [1]],
    ["L20", "1 YES, positions are as drawn", [1]],
    ["L20", "Yes, the scene names on pos 2 are lighting scenes even if they sound like blinds.", [1]],
    ["L21", "1 YES\n\nExam 2 has two doors with a station at each one.", [1]],
    ["L24", "1. Yes, there are two rows of lights in the nave.\n2. YES", [1, 2]],
    ["L25", "Both are as intended, so yes and yes.", [1, 2]],
    ["L26", "1 YES it's LX one, theatre talk for electrics\n2 YES", [1, 2]],
    ["L26", "1 YES, lighting circuit 1\n2 YES", [1, 2]],
    ["L28", "1 YES. Just need the one, that’s how the mark reads on the drawings.", [1]],
    ["L29", "1. Yes, one at each end of the hall\n2. yes, it's what we always put", [1, 2]],
  ])("%s: %s", (letter, text, yes) => {
    expect(readTo(letter, text)).toEqual(plainly(yes));
  });

  test.each<[string, string]>([
    ["L01", "New sheet for 1 attached.\n2 YES, Snugg is how the landlord should spell it\n3 YES"],
    ["L01", "1 sheet attached\n2 yes, with one G\n3 yes"],
    ["L01", "1 sheet attached\n2 yes, no second G\n3 yes"],
    ["L01", "1 sheet attached\n2 yes, it is the old name of the bar\n3 yes"],
    ["L01", "1 sheet attached\n2 yes, that is what the new owner calls it\n3 yes"],
    ["L01", "1 sheet attached\n2 yes, short for snuggery so write it out\n3 yes"],
    ["L01", "1 sheet attached\n2 yes\n3 yes, barley is what the designer asked for"],
    ["L01", "1 sheet attached\n2 yes\n3 yes, owner wants the plate white too"],
    ["L01", "1 sheet attached\n2 yes\n3 yes, to match the plate"],
    ["L01", "1 sheet attached\n2 yes, the wall is white\n3 yes"],
    ["L02", "1 yes, C-W-T-S-H"],
    ["L02", "1 yes, not wales"],
    ["L02", "1 yes, pronounced kutch probably"],
    ["L02", "1 yes, it is said COOCH"],
    ["L02", "1 YES, to be checked by the client"],
    ["L02", "1 yes, the owner has approved it in white"],
    ["L03", "1 yes\n2 yes\n3 yes, one each for hall and den"],
    ["L03", "1 yes\n2 yes\n3 yes, button 4 is the dimmed scene"],
    ["L03", "1 yes\n2 yes, one each side\n3 yes"],
    ["L05", "1 yes\n2 yes, both buttons should run the same lamps"],
    ["L06", "1 YES, match the existing switches"],
    ["L06", "The capitals are wrong. 1 YES"],
    ["L06", "Capitals as typed on the drawing"],
    ["L09", "1 YES, just one of each"],
    ["L09", "1 YES, the typ of 5 is the mark off the drawing"],
    ["L11", "Both right. Strech is how the pending gym spells it on their posters."],
    ["L14", "1 YES, the east wall plate is white\n2 YES"],
    ["L14", "1 YES, slate is what was asked for\n2 YES"],
    ["L14", "1 YES Chalk for all\n2 YES"],
    ["L16", "1 sheet attached\n2 yes\n3 yes\n4 yes, no room for the other O but squeeze it in"],
  ])("and anything else is for a person: %s: %s", (letter, text) => {
    expect(readTo(letter, text)).toMatchObject({ person: true });
  });
});

describe("what words in question are, ahead of an answer", () => {
  test.each<[string, string, number[], number[]]>([
    [
      "L15",
      "Krebbs is the name of the hall and tabs are the stage curtains, so both right. 3 NO, new sheet attached.",
      [1, 2],
      [3],
    ],
    [
      "L15",
      "Krebbs is the name of the hall and tabs are the stage curtains. 3 NO, new sheet attached.",
      [1, 2],
      [3],
    ],
    ["L08", "1, 2 and 3 are German. 4 is a typo, corrected sheet attached.", [1, 2, 3], [4]],
    [
      "L16",
      "hudl and scrum are whats on the doors. boardrm is short cos it wouldnt fit. so yes x3. Sheet for 1 attached.",
      [2, 3, 4],
      [],
    ],
    ["L08", "These are all German and all correct except 4. New sheet attached.", [1, 2, 3], [4]],
    ["L08", "All German so all four yes", [1, 2, 3, 4], []],
    [
      "L10",
      "The words are Spanish, so 2 YES and 3 YES. The last one is my typo, so 4 NO. Amended sheet attached.",
      [2, 3],
      [4],
    ],
    [
      "L16",
      "Sheet for 1 attached. The legends are all three correct, the owner chose the abbreviations himself.",
      [2, 3, 4],
      [],
    ],
    ["L01", "Sheet for 1 attached. Snugg with two g's is right. Plum is right too.", [2, 3], []],
  ])("goes with it: %s: %s", (letter, text, yes, no) => {
    expect(readTo(letter, text)).toEqual(plainly(yes, no));
  });

  test.each<[string, string]>([
    ["L01", "1 sheet attached\n2 is the name of the bar so it should be in capitals\n3 yes"],
    ["L15", "Krebbs is the name of the hall with one B, 2 yes. 3 NO, new sheet attached."],
    ["L10", "1 sheet attached. Salita and terraza are Spanish, comdor too"],
    ["L15", "Krebbs is the name of the hall and tabs are the stage curtains."],
    ["L14", "The names are correct."],
    ["L01", "1 sheet attached. The names are correct."],
    ["L01", "1 sheet attached\n2 yes\nBarley is right"],
    ["L14", "Chalk is right for all of them. 2 YES"],
  ])("and is none: %s: %s", (letter, text) => {
    expect(readTo(letter, text)).toMatchObject({ person: true });
  });
});

describe("what is said of points that are no questions", () => {
  test.each<[string, string, number[], number[]]>([
    ["L23", "1 NO - corrected S-1 attached.\n2 and 3 are right.", [], [1]],
    ["L23", "1 NO sheet attached. 2 and 3 YES", [], [1]],
    ["L23", "1 YES\nSTERI is right, CBCT is right", [1], []],
    [
      "L32",
      "1 - ticked leave plain\n2 - split over two rows\n3 - NO, fixed\n4 - NO, fixed\n\nM-1 and M-2 attached",
      [],
      [3, 4],
    ],
    ["L19", "1 changed to Cream, sheet attached\n2 YES", [2], []],
    ["L31", "3 YES\n\nI am sending a new sheet for the other two this evening.", [3], [1, 2]],
  ])("%s: %s", (letter, text, yes, no) => {
    expect(readTo(letter, text)).toEqual({ yes, no, person: false });
  });

  test.each<[string, string]>([
    ["L23", "1 YES\n2 NO"],
    ["L23", "1 YES\n2 should be STERILIZER"],
    ["L23", "1 YES\n2 and 3 are right, make them bold"],
    ["L18", "Yes and no."],
    ["L25", "Yes and no."],
    ["L31", "3 YES, the other two red"],
    ["L32", "1 ticked leave plain for the left wall too\n3 YES 4 YES"],
  ])("%s: a person reads %s", (letter, text) => {
    expect(readTo(letter, text)).toMatchObject({ person: true });
  });
});

describe("of one word in question a reason tells only why, or more", () => {
  const [cwtch, condor, coves] = [
    misspelt("CWTCH", "WATCH"),
    misspelt("COMDOR", "CONDOR"),
    misspelt("COVES", "COVERS"),
  ];
  test.each([
    [cwtch, "church word for the porch", true],
    [cwtch, "a church word for a bet", false],
    [cwtch, "a church word for gold", false],
    [cwtch, "the trade word for a new plate", false],
    [cwtch, "a room name", true],
    [cwtch, "pronounced kutch", true],
    [cwtch, "pronounced KU", false],
    [cwtch, "said koo-tch", true],
    [cwtch, "said kutch", false],
    [cwtch, "sounds like Kutch", true],
    [cwtch, "as in the hug", true],
    [cwtch, "as in brass", false],
    [cwtch, "as in HUG", false],
    [cwtch, "as in HU", false],
    [cwtch, "as in huG", true],
    [condor, "not condor", true],
    [condor, "not kitchen", false],
    [condor, "no room for condor", true],
    [condor, "no room for kitchen", false],
    [condor, "condor would not fit", true],
    [condor, "kitchen would not fit", false],
    [coves, "the Cove lights", true],
    [coves, "the COve lights", false],
    [twice, "the 14 buttons do the same thing", true],
    [finish, "the owner wants the contrast", true],
    [finish, "the owner wants the gold contrast", false],
    [cwtch, "named after the dog", true],
    [cwtch, "named after the hold", false],
  ])("%#: %s: %s", (question, why, is) => {
    const [, word = ""] = /^“(\p{L}+)” in/u.exec(question) ?? [];
    const around = { ...asking(question), others: [], inQuestion: word === "" ? [] : [word.toLowerCase()] };
    expect(said(`2 is right, ${why}`, around)).toEqual(is ? { 2: true } : undefined);
  });
});

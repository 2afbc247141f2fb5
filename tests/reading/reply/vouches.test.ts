import { describe, expect, test } from "vitest";
import { onlyAssents, pointsToSheets } from "../../../src/reading/reply/vouches.ts";
import { alone, came } from "../../make/came.ts";

const sheets = came([alone("S-1", ["ON", "DIM", "ALL OFF"], "LOBBY")]);
const facts = {
  ...sheets,
  numbers: ["BW-2207"],
  projects: ["Larkspur Library"],
  marks: ["S-1"],
  files: [],
  otherFinishes: ["Chalk", "Soot"],
  called: new Map(),
  plates: [0],
  devices: [1],
  attached: [1],
};

describe("who says that the sheets say it says nothing more", () => {
  test.each([
    "Father Quinn was particular about the wording, and that's how we have it on the sheet.",
    "They went back and forth for weeks, as you'll see on the sheets.",
    "Everything goes to the office like always, and the sheet says so too.",
    "She chose the oat in the end, as on the form.",
    "The pastor likes ALL OFF, as the sheet shows.",
    "Rooms as marked on each.",
    "Legends, finish and address stand on the sheets.",
    "Finishes as you'll see on them.",
  ])("%s", (words) => expect(pointsToSheets(words, facts)).toBe(true));

  test.each([
    ["asks for more", "Please make it bold, as on the form."],
    ["makes an exception", "The lobby only, and the sheet says so."],
    ["makes one of another kind", "Rooms as marked on each except the lobby."],
    ["excepts a row", "The owner likes it, and that's how we have it on the sheet, the second row excepted."],
    ["is of a part", "Half of it is as on the form."],
    ["names another finish", "Ground floor in Chalk, as on the form."],
    ["names a look that nobody makes", "He went with the brass after all, as you can see on the sheet."],
    ["names a legend that is on no sheet", "The pastor likes ALL OUT, as the sheet shows."],
    ["names somebody else", "He spells it Jon and that's how we have it on the sheet."],
    ["adds a way", "She went over it with me, so that's what we have, in pencil."],
    ["goes on", "Tyler says it's one word and the sheet has it as two."],
    ["asks", "Is it one word, as on the form?"],
    ["asks first", "Really? That's how we have it on the sheet."],
    ["asks in the middle", "The pastor likes it? As on the form."],
  ])("but what %s is told: %s", (_, words) => expect(pointsToSheets(words, facts)).toBe(false));
});

describe("who has approved it all asks for nothing", () => {
  test.each([
    "The owner signed off on these yesterday.",
    "The whole thing has been signed off by the facilities committee.",
    "FYI the architect has approved the wording in writing.",
    "  The owner  approved it. ",
    "These were signed.",
    "Everything was okayed by the owner",
    "The owner is fine with these",
    "My boss already checked everything twice.",
    "The finance lady approved it without a single question, which never happens.",
    "The keypad submittal for Millrace came back yesterday, no exceptions taken.",
    "Please engrave exactly as typed.",
    "Typed exactly as it should be.",
    "Hope I filled these in right.",
    "Filled out the forms as best I could.",
    "Let me know if I did it wrong.",
    "Please send proof.",
    "We don't need a proof.",
    "Owner-approved.",
  ])("%s", (words) => expect(onlyAssents(words)).toBe(true));

  test.each([
    "Approved.",
    "The owner was fine with it",
    "The owner approved what was sent",
    "The owner has not approved these.",
    "The owner hasn't approved these.",
    "The owner hasnt approved these.",
    "The owner's rep hasn't initialed these.",
    "He never signed it.",
    "The board has yet to review these.",
    "The boss might have checked it.",
    "The owner wants to have checked it.",
    "The owner forgot and approved it.",
    "The board has to approve it.",
    "Nobody checked the list.",
    "The owner approved everything but the lobby.",
    "The architect should have approved these.",
    "The owner approved these if they fit.",
    "The owner approved most of them yesterday.",
    "Who approved these?",
    "Only Beth approved these.",
    "The wrong tenant signed off on these.",
    "The owner approved the list with two changes.",
    "Please engrave as shown on E-401.",
    "Engrave as typed but bold.",
    "Hope it's in Oat.",
    "Let me know if I need to change the finish.",
    "Please send proofs to the architect.",
    "Please send a proof before engraving.",
    "No proof needed, no pilot lights either.",
  ])("but these are told: %s", (words) => expect(onlyAssents(words)).toBe(false));
});

test.each([
  ["She chose the pewter in the end, as on the form.", true],
  ["She chose the Pewter in the end, as on the form.", true],
  ["She chose the walnut in the end, as on the form.", false],
])("a look is one of the finishes that came: %s: %s", (words, is) => {
  expect(pointsToSheets(words, { ...facts, finishes: ["Pewter Grain"] })).toBe(is);
});

test("who bids vouches for nothing", () => {
  expect(pointsToSheets("Sandblast them, as on the form.", facts)).toBe(false);
});

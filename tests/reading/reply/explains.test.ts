import { describe, expect, test } from "vitest";
import { explains, spellsOut, tellsOnly } from "../../../src/reading/reply/explains.ts";

describe("what stands behind a yes", () => {
  test.each([
    "It is the name for the stone seats beside the altar.",
    "It's our word for the front room",
    "That is what the staff call the reception",
    "it's the name of the client's bar",
    "It stands for high intensity training.",
    "It is short for mezzanine",
    "an abbreviation of phlebotomy",
    "It is Italian for a big living room.",
    "the word is the Danish word for bathroom",
    "it is a real word, it's the porch of a church",
    "per the approved drawings",
    "It is a hug, or a cuddle",
    "It is Czech, sadly",
    "It is Czech and it is the name of the bar",
    "It's the room by the garden",
  ])("tells only why: %j", (words) => {
    expect(explains(words)).toBe(true);
  });

  test.each([
    "It is the old name of the room.",
    "It is the name of the other room.",
    "It's the left button.",
    "It's the one in the sketch.",
    "It is the big one.",
    "It is the plate for the hall.",
    "It is the spelling in capitals.",
    "It is the name with an accent.",
    "It is a gamble.",
    "or a cuddle",
    "It is a hug, or a new plate",
    "It is a hug, or the wrong one",
    "it is a question",
    "it is urgent",
    "It is Czech and gold",
    "It is a hug, for a cuddle",
    "It is a hug, or a joke",
    "It is a pity",
    "It is bad",
    "It is a test",
    "Check it is Czech",
    "It stands for the new plate",
    "It is short for hold the order",
    "It is short for mezzanine, not wanted",
    "It's the owner's joke.",
    "It is the wife's idea, not mine.",
    "It is the owner's word for the thing he wants moved.",
    "It stands for nothing.",
    "It is short for something longer that would be nicer.",
    "It is Italian for a room that we should not have.",
    `It is the name of ${"a very ".repeat(15)}long room.`,
  ])("may say more: %j", (words) => {
    expect(explains(words)).toBe(false);
  });
});

test("120 characters explain", () => {
  expect(explains(", thanks".repeat(15))).toBe(true);
  expect(explains(`${", thanks".repeat(15)}.`)).toBe(false);
});

test.each([
  ["it is Czech", true],
  ["that's what they call it", true],
  ["per the schedule", true],
  ["lol :-)", true],
  ["lol :-) x", false],
  ["it is the old name", false],
  ["it is for the den", false],
  ["it is red", false],
])("“%s” explains a yes: %s", (tail, explained) => {
  expect(explains(tail)).toBe(explained);
});

test.each([
  ["surely it is Czech", false],
  ["It is a hug, or a pity", false],
  ["it is Czech :-)", true],
  ["it is Czech :-) indeed", false],
  ["It is Czech, sadly misunderstood", false],
])("of all that stands there “%s” tells only why: %s", (words, is) => {
  expect(explains(words)).toBe(is);
});

test.each([
  ["n", true],
  ["no", false],
  ["cat", true],
  ["kitchen", true],
  ["bet", false],
  ["brass", false],
])("a word of a reason is of no danger: %s: %s", (word, is) => {
  expect(tellsOnly(word)).toBe(is);
});

test.each([
  ["air cooled box", true],
  ["it stands for air cooled box", true],
  ["air cooled tin", false],
  ["plum trim", false],
])("“%s” spells out what was asked about: %s", (words, is) => {
  expect(spellsOut(words, ["acb", "pt"])).toBe(is);
});

import { expect, test } from "vitest";
import { type LetterFacts, numberFrom, patternOf, withoutFacts } from "../../../src/reading/reply/tallies.ts";

const facts: LetterFacts = {
  numbers: ["EL-100"],
  projects: ["Red Lion Inn"],
  marks: ["S-101", "A"],
  names: ["Dana Whitlock"],
  files: ["S-101 plate.pdf"],
  finishes: ["Oat"],
  otherFinishes: ["Chalk"],
  called: new Map(),
  sheets: [],
  earlier: [],
  plates: [1],
  devices: [4],
  attached: [5],
};
const without = (words: string): string => withoutFacts(words, facts).replaceAll(/\s+/g, " ").trim();

// ◇ is a fact, ◈ a name, △ a date, ○ a count that is right.
test.each([
  ["EL 100", "◇"],
  ["el100", "◇"],
  ["#EL-100's", "◇"],
  ["EL-1000", "EL-1000"],
  ["XEL-100", "XEL-100"],
  ["Red  Lion-Inn", "◇"],
  ["Dana Whitlock", "◈"],
  ["s101 plate pdf", "◈"],
  ["Oat", "◇"],
  ["oats", "oats"],
  // One letter is no fact.
  ["A", "A"],
  ["1 plate", "○ plate"],
  ["2 plates", "2 plates"],
  ["four devices", "○ devices"],
  ["4 x devices", "○ devices"],
  ["5 devices", "5 devices"],
  ["4 singles", "○ singles"],
  ["5 sheets", "○ sheets"],
  ["#4 devices", "#4 devices"],
  ["12345 devices", "12345 devices"],
  ["both plates", "both plates"],
  ["one more plate", "○ plate"],
  ["another one for the lobby", "○ one for the lobby"],
  ["another formal one", "another formal one"],
  ["one more in", "○ one in"],
  ["one more inside", "one more inside"],
  ["Plates: 1", "○ Plates"],
  ["Plates: 2", "Plates: 2"],
  ["Sheets (5)", "○ Sheets"],
  ["Plates: 12345", "Plates: 12345"],
  ["Sheets (12345)", "Sheets (12345)"],
  ["4 keypads", "○ keypads"],
  ["1 keypad", "1 keypad"],
  ["4 plates", "4 plates"],
  ["111-gang", "111-gang"],
  ["qty of plates: 1", "○ plates"],
  ["position 3", "◇"],
  ["floor 3", "◈"],
  ["floors 3 and 4", "◈"],
  ["room 12345", "room 12345"],
  ["3rd floor", "◈"],
  ["1 of 2", "◈"],
  ["11-gang", "◈"],
  ["tower b", "◈"],
  ["by Friday", "by △"],
  ["Fridayish", "Fridayish"],
  ["March 4th, 2026", "△"],
  ["2026-11-09", "△"],
  ["11/9", "△"],
])("without what is known of it “%s” is “%s”", (words, left) => {
  expect(without(words)).toBe(left);
});

test.each([
  ["12", 12],
  ["0", 0],
  ["twelve", 12],
  ["Twelve", 12],
  ["zero", -1],
  ["1a", -1],
  ["a1", -1],
])("“%s” is the number %i", (typed, number) => {
  expect(numberFrom(typed)).toBe(number);
});

test("of a long fact 120 characters are looked for, and of one character none", () => {
  expect(patternOf("x".repeat(130))?.test("x".repeat(120))).toBe(true);
  expect(patternOf("x".repeat(119))?.test("x".repeat(120))).toBe(false);
  expect(patternOf("x-")).toBeUndefined();
  expect(patternOf("x1")?.test("x - 1")).toBe(true);
  expect(patternOf("x1")?.test("x -- 1")).toBe(false);
});

test("“both”, “a pair” and “a couple” are two of what came", () => {
  const two = { ...facts, plates: [2], devices: [3], attached: [] };
  for (const words of ["both plates", "Both plates"])
    expect(withoutFacts(words, two).trim(), words).toMatch(/^○ +plates$/);
  for (const words of ["both devices", "Both devices"]) expect(withoutFacts(words, two), words).toBe(words);
});

test.each([
  ["one plate", "○ plate"],
  ["one device", "one device"],
  ["9 ones", "9 ones"],
  ["6 new ones", "6 new ones"],
  ["5 new ones", "○ ones"],
  ["rooms 2 to 12345", "◈ to 12345"],
])("of counts and places “%s” becomes “%s”", (words, left) => {
  expect(without(words)).toBe(left);
});

test("“the new one” is one of those that came, however many they are", () => {
  const several = { ...facts, plates: [2], devices: [4], attached: [6] };
  expect(withoutFacts("one new one", several).trim()).toBe("○ one");
});

test("a longer fact is found before a shorter one with which it begins", () => {
  const both = { ...facts, projects: ["Red Lion", "Red Lion Inn"] };
  expect(withoutFacts("Red Lion Inn", both).trim()).toBe("◇");
});

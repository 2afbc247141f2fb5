import { describe, expect, test } from "vitest";
import { areFooter, isIdle } from "../../../src/reading/reply/idle.ts";
import { plainly, read } from "./read-reply.ts";

const replier = { open: [], isFurniture: () => false, names: ["Dana Whitlock"], bringsSheets: false };

test("below a name stands a trade or a firm, each word of which begins with a capital", () => {
  expect(isIdle("Goldfinch Brothers - Will Call / Counter", true, replier)).toBe(true);
  expect(isIdle("Goldfinch Brothers - Will Call / Counter", false, replier)).toBe(false);
  expect(isIdle("Goldfinch brothers - will call / counter", true, replier)).toBe(false);
});

test.each([
  ["Goldfinch Brothers Sisters Cousins Uncles - Will Call Counter", true],
  ["Goldfinch Brothers Sisters Cousins Uncles Aunts - Will Call Counter", false],
  ["House of Goldfinch And Sisters - Will Call", true],
  ["Goldfinch Brothers And Sisters roof - Will Call", false],
  ["Goldfinch Brothers And Sisters atelier - Will Call", false],
  ["Goldfinch Brothers And Sisters eMart - Will Call", false],
  ["Goldfinch Brothers - Will Call 2", false],
  ["Goldfinch Brothers And Sisters - Will Call When Open", false],
  ["Not Goldfinch Brothers And Sisters - Will Call", false],
])("below a name %j is a firm: %s", (line, idle) => {
  expect(isIdle(line, true, replier)).toBe(idle);
});

describe("a footer", () => {
  test.each([
    [["Whitlock Controls", "555-0142"]],
    [["Whitlock Controls", "dana@whitlock.example"]],
    [["Whitlock Controls", "Whitlock www.whitlock"]],
    [["thanks", "555-0142"]],
    [["cell 312-555-0142", "Whitlock"]],
    [["Harlow Harbor Lighting And Electric Supply House", "555-0142"]],
    [["Whitlock Controls", "handy 0170 5550142"]],
  ])("may be %j", (lines) => {
    expect(areFooter(lines)).toBe(true);
  });

  test.each([
    [["Whitlock Controls", "Dock Road"]],
    [["Make it red", "555-0142"]],
    [["the boathouse", "555-0142"]],
    [["Harlow Harbor Lighting And Electric Supply House Yard", "555-0142"]],
    [["Whitlock Controls", "awww.whitlock"]],
    [["Whitlock Controls", "Awww.whitlock"]],
    [["Hold", "555-0142"]],
  ])("is not %j", (lines) => {
    expect(areFooter(lines)).toBe(false);
  });
});

describe("what stands below a name", () => {
  test.each([
    "Alder Electric Ltd - Celebrating 40 years!",
    "555-0109 | Open Sat 7-12",
    "A+ rated, free estimates",
    "This email is confidential. No contract is formed by email.",
  ])("may say %j below a name", (line) => {
    expect(read(`2 YES\n3 YES\nDana Whitlock\n${line}`)).toEqual(plainly([2, 3]));
  });

  test.each([
    "Alder Electric Ltd - Celebrating 40 years, in gold!",
    "A+ rated, free estimates, no rush but cut a star",
    "Open Sat 7-12, deliver then",
  ])("that says %j is for a person", (line) => {
    expect(read(`2 YES\n3 YES\nDana Whitlock\n${line}`)).toMatchObject({ person: true });
  });

  test("may be a motto in quotation marks, whatever words of people it has", () => {
    const motto = "“A town without a library is only a crossroads”";
    expect(read(`2 YES\n3 YES\nDana Whitlock\n${motto}`)).toEqual(plainly([2, 3]));
    expect(read(`2 YES\n3 YES\n${motto}`)).toMatchObject({ yes: [], person: true });
  });
  test.each([
    "“Please make all of the letters capital”",
    "“Engrave everything in brass, but only once”",
    "“A town without SALONS is only a crossroads”",
  ])("%s is no motto", (line) => {
    expect(read(`2 YES\n3 YES\nDana Whitlock\n${line}`)).toMatchObject({ yes: [], person: true });
  });
  const signed = (line: string) => isIdle(line, true, { ...replier, inQuestion: ["salona"] });
  test.each([
    "“Art is long but life short”",
    "“Life is only a walk by the sea”",
    "“Work is only play made better”",
    // Words that begin like one that mends.
    "Fixedale House",
  ])("%s is idle", (line) => {
    expect(signed(line)).toBe(true);
  });
  test.each([
    "“Life short but art long”",
    "“Life is only a salone by the sea”",
    "“Is life only a walk by the sea?”",
    "“There are only 10 kinds of people here”",
    "“We cut once but measure it twice”",
    "“Some words are only wind and rain”",
    "“The second word is but an echo”",
    "“Gold is only gold when it shines”",
    "“A red house is but a house”",
  ])("%s may bind an answer", (line) => {
    expect(signed(line)).toBe(false);
  });
  test("are initials, or a short name", () => {
    expect(read("2 YES\n3 YES\n\ndw")).toEqual(plainly([2, 3]));
    expect(read("2 YES\n3 YES\n\nDan")).toEqual(plainly([2, 3]));
  });
});

import { describe, expect, test } from "vitest";
import { said } from "./read-clauses.ts";

describe("points are numbered in figures, in words and as ranges", () => {
  test.each<[string, Record<number, boolean> | undefined]>([
    ["2 to 3 are right", { 2: true, 3: true }],
    ["2-3 are right", { 2: true, 3: true }],
    ["2 to 2 is right", { 2: true }],
    ["3 to 2 are right", undefined],
    ["Number two is right", { 2: true }],
    ["Number two and number three are right", { 2: true, 3: true }],
  ])("%s", (line, is) => {
    expect(said(line)).toEqual(is);
  });

  test("a range names fifty at most", () => {
    const open = Array.from({ length: 60 }, (_, at) => at + 1);
    expect(Object.keys(said("1 to 50 are right", { open }) ?? {})).toHaveLength(50);
    expect(said("1 to 51 are right", { open })).toBeUndefined();
  });

  test("all that are left are as many as it says", () => {
    const open = [2, 3, 4];
    expect(said("The other two are right", { open, answered: new Set([2]) })).toEqual({ 3: true, 4: true });
    expect(said("The other three are right", { open, answered: new Set([2]) })).toBeUndefined();
    expect(said("All 3 are right", { open })).toEqual({ 2: true, 3: true, 4: true });
  });
});

describe("what a sheet shall say is a name, or in capitals", () => {
  test.each([
    "2 should be Piano",
    "2 should be North",
    "2 should be Lobby with an E",
    "2 should be Lobby as one word",
    "2 should be Lobby 2",
    "2 should be Lobby and Hall",
    "2 should be “Lobby”",
    "2 should be the word LEFT",
    "2 should be FLOOR the word",
    "2 should be FLOOR and the word",
    "2 is wrong, we need NORTH",
    "2 is wrong, we need “LOBBY”",
  ])("%s", (line) => {
    expect(said(line)).toEqual({ 2: false });
  });

  test.each([
    "2 should be Urgent",
    "2 should be lobby",
    "2 should be eMail",
    "2 should be gold the word",
    "2 is wrong, we need Gold",
    "2 is wrong, we need iTALIC",
    "2 is wrong, we need HOLD",
  ])("%s is for a person", (line) => {
    expect(said(line)).toBeUndefined();
  });
});

describe("a line is read to its end", () => {
  test.each<[string, Record<number, boolean> | undefined]>([
    ["Corrected sheet attached, 2 is right", undefined],
    ["Corrected sheet attached, 2 is wrong", { 2: false }],
    ["2 is the name of the bar", undefined],
    ["2 is right on purpose gold", undefined],
    ["2 is right on purpose and 3 is right", { 2: true, 3: true }],
    ["2 is right so 3 is wrong", { 2: true, 3: false }],
    ["2 is right because it is French", { 2: true }],
    ["The owner says 2 is right", { 2: true }],
  ])("%s", (line, is) => {
    expect(said(line)).toEqual(is);
  });

  test.each(["2 is right - dear clerk", "2 is right: dear clerk", "2 is right (dear clerk)"])(
    "%s",
    (line) => {
      expect(said(line, { isSilent: (words) => words === "dear clerk" })).toEqual({ 2: true });
    },
  );

  test("two words spell no abbreviation out, three do", () => {
    expect(said("2 is right, plum trim", { inQuestion: ["pt"] })).toBeUndefined();
    expect(said("2 is right, high intensity interval training", { inQuestion: ["hiit"] })).toEqual({
      2: true,
    });
  });

  test("nothing in it is nearly a word in question", () => {
    const line = "2 is the name of salonas, it is right";
    expect(said(line)).toEqual({ 2: true });
    expect(said(line, { inQuestion: ["salona"] })).toBeUndefined();
  });
});

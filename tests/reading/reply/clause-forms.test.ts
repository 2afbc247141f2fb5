import { describe, expect, test } from "vitest";
import { asking, finish, mending, misspelt, said, twice } from "./read-clauses.ts";
import { plainly, read } from "./read-reply.ts";

const nothing = { promises: false };
const one = { open: [2] };

describe("what a clause says of points", () => {
  test.each<[string, Record<number, boolean> | undefined]>([
    ["2 and 3 are German and correct", { 2: true, 3: true }],
    ["Yes and yes", { 2: true, 3: true }],
    ["2x yes", { 2: true, 3: true }],
    ["Please leave 2 and 3 as they are", { 2: true, 3: true }],
    ["No to 2, 3 is right", { 2: false, 3: true }],
    ["2 should be Lobby", { 2: false }],
    ["2 should be in brass", undefined],
    ["2 is wrong, we need LOBBY", { 2: false }],
    ["2 is wrong, DEN 1 & DEN 2", { 2: false }],
    ["2 is wrong, the word 1 & the word 2", { 2: false }],
    ["2 is wrong, row 1 and row 2", undefined],
  ])("%s", (line, is) => {
    expect(said(line)).toEqual(is);
  });

  test("“ok” alone may say that somebody has read it", () => {
    expect(said("Ok", one)).toBeUndefined();
    expect(said("It is ok", one)).toEqual({ 2: true });
  });

  test("“they” are several, and “it” is one", () => {
    const told = "2 is the name of the bar and 3 is the name of the hall";
    expect(said(`${told}, they are right`)).toEqual({ 2: true, 3: true });
    expect(said(`${told}, it is right`)).toBeUndefined();
  });

  test("no three times is no answer to three questions", () => {
    const three = { open: [1, 2, 3], others: 0, answer: "  1. One.\n  2. Two.\n  3. Three." };
    expect(read("No no no, new sheet attached.", three)).toMatchObject({ no: [], person: true });
  });

  test("that tells the finish is about a question of finishes", () => {
    expect(said("The different finish is right", asking(finish))).toEqual({ 2: true });
    expect(said("The different finish is right", asking(twice))).toBeUndefined();
  });
});

describe("what needs a sheet is no answer without one", () => {
  test.each<[string, Record<number, boolean>]>([
    ["2 is right, 3 is not", { 2: true, 3: false }],
    ["Both corrected", { 2: false, 3: false }],
    ["2 corrected", { 2: false }],
    ["No to 2, the address is filled in", { 2: false }],
    ["2: legend split over two rows", { 2: false }],
  ])("%s", (line, is) => {
    expect(said(line)).toEqual(is);
    expect(said(line, nothing)).toBeUndefined();
  });
  test("It is wrong", () => {
    expect(said("It is wrong", { ...one, ...nothing })).toBeUndefined();
  });

  test("“both corrected” may be points to mend alone", () => {
    expect(said("Both corrected", mending)).toEqual({});
  });
});

describe("what a word stands for or is goes ahead of an answer, if nothing follows from it", () => {
  test.each<[string, Record<number, boolean> | undefined]>([
    ["2 stands for mezzanine, so it is right", { 2: true }],
    ["2 means trouble, so it is right", undefined],
    ["2 means a new plate, so it is right", undefined],
    ["2 is the landlord's dog, so it is right", { 2: true }],
    ["2 is the landlord's new sign, so it is right", undefined],
  ])("%s", (line, is) => {
    expect(said(line, asking(misspelt("MEZZ", "MEZE"), twice))).toEqual(is);
  });

  test.each<[string, number[], boolean]>([
    ["one is the bar and the other the den", [2], false],
    ["one is the wrong plate and the other the right one", [], true],
  ])("two buttons: %s", (what, no, person) => {
    const text = `2 NO, ${what}. New sheet attached.`;
    const answer = `  2. ${twice}`;
    expect(read(text, { open: [2], others: 0, answer })).toMatchObject({ no, person });
  });
});

test("what a reply asks without a sheet is for a person", () => {
  expect(read("2 is right, 3 is not.")).toMatchObject({ person: true });
  expect(read("Both corrected.")).toMatchObject({ person: true });
  expect(read("Please leave 2 and 3 alone.")).toEqual(plainly([2, 3]));
});

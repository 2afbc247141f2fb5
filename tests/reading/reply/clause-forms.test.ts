import { describe, expect, test } from "vitest";
import type { Around } from "../../../src/reading/reply/clause-acts.ts";
import { asking, capitals, finish, mending, misspelt, said, twice } from "./read-clauses.ts";
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

describe("who says it in one of these ways says", () => {
  test.each<[string, Partial<Around>, Record<number, boolean> | undefined]>([
    ["2 twice is right", asking(twice), { 2: true }],
    ["2 on both buttons is right", asking(twice), { 2: true }],
    ["2 on both buttons is right", asking(misspelt("HIIT", "HIT")), undefined],
    ["2 with two gs is right", asking(misspelt("SNUGG", "SNUG")), { 2: true }],
    ["2 with one g is right", asking(misspelt("SNUGG", "SNUG")), undefined],
    ["As for 2, it is right", {}, { 2: true }],
    ["As for 2, it is right", { ...one, others: [1] }, { 2: true }],
    ["Yes x 3", { open: [2, 3, 4] }, { 2: true, 3: true, 4: true }],
    ["Yes x 3", {}, undefined],
    ["Answer to 2 is no", {}, { 2: false }],
    ["Answer to 2 is yes", {}, { 2: true }],
    ["The mixed case is right", asking(capitals), { 2: true }],
    ["Capitals and small letters as typed", asking(capitals), { 2: true }],
    ["Capitals and small letters as typed", asking(twice), undefined],
    ["Leave it as it is", one, { 2: true }],
    ["Ok as is", one, { 2: true }],
    ["Okay as it is", one, { 2: true }],
    ["Yes to both", {}, { 2: true, 3: true }],
    ["Good on the rest", { answered: new Set([2]) }, { 3: true }],
    ["2: new sheet in 3 minutes", {}, { 2: false }],
    ["I will send the new sheet for 2 in 3 hours", {}, { 2: false }],
    ["2: new sheet in 100 minutes", { open: [2, 100] }, undefined],
    ["2 is wrong, now SNUG", {}, { 2: false }],
    ["2 is wrong, now snug", {}, undefined],
  ])("%s (%#)", (line, around, is) => {
    expect(said(line, around)).toEqual(is);
  });

  test.each(["We shortened 2", "Fixed 2"])("%s: it is a no where a sheet comes", (line) => {
    expect(said(line, nothing)).toBeUndefined();
  });

  test.each(["We shortened 2", "Fixed 2"])("%s with the sheet that comes", (line) => {
    expect(said(line)).toEqual({ 2: false });
  });
});

describe("what goes on behind a clause is read with it", () => {
  const three = { open: [2, 3, 4] };
  test.each<[string, Partial<Around>, Record<number, boolean> | undefined]>([
    ["Yes, yes and no", three, { 2: true, 3: true, 4: false }],
    ["Yes, yes, no, no", three, undefined],
    ["They are French. 2 is wrong", {}, undefined],
    ["Both are what the owner calls them. New sheet for 2 attached", {}, undefined],
    ["Both are what the owner calls them 2 and 3 are right", {}, { 2: true, 3: true }],
    ["2 is right, it is the name of salonas", {}, { 2: true }],
    ["2 is right, it is the name of salonas", { inQuestion: ["salona"] }, undefined],
  ])("%s (%j)", (line, around, is) => {
    expect(said(line, around)).toEqual(is);
  });
});

import { describe, expect, test } from "vitest";
import type { Around } from "../../../src/reading/reply/clause-acts.ts";
import { asking, mending, misspelt, said, several, twice } from "./read-clauses.ts";

const three = { open: [2, 3, 4] };
const words = asking(misspelt("SALITA", "SALTY"), misspelt("COMDOR", "CONDOR"));

describe("a reason is of what was said last", () => {
  test.each<[string, Partial<Around>, Record<number, boolean> | undefined]>([
    ["They are French", { last: true }, {}],
    ["They are French", {}, undefined],
    ["1 is the name of the bar, as per the drawings", { ...mending, last: true }, undefined],
    ["Both are French, 2 and 3 are right", {}, { 2: true, 3: true }],
    ["Both are what the owner calls them, 2 and 3 are right", {}, { 2: true, 3: true }],
    ["2 is right, 3 is the name of the bar", {}, undefined],
    ["2 is wrong, 2 is the name of the bar, it is wrong", {}, undefined],
    ["1 is the name of the bar, 2 is right", mending, { 2: true }],
  ])("%s (%j)", (line, around, is) => {
    expect(said(line, around)).toEqual(is);
  });
});

describe("all that are meant are those of which it is said", () => {
  const two = "2 is the name of the bar, 3 is the name of the hall";
  test.each<[string, Partial<Around>, Record<number, boolean> | undefined]>([
    [`${two}, all three are right`, three, { 2: true, 3: true, 4: true }],
    [`${two}, all are right`, three, undefined],
    ["2 and 3 are right, go ahead", three, undefined],
    ["2 and 3 are right, go ahead", {}, { 2: true, 3: true }],
    ["All three are wrong", { ...three, others: [1] }, undefined],
    ["All three are wrong", { ...three, answered: new Set([2]) }, { 2: false, 3: false, 4: false }],
    ["The other two are right", { ...three, others: [1], answered: new Set([2]) }, undefined],
    ["The rest are wrong", { ...mending, answered: new Set([2]) }, { 3: false }],
  ])("%s (%j)", (line, around, is) => {
    expect(said(line, around)).toEqual(is);
  });
});

describe("what stands on a sheet goes with the sheet", () => {
  test.each<[string, Record<number, boolean> | undefined]>([
    ["2 is wrong, new sheet attached with KITCHEN", { 2: false }],
    ["New sheet attached, 2 is right, with COMEDOR corrected", { 2: true, 3: false }],
    ["With COMEDOR corrected, 2 is right", undefined],
    ["New sheet attached. With COMEDOR corrected. 2 is right.", undefined],
    ["New sheet attached. 2 is right. With COMEDOR corrected.", undefined],
  ])("%s", (line, is) => {
    expect(said(line, words)).toEqual(is);
  });

  test.each(["2 is right. New sheet attached. 3 is a typo", "2 is right. Sheet attached. 3 is wrong"])(
    "%s: of which of them it is nobody knows",
    (line) => {
      expect(said(line)).toBeUndefined();
    },
  );
});

describe("a reason fits the questions that were spoken of last", () => {
  const hiit = misspelt("HIIT", "HIT");
  const scenes = "button 2 is the evening scene and button 4 is off";
  test.each<[string, Partial<Around>, Record<number, boolean> | undefined]>([
    ["2 and 3 are right, just one", asking(several, hiit), undefined],
    ["2 and 3 are right, just one", asking(several, several), { 2: true, 3: true }],
    ["2 is right, just one", asking(several, hiit), { 2: true }],
    ["3 is right, just one", asking(several, hiit), undefined],
    [`2 and 3 are right, ${scenes}`, asking(twice, hiit), { 2: true, 3: true }],
    [`3 is right, ${scenes}`, asking(twice, hiit), undefined],
  ])("%s (%#)", (line, around, is) => {
    expect(said(line, around)).toEqual(is);
  });

  test.each([
    "that is what the staff call the reception",
    "it is a hug, or a cuddle",
    "haha",
    "it means the front room",
  ])("2 is right, %s", (why) => {
    expect(said(`2 is right, ${why}`)).toEqual({ 2: true });
  });
});

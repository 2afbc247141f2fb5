import { describe, expect, test } from "vitest";
import type { Around } from "../../../src/reading/reply/clause-acts.ts";
import { asking, capitals, finish, mending, misspelt, said, twice } from "./read-clauses.ts";
import { plainly, read } from "./read-reply.ts";

describe("a reason goes with a yes", () => {
  test.each<[string, Partial<Around>, Record<number, boolean> | undefined]>([
    ["2 is French, as per the drawings, so it is right", {}, { 2: true }],
    ["3 is French, 2 is wrong, on purpose, 3 is right", {}, undefined],
    ["2 and 3 are right, both are what the owner calls them", {}, { 2: true, 3: true }],
    ["2 is right, 3 is right, 2 is the name of the bar, as per the drawings", {}, { 2: true, 3: true }],
    ["2 is wrong, 2 is the name of the bar", {}, undefined],
    ["2 is the name of the bar", { last: true, granted: new Set([2]) }, {}],
    ["2 is the name of the bar", { last: true, granted: new Set([3]) }, undefined],
    [
      "2 is right, 3 is French, 4 is Dutch, both are right",
      { open: [2, 3, 4] },
      { 2: true, 3: true, 4: true },
    ],
  ])("%s (%j)", (line, around, is) => {
    expect(said(line, around)).toEqual(is);
  });

  test.each([
    "Leave them alone. 2 is a typo, new sheet attached.",
    "No changes needed. 2 is a typo, new sheet attached.",
    "Both are German names. 2 is a typo, new sheet attached.",
  ])("and %j takes it back", (text) => {
    expect(read(text, { others: 0 })).toMatchObject({ no: [], person: true });
  });

  test("and answers nothing below another point", () => {
    const quoted = (number: number): string =>
      `> ${number}. “SALONA” in row 1 of button ${number - 1} looks misspelt.`;
    const text = [quoted(2), "YES", quoted(3), "Both are what the owner calls them."].join("\n");
    expect(read(text)).toMatchObject({ person: true });
  });
});

describe("what is said of all behind what each of them is", () => {
  const two = "2 is the name of the bar, 3 is the name of the hall";
  const three = `${two}, 4 is the name of the den`;
  test.each<[string, Record<number, boolean> | undefined]>([
    [`${two}, they are right`, { 2: true, 3: true }],
    [`${two}, both are right`, { 2: true, 3: true }],
    [`${two}, it is right`, undefined],
    [`${two}, they are wrong`, undefined],
    [`${two}, both are wrong`, undefined],
    [`${three}, they are right`, { 2: true, 3: true, 4: true }],
    [`${three}, both are right`, undefined],
    ["2 is the name of the bar, it is right", { 2: true }],
  ])("%s", (line, is) => {
    expect(said(line, { open: [2, 3, 4] })).toEqual(is);
  });
});

describe("who makes an exception of one that was spoken of alone is asked", () => {
  test.each([
    "2 is right, 3 is French, except 3",
    "2 is right, 3 is French, 4 is Dutch, both are right, except 4",
  ])("%s", (line) => {
    expect(said(line, { open: [2, 3, 4] })).toBeUndefined();
  });
});

describe("who owns a slip says no to that question, and nothing of a point to mend", () => {
  test.each<[string, number[], number[]]>([
    ["Good catch on 1, it's a typo. 2 and 3 are right. New sheet attached.", [2, 3], []],
    ["1 is a typo, should be LOBBY, sheet attached. 2 and 3 YES", [2, 3], []],
    ["Good catch on 1 and 2. 3 is right. New sheets attached.", [3], [2]],
    ["Thanks for catching 2, the corrected sheet comes tomorrow, 3 is right", [3], [2]],
  ])("%s", (text, yes, no) => {
    expect(read(text)).toEqual(plainly(yes, no));
  });

  test("“it” behind a point to mend is that point", () => {
    expect(said("Good catch on 1, it is right", { open: [2], ...mending })).toBeUndefined();
  });
});

describe("what stands on the sheet that comes is a no to the one question that it fits", () => {
  const words = asking(misspelt("SALITA", "SALTY"), misspelt("COMDOR", "CONDOR"));
  test.each<[string, Record<number, boolean> | undefined]>([
    ["2 is right. Sheet attached with COMEDOR", { 2: true, 3: false }],
    ["2 is wrong. Sheet attached with COMEDOR", { 2: false, 3: false }],
    ["2 is right. COMEDOR corrected, sheet attached", { 2: true, 3: false }],
    ["3 is wrong, with COMEDOR corrected", { 3: false }],
    ["3 is right. Sheet attached with COMEDOR", undefined],
    ["Sheet attached with COMDOR, 2 is right", undefined],
    ["3 is wrong, sheet attached with gold", undefined],
    ["3 is wrong, sheet attached with gold COMEDOR", undefined],
    ["3 is wrong, sheet attached with COMEDOR in gold", undefined],
    ["3 is wrong, sheet attached with COMEDOR Gold", undefined],
  ])("%s", (line, is) => {
    expect(said(line, words)).toEqual(is);
  });

  test.each<[string, string[], Record<number, boolean> | undefined]>([
    ["Sheet attached with WATCH", [misspelt("CWTCH", "WATCH")], { 2: false }],
    ["Sheet attached with watch corrected", [misspelt("CWTCH", "WATCH")], { 2: false }],
    ["Sheet attached with COMEDOR", Array<string>(2).fill(misspelt("COMDOR", "CONDOR")), undefined],
    ["Sheet attached with Slate, 3 is right", [finish, misspelt("COMDOR", "CONDOR")], { 2: false, 3: true }],
    ["3 is wrong, sheet attached with LAMPS L and LAMPS R", [misspelt("MEZZ", "MEZE"), twice], { 3: false }],
    ["Sheet attached with brass, 3 is right", [finish, misspelt("COMDOR", "CONDOR")], undefined],
    ["Sheet attached with some corrected", [capitals], undefined],
    ["Sheet attached with READINGS", [capitals], undefined],
  ])("%s: %j", (line, questions, is) => {
    expect(said(line, asking(...questions))).toEqual(is);
  });

  test.each(["COMEDOR corrected.", "COMEDOR of course."])("%j promises none", (text) => {
    expect(said(`2 is right. ${text}`, { ...words, promises: false })).toBeUndefined();
  });

  test.each([
    "New sheet attached, 2 yes with the legend shortened",
    "New sheet attached, 2 yes, with the changes",
  ])("%s: what changes beside a yes is asked about", (line) => {
    expect(said(line, words)).toBeUndefined();
  });
});

describe("a sheet is a no", () => {
  test.each<[string, Partial<Around>, Record<number, boolean> | undefined]>([
    ["Sheet for 2 coming, will send it tomorrow, 3 is right", {}, { 2: false, 3: true }],
    ["Good catch, sheet attached", { under: 2 }, { 2: false }],
    ["Thanks for catching 2, attached, 3 is right", {}, { 2: false, 3: true }],
    ["Good catch, sheet attached", {}, undefined],
  ])("%s (%j)", (line, around, is) => {
    expect(said(line, around)).toEqual(is);
  });
});

describe("“both corrected” is an answer to both where it stands alone", () => {
  test.each<[string, Partial<Around>, Record<number, boolean> | undefined]>([
    ["Both corrected", {}, { 2: false, 3: false }],
    ["Both corrected", { answered: new Set([2]) }, undefined],
    ["2 is wrong, both corrected", {}, { 2: false }],
    ["2 is right, both corrected", {}, undefined],
  ])("%s (%j)", (line, around, is) => {
    expect(said(line, around)).toEqual(is);
  });
});

describe("answers in turn are to all questions, if nothing else was asked or answered", () => {
  test.each<[Partial<Around>, Record<number, boolean> | undefined]>([
    [{}, { 1: true, 2: true, 3: false }],
    [{ others: [4] }, undefined],
    [{ answered: new Set([1]) }, undefined],
    [{ afterSeveral: true }, undefined],
  ])("%j", (around, is) => {
    expect(said("Yes, yes and no", { open: [1, 2, 3], ...around })).toEqual(is);
  });
});

describe("words for points mean those that are left", () => {
  test.each<[string, Partial<Around>, Record<number, boolean> | undefined]>([
    ["The last one is a typo", mending, { 3: false }],
    ["The last one is a typo", { ...mending, afterSeveral: true }, undefined],
    ["The last one is a typo", { others: [4] }, undefined],
    ["Both are wrong", mending, { 2: false, 3: false }],
    ["Both are wrong", { others: [1] }, undefined],
    ["The rest are wrong", { others: [1], answered: new Set([2]) }, undefined],
    ["The other two are right", { others: [1], answered: new Set([2]) }, undefined],
    ["The other two are wrong", { others: [1], answered: new Set([2]) }, { 3: false }],
    ["The other three are wrong", { others: [1], answered: new Set([2]) }, undefined],
    ["The other two are wrong", { others: [1], answered: new Set([2, 3]) }, undefined],
    ["The other two are wrong", { ...mending, answered: new Set([2]) }, undefined],
    ["2 is right. The other two are wrong", { others: [1] }, { 2: true, 3: false }],
    ["All three are right", { open: [2, 3, 4] }, { 2: true, 3: true, 4: true }],
    ["All three are right", {}, undefined],
    ["Both are right", { under: 2 }, undefined],
  ])("%s (%j)", (line, around, is) => {
    expect(said(line, around)).toEqual(is);
  });

  const [loby, hiit] = [misspelt("LOBY", "LOBBY"), misspelt("HIIT", "HIT")];
  test.each<[string, string[], number[]]>([
    ["The names are right", [loby, hiit], [2, 3]],
    ["The two names are right", [loby, hiit, finish], [2, 3]],
    ["The names are right", [loby, hiit, finish], []],
    ["The three names are right", [loby, hiit, finish], []],
    ["The names are right", [finish, capitals], []],
    ["The two names are right", [capitals, hiit], []],
  ])("%s: %#", (line, questions, yes) => {
    const all = said(line, { ...asking(...questions), others: [] });
    expect(Object.keys(all ?? {})).toEqual(yes.map(String));
  });
});

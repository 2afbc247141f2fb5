import { describe, expect, test } from "vitest";
import { type Around, clausesIn } from "../../../src/reading/reply/clauses.ts";
import { plainly, read } from "./read-reply.ts";

describe("clauses about points are put together freely", () => {
  test.each<[string, number[], number[]]>([
    [
      "2 is correct. 3 is not correct, the right word is BODEGA. 1 I make shorter. I send the sheets later today.",
      [2],
      [3],
    ],
    [
      "New sheet for 1 coming. The other two (2 and 3) are intentional, please leave them as they are.",
      [2, 3],
      [],
    ],
    ["2 was my typo! Fixed sheet attached, I fixed 1 on the other one as well.\n3 YES", [3], [2]],
    ["You're right on all three points.\nCorrected sheets for 1, 2 and 3 are attached.", [], [2, 3]],
    [
      "Number two yes number three yes I'll fix number one and send it over tonight when I get home thanks",
      [2, 3],
      [],
    ],
    [
      "1 you have me there, the corrected sheet is attached.\n2 is not misspelled. YES.\n3 is not a mistake either. YES.",
      [2, 3],
      [],
    ],
    ["1 = new sheet follows this afternoon\n2 = OK\n3 = NOT OK, must be BERGING, new sheet also", [2], [3]],
    ["Yes sir leave em both like they are, thats how the owner wants it. new sheet for 1 coming", [2, 3], []],
    ["Lads, 2 and 3 are grand, leave them as they are. Sheet for the other one is attached.", [2, 3], []],
    [
      "1. Sheet S-310 corrected and attached.\n2 yes. 3 no they want MUDROOM as one word. ill send the sheet over when i get home",
      [2],
      [3],
    ],
    ["1 resending too\n2 y\n3 n - resending", [2], [3]],
  ])("%j", (text, yes, no) => {
    expect(read(text)).toEqual(plainly(yes, no));
  });

  test.each<[string, number[], number[]]>([
    ["All fine apart from 2, fixed sheet attached.", [3], [2]],
    ["Everything's right except 3. Office sending new sheet.", [2], [3]],
    ["everything as it stands, except no. 3. There the sheet was wrong, the new one is attached.", [2], [3]],
    ["We confirm item 2 and 3 are correct. Pls proceed as per submitted.", [2, 3], []],
    ["Answer to 2 is NO, spelled wrong by our drafter. S-118 Rev 2 attached. The rest are YES.", [3], [2]],
    ["Good to go on both, just like they are :)", [2, 3], []],
    ["No worries with 2 and 3, both as intended.", [2, 3], []],
    ["Yes and yes.", [2, 3], []],
    ["Both are confirmed as per approved submittal.", [2, 3], []],
    ["2 and 3 are te reo, spelling is right on both.", [2, 3], []],
    ["Boss said to tell you 2 is yes and 3 is yes.", [2, 3], []],
    ["2 ok\n3 ok", [2, 3], []],
    ["2 yes 3 yes go ahead and cut em", [2, 3], []],
  ])("%j where nothing is to mend", (text, yes, no) => {
    expect(read(text, { others: 0 })).toEqual(plainly(yes, no));
  });
});

describe("a line of which a clause says anything else, or which may be read in two ways, is for a person", () => {
  test.each([
    "All fine apart from 2.\nAnd the porch one.",
    "The rest are YES.",
    "All fine, mostly.",
    "2 is right, 3 is right once he signs.",
    "2 yes, new sheet attached.",
    "Yes, and make 3 brass.",
    "Leave 2 and 3 as they are on the old panel.",
    "Leave both as they are for now.",
    "2 and 3 are fine in white.",
    "Good to go on both, two of each.",
    "No worries with 2 and 3, both as intended by the old owner.",
    "2 is French.\n3 YES",
    "3 ok, will correct\n2 YES",
    "2 n 3 yes",
    "2 yes. It was intended.\n3 YES",
    "Go ahead.",
    "Both 2 yes",
    "Everything is right except the finish.",
    "2 yes as per the drawing he will send",
    "Google says 2 and 3 are right",
    "2 YES, it is SALOON\n3 YES",
    "Yes to both. Good catch.",
    "Both yes, sorry for the typo.",
    "3 yes 2",
    "2 is right, 3 should be in brass.",
    "No changes to 2, changes to 3.",
    "2 stays, 3 goes.",
  ])("%j", (text) => {
    expect(read(text, { others: 0 })).toMatchObject({ person: true });
  });

  test("all may mean points to mend that nobody names", () => {
    expect(read("All fine as they are.")).toMatchObject({ yes: [], person: true });
    expect(read("All three are fine as they are.", { others: 0 })).toMatchObject({ yes: [], person: true });
    expect(read("New sheet for 1 attached. Both are fine as they are.")).toEqual(plainly([2, 3]));
  });
});

describe("a clause", () => {
  const around: Around = {
    open: [2, 3],
    inQuestion: [],
    others: [],
    named: new Set(),
    answered: new Set(),
    isDenied: false,
    promises: true,
    last: undefined,
    under: undefined,
    afterSeveral: false,
    isSilent: () => false,
  };
  const said = (line: string, more: Partial<Around> = {}): Record<number, boolean> | undefined => {
    const all = clausesIn(line, { ...around, ...more });
    return all && Object.fromEntries(all.map(({ number, is }) => [number, is]));
  };

  test("below a quoted point may name that one, and no other", () => {
    expect(said("2 is right", { under: 2 })).toEqual({ 2: true });
    expect(said("It is right", { under: 2 })).toEqual({ 2: true });
    expect(said("It is right", { under: 2, afterSeveral: true })).toBeUndefined();
    expect(said("3 is right", { under: 2 })).toBeUndefined();
    expect(said("2 and 3 are right", { under: 2 })).toBeUndefined();
    expect(said("2 and 3 are right")).toEqual({ 2: true, 3: true });
  });

  test("may be about a point to mend alone: that is wrong, and never right", () => {
    expect(said("1 is wrong", { others: [1] })).toEqual({});
    expect(said("1 is right", { others: [1] })).toBeUndefined();
    expect(said("1 is wrong")).toBeUndefined();
  });

  test.each(["Google", "Alexa", "Word", "Spellcheck"])("that %s says is nobody's", (who) => {
    expect(said(`${who} says 2 is right`)).toBeUndefined();
  });
  test.each(["Ann", "Alexas", "Wordsworth", "Byword", "Gospell"])("that %s says is somebody's", (who) => {
    expect(said(`${who} says 2 is right`)).toEqual({ 2: true });
  });

  test("makes an exception in the same sentence, from a yes to all", () => {
    expect(said("Both are fine except 2")).toEqual({ 2: false, 3: true });
    expect(said("Both are fine. Except 2")).toBeUndefined();
    expect(said("Both are wrong except 2")).toBeUndefined();
    expect(said("3 is fine except 2")).toBeUndefined();
    expect(said("Both are fine except 4")).toBeUndefined();
    expect(said("Both are fine except 4", { others: [4], named: new Set([4]) })).toEqual({
      2: true,
      3: true,
    });
  });

  const silent = (...words: string[]) => ({ isSilent: (piece: string) => words.includes(piece) });
  const dear = silent("Dear clerk", "dear clerk", "Dear clerk 7", "Forgive me", "forgive me");

  test("is read in lines of four hundred characters", () => {
    expect(said(`2 is right${".".repeat(390)}`)).toEqual({ 2: true });
    expect(said(`2 is right${".".repeat(391)}`)).toBeUndefined();
  });

  test.each<[string, Partial<Around>, Record<number, boolean> | undefined]>([
    ["2 is right, a bit more", silent("a bit more"), { 2: true }],
    ["2 is right, a € more", silent("a € more"), undefined],
    ["Dear clerk, 2 is right", dear, { 2: true }],
    [" Dear clerk, 2 is right", dear, { 2: true }],
    ["2 is right, dear clerk", dear, { 2: true }],
    ["2 is right, dear clerk, 3 is right", dear, { 2: true, 3: true }],
    ["2 is right dear clerk", dear, undefined],
    ["Dear clerk 7, 2 is right", dear, undefined],
    ["Forgive me, 2 is right", dear, { 2: true }],
    ["2 is right, forgive me", dear, undefined],
    ["Yes", { open: [2] }, { 2: true }],
    ["Yes, dear clerk", { ...dear, open: [2] }, undefined],
  ])("%s: what says nothing stands between clauses, and not beside a bare yes", (line, more, is) => {
    expect(said(line, more)).toEqual(is);
  });

  test.each([
    "The 'sloop' lamps",
    "The ball's lamps",
    "Habits fine",
    "Shawe'll lamps",
    "Illinois lamps",
    "Hello, Illinois lamps",
    "Embassy lamps",
  ])("“%s” has no short forms in it", (words) => {
    expect(said(`${words}, 2 is right`, silent(words.replace("Hello, ", "")))).toEqual({ 2: true });
  });

  test("is read if there is one way to read it, which says one thing of each point", () => {
    const ours = { open: [3], isDenied: true, last: false };
    expect(said("It was our mistake. We will send you the revised sheet.", ours)).toBeUndefined();
    expect(said("2 is right. 2 is wrong.")).toBeUndefined();
    expect(said("2 y, 3 n")).toEqual({ 2: true, 3: false });
  });

  test("that names no number is about the only question", () => {
    expect(said("It is right", { open: [2] })).toEqual({ 2: true });
    expect(said("It is right")).toBeUndefined();
  });

  test("that tells of a sheet ends what was said of all", () => {
    const three = { open: [2, 3, 4], answered: new Set([2]) };
    expect(said("The rest are fine, sheet for 2 attached", three)).toEqual({ 2: false, 3: true, 4: true });
    expect(said("The rest are fine, sheet for 2 attached, except 3", three)).toBeUndefined();
    expect(said("Corrected sheet attached.", { others: [1] })).toEqual({});
  });

  test("that only things say is nobody's", () => {
    expect(said("Brass says 2 is right")).toBeUndefined();
  });

  test.each<[string, Record<number, boolean> | undefined]>([
    ["2 is right it is French", { 2: true }],
    ["2 is right, we asked the owner", { 2: true }],
    ["2 is right, it's on the drawings", { 2: true }],
    ["2 is right, likewise lads", undefined],
    ["2 is wrong, on purpose", undefined],
    ["2 is wrong, we asked the owner", undefined],
    ["2 is wrong, SALON", { 2: false }],
    ["2 is right, SALON", undefined],
    ["2 is right, 4 is French", undefined],
  ])("%s: a reason stands beside a yes, and other words beside a no", (line, is) => {
    expect(said(line)).toEqual(is);
  });
  const mending = { others: [1], named: new Set([1]) };
  test.each<[string, Partial<Around>, Record<number, boolean> | undefined]>([
    ["It should be LOBBY", {}, undefined],
    ["It should be LOBBY", { under: 2 }, { 2: false }],
    ["It should be LOBBY", { under: 2, last: true }, undefined],
    ["2 is right, should be LOBBY", {}, undefined],
    ["1 is wrong, SALON", mending, {}],
    ["2 is right, 1 is wrong, new sheet attached", mending, { 2: true }],
    ["2 is right, new sheet attached", mending, undefined],
    ["Corrected sheet attached", {}, undefined],
    ["Corrected sheet attached", { under: 2 }, { 2: false }],
    ["The corrected sheet comes tomorrow", { isDenied: true }, {}],
    ["Sheet for 2 attached", { promises: false }, { 2: false }],
    ["Sheet for 4 attached", {}, undefined],
    ["I fixed 2", {}, { 2: false }],
    ["I fixed 2", { promises: false }, undefined],
    ["2: done", {}, { 2: false }],
    ["2: done", { promises: false }, undefined],
    ["2: new sheet attached", { promises: false }, { 2: false }],
    ["2: attached", { promises: false }, { 2: false }],
    ["Both are fine except 2, new sheet attached", {}, { 2: false, 3: true }],
    ["It is right except 2", { open: [2] }, undefined],
  ])("%s: what a sheet shall say, and which point it comes for (%j)", (line, more, is) => {
    expect(said(line, more)).toEqual(is);
  });

  test.each<[string, Partial<Around>, Record<number, boolean> | undefined]>([
    ["Go ahead", { open: [2] }, { 2: true }],
    ["Go ahead", { open: [2], under: 2 }, undefined],
    ["Go ahead", { open: [2], ...mending }, undefined],
    ["Go ahead", { answered: new Set([2, 3]) }, {}],
    ["Go ahead", { answered: new Set([2]) }, undefined],
    ["2 is right, go ahead", { open: [2] }, { 2: true }],
    ["2 is right, go ahead", {}, undefined],
    ["2 is wrong, 3 is right, go ahead", {}, undefined],
  ])("%s: who lets everything go on has said yes to all (%j)", (line, more, is) => {
    expect(said(line, more)).toEqual(is);
  });

  test.each<[string, Partial<Around>, Record<number, boolean> | undefined]>([
    ["It is right", { open: [2], others: [1] }, undefined],
    ["It is right", { open: [2], afterSeveral: true }, undefined],
    ["It is right, 2 is right, dear clerk", { open: [2], ...dear }, undefined],
    ["2 is right, it is right, dear clerk", { open: [2], ...dear }, { 2: true }],
    ["Everything is right", { open: [2], under: 2 }, undefined],
    ["2 is right, everything is fine", { open: [2], under: 2 }, { 2: true }],
    ["Both are right", { answered: new Set([2]) }, { 2: true, 3: true }],
    ["Both are right", { open: [2, 3, 4] }, undefined],
    ["The rest are right", { answered: new Set([2]) }, { 3: true }],
    ["The rest are right", mending, { 2: true, 3: true }],
    ["The rest are right", {}, undefined],
    ["The rest are wrong", { answered: new Set([2, 3]), ...mending }, undefined],
  ])("%s: words for points mean as many as they say (%j)", (line, more, is) => {
    expect(said(line, more)).toEqual(is);
  });

  test("that gives other words needs a sheet", () => {
    expect(said("2 no, SALON")).toEqual({ 2: false });
    expect(said("2 no, SALON", { promises: false })).toBeUndefined();
  });
});

describe("our answer below a reply, of which nothing tells where it begins", () => {
  const answer = [
    "CONFIRM: questions to answer.",
    "  1. Shorten it, and send the sheet again.",
    "PLEASE CONFIRM",
    "  2. “SALONA” in row 1 of button 1 looks misspelt.",
  ];
  test("is known line by line, short lines by those around them", () => {
    const text = ["2 YES", "", "Dana Whitlock", "", ...answer].join("\n");
    expect(read(text, { open: [2], answer: answer.join("\n") })).toEqual(plainly([2]));
  });
  test("holds no words that it does not say", () => {
    const changed = answer.with(2, "PLEASE CONFIRM BY FRIDAY");
    const text = ["2 YES", "", "Dana Whitlock", "", ...changed].join("\n");
    expect(read(text, { open: [2], answer: answer.join("\n") })).toMatchObject({ yes: [], person: true });
  });
});

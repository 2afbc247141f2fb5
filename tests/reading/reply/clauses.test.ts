import { describe, expect, test } from "vitest";
import type { Around } from "../../../src/reading/reply/clause-acts.ts";
import { said } from "./read-clauses.ts";
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

/** An answer with a point to fix on a plate, and questions of several kinds about devices. */
const asked = [
  "FAIL: 1 to fix, 4 questions.",
  "S-1.pdf",
  "Plate, S-1",
  "  1. Not really filled in: “Contact name” (“x”).",
  "     Write what belongs there and send the sheet again.",
  "foyer.pdf",
  "Device, S-1 position 1 of 2",
  "  2. “HIIT” in row 1 of button 2 looks misspelt.",
  "     If you mean HIT, send the sheet again.",
  "     Or reply “2 YES” if it is meant as it stands.",
  "  3. “AISLE” stands on button 1 and button 3.",
  "     Send the sheet again with the legends that tell them apart.",
  "     Or reply “3 YES” if it is meant as it stands.",
  "  4. The device is Plum, but plate S-1 is Barley.",
  "     If only one is wanted, send the sheet again with the right finish.",
  "     Or reply “4 YES” if it is meant as it stands.",
  "  5. “STRECH” in row 1 of button 3 looks misspelt.",
  "     If you mean STRETCH, send the sheet again.",
  "     Or reply “5 YES” if it is meant as it stands.",
].join("\n");
const readAsked = (text: string, open: readonly number[]): ReturnType<typeof read> =>
  read(text, { open, others: 1, answer: asked, bringsSheets: /attached/iu.test(text) });

describe("what people usually write beside an answer", () => {
  test.each<[string, readonly number[], readonly number[]]>([
    ["1 contact name filled in, sheet attached\n2 YES", [2], []],
    ["2 YES, plate sheet attached.", [2], []],
    ["2 YES. Plate attached.", [2], []],
    ["2 YES, high intensity interval training. S-1.pdf attached.", [2], []],
    ["1 fixed, S-1 attached. 2 yes, it won't fit otherwise", [2], []],
    ["1 fixed, S-1 attached. 2 yes, HIT does not fit", [2], []],
    ["1 fixed. HIIT is right, STRECH is not. Corrected sheets are attached.", [2], [5]],
    [
      "1 fixed. HIIT is the class and 3 is fixed on the foyer sheet, so 2 is right. Sheets attached.",
      [2],
      [3],
    ],
    ["1 fixed. 2 YES\n3 NO - one is the north aisle and the other the south. Sheets attached.", [2], [3]],
    ["1 fixed. 2 YES\n3 NO, should be N AISLE and S AISLE. Revised foyer sheet attached.", [2], [3]],
    ["1 fixed. 2 YES\n3 NO, AISLE 1 and AISLE 2, sheets attached", [2], [3]],
    ["1 fixed, sheet attached. 3 YES, three-way", [3], []],
    ["1 fixed. 4 NO, the device should be Barley like the plate. Sheets attached.", [], [4]],
    ["1 fixed. 4 NO, Barley throughout. Sheets attached.", [], [4]],
    ["1 fixed. 5 NO, it's stretch, on the same sheet. Sheets attached.", [], [5]],
    ["1 fixed. 5 NO. The owners changed their minds, it's going to be YOGA now. Sheets attached.", [], [5]],
    ["2 YES\n\nS-1 attached with the contact name.", [2], []],
    ["See attached for 1 and 5. 2 YES", [2], [5]],
  ])("%j", (text, yes, no) => {
    expect(readAsked(text, [...yes, ...no])).toEqual(plainly([...yes], [...no]));
  });
});

describe("what sounds like it and wishes is for a person", () => {
  test.each<[string, readonly number[]]>([
    ["2 YES, plate sheet needs changing too", [2]],
    ["2 YES, plate sheet attached, use it for both", [2]],
    ["2 YES. Plate not needed.", [2]],
    ["2 YES, high intensity training. S-1.pdf attached.", [2]],
    ["1 fixed, S-1 attached. 2 yes, make it fit", [2]],
    ["1 fixed, S-1 attached. 2 yes, plate won't fit", [2]],
    ["1 fixed, S-1 attached. No, it's not what we want. 2 YES", [2]],
    ["1 fixed. HIIT is right, STRECH is not as important. Sheets attached.", [2, 5]],
    ["1 fixed. 2 YES\n3 NO - one is brass and the other steel. Sheets attached.", [2, 3]],
    ["1 fixed. 2 YES\n3 YES - one should be the north aisle and the other the south.", [2, 3]],
    ["3 NO, AISLE 1 and AISLE 2 in bold, sheets attached", [3]],
    ["3 NO, NORTH and SOUTH in bold, sheets attached", [3]],
    ["1 fixed, sheet attached. 3 YES, make it three-way", [3]],
    ["1 fixed, sheet attached. 4 YES, three-way", [4]],
    ["1 fixed. 4 NO, slate throughout. Sheets attached.", [4]],
    ["1 fixed. 4 YES, Barley throughout. Sheets attached.", [4]],
    ["1 fixed. 4 NO, Barley throughout the house. Sheets attached.", [4]],
    ["1 fixed. 5 NO, it's brass, on the same sheet. Sheets attached.", [5]],
    ["1 fixed, sheet attached. 2 YES. The owners changed their minds.", [2]],
    ["2 YES\n\nS-1 attached, ship it to the contact.", [2]],
    ["yeah no", [2]],
  ])("%j", (text, open) => {
    expect(readAsked(text, open)).toMatchObject({ yes: [], person: true });
  });
});

/** What an answer to a single question says of it. */
const single = (question: string): string =>
  `CONFIRM: 1 question.\nhall.pdf\nDevice alone, H-1\n  1. ${question}`;
const capitals = single(
  "Some rows are in capitals, such as “READING”, and some are not,\n     such as “Stacks”.",
);
const several = single(
  "“Station mark” says “TYP OF 4”, which seems to ask for several. A\n     sheet orders one.",
);

describe("words that fit one kind of question are read at that one alone", () => {
  test.each<[string, string, string]>([
    ["1 NO. They should all be capitals, new sheet attached.", capitals, several],
    ["1 NO. All caps now, sheet attached.", capitals, several],
    ["No, all should be capitals. New sheet attached.", capitals, several],
    ["1 NO. We'll send a sheet for each.", several, capitals],
    ["1 yes, just one", several, capitals],
    ["1 YES. We only need the one, the mark is copied from the architect's drawing.", several, capitals],
  ])("%j", (text, of, other) => {
    const [here, there] = [of, other].map((answer) => read(text, { open: [1], others: 0, answer }));
    expect(here).toEqual(/yes/iu.test(text) ? plainly([1]) : plainly([], [1]));
    expect(there).toMatchObject({ yes: [], person: true });
  });

  test("a denied slip is a yes", () => {
    const one = { open: [1], others: 0, answer: several };
    expect(read("No, it's not a typo. 1 YES", one)).toEqual(plainly([1]));
    expect(read("No, it's not what we want. 1 YES", one)).toMatchObject({ yes: [], person: true });
  });

  test.each([
    ["1 NO, they should all be gold, sheet attached", capitals],
    ["1 NO. All caps except the last one, sheet attached.", capitals],
    ["1 YES. They should all be capitals.", capitals],
    ["1 NO, they should all be capitals.", capitals],
    ["1 yes, just one of each", several],
    ["1 yes, just one more", several],
    ["1 YES. We only need the one, in brass.", several],
    ["1 YES, one per floor", several],
  ])("%j is for a person", (text, answer) => {
    expect(read(text, { open: [1], others: 0, answer })).toMatchObject({ yes: [], no: [], person: true });
  });
});

const inTurn = (some: readonly number[]): number[] => some.toSorted((one, other) => one - other);

describe("answers to all questions at once", () => {
  const three = { open: [1, 2, 3], others: 0, answer: "  1. One.\n  2. Two.\n  3. Three." };
  test.each<[string, number[], number[]]>([
    ["Yes, yes and no. New sheet attached.", [1, 2], [3]],
    ["Yes / no / yes - new sheet attached", [1, 3], [2]],
    ["yes yes no, sheet attached", [1, 2], [3]],
    ["All three fixed on the attached sheet.", [], [1, 2, 3]],
    ["Embarrassing. All three corrected, new sheet attached.", [], [1, 2, 3]],
    ["The first two are right. 3 is fixed on the attached sheet.", [1, 2], [3]],
    ["The last two are right. 1 is fixed on the attached sheet.", [2, 3], [1]],
    ["Revised sheet attached. 1 and 2 YES, 3 NO.", [1, 2], [3]],
  ])("%j", (text, yes, no) => {
    const got = read(text, three);
    expect({ ...got, yes: inTurn(got.yes), no: inTurn(got.no) }).toEqual(plainly(yes, no));
  });

  test("of which there are more or fewer than questions are for a person", () => {
    const four = { open: [1, 2, 3, 4], others: 0, answer: `${three.answer}\n  4. Four.` };
    for (const text of [
      "Yes please, yes, no. New sheet attached.",
      "Yes, yes, no, no, yes. New sheet attached.",
    ])
      expect(read(text, four)).toMatchObject({ yes: [], no: [], person: true });
  });

  test.each([
    "Yes, yes and maybe. New sheet attached.",
    "Yes, yes and no problem",
    "Yes, yes and no, leave the last one blank. New sheet attached.",
    "Yes and no. New sheet attached.",
    "All three fixed? Sheet attached.",
    "All three corrected, please make the last one bold. Sheet attached.",
    "Please fix all three.",
    "The first two are right in gold. 3 NO, sheet attached",
    "Revised sheet attached, in oak. 1 and 2 YES, 3 NO.",
  ])("%j is for a person", (text) => {
    expect(read(text, three)).toMatchObject({ yes: [], no: [], person: true });
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

import { describe, expect, test } from "vitest";
import type { Around } from "../../../src/reading/reply/clause-acts.ts";
import { asking, several as ofSeveral, said as saidIn } from "./read-clauses.ts";
import { plainly, read } from "./read-reply.ts";

const misspelt = (word: string, meant: string): string =>
  `“${word}” in row 1 of button 1 looks misspelt.\n     If you mean ${meant}, send the sheet again.`;
const fix =
  "The legend in row 1 of button 2 has 13 characters; 10 fit.\n     Shorten it or split it over the rows.";
const twice =
  "“LAMPS” stands on button 2 and button 4.\n     Send the sheet again with the legends that tell them apart.";
const several =
  "“Station mark” says “TYP OF 4”, which seems to ask for several. A\n     sheet orders one.\n     Send one sheet for each, with its own station mark.";
const finish =
  "The finish is Chalk here and Slate on the other 3 devices of this\n     order.\n     If all are to be alike, send the sheet again.";
const capitals =
  "Some rows are in capitals, such as “READING”, and some are not,\n     such as “Stacks”.\n     If all are to be alike, send the sheet again.";

/** What a reply says to an answer with these points, the first of which are to be fixed. Sheets come where it says so. */
function said(points: readonly string[], fixes: number, text: string): ReturnType<typeof read> {
  const answer = `CONFIRM: questions to answer.\n\nhall.pdf\n${points.map((one, i) => `  ${i + 1}. ${one}`).join("\n")}`;
  const open = points.map((_, i) => i + 1).slice(fixes);
  return read(text, { open, others: fixes, answer, bringsSheets: /\battached\b/iu.test(text) });
}

describe("what stands on the sheet that comes is heard beside a no", () => {
  const points = [fix, misspelt("SALITA", "SALTY"), misspelt("COMDOR", "CONDOR")];
  test.each<[string, number[], number[]]>([
    ["I attached the sheet with the legend split over two rows and COMEDOR corrected. 2 is right.", [2], [3]],
    ["2 yes\n3 no - comedor. New sheet attached", [2], [3]],
    ["2 yes\n3 no, comedor. on the attached", [2], [3]],
    ["New sheet attached, legend is shortened, COMDOR is now COMEDOR. 2 yes.", [2], [3]],
    ["2 yes, 3 is missing an E. Will send hall.pdf again tonight with the address on it.", [2], [3]],
    ["2 YES. Comdor was me typing too fast, new sheet attached.", [2], [3]],
    ["COMEDOR obviously! 2 is right. Fixed sheets attached incl. contact name.", [2], [3]],
    ["2 YES. The last one is my typo, so 3 NO. Amended sheet attached with full delivery address.", [2], [3]],
    ["2 YES\nThe other two are corrected, sheet attached.", [2], [3]],
    ["2 no\n3 yes\nwill get you the sheets monday, out on a job til then", [3], [2]],
    [
      "2 and 3 yes. Corrected sheet with the billing city to follow from Marie in accounts this afternoon.",
      [2, 3],
      [],
    ],
    ["2 and 3 yes. Ship to is same as bill to, ticked it. Sheet attached", [2, 3], []],
  ])("%j", (text, yes, no) => {
    expect(said(points, 1, text)).toEqual(plainly(yes, no));
  });

  test.each([
    "I attached the sheet with the legend split over two rows and COMEDOR in gold. 2 is right.",
    "I attached the sheet with KITCHEN corrected. 2 is right.",
    "I attached the sheet with COMDOR corrected in bold. 2 is right.",
    "2 yes\n3 yes - comedor. New sheet attached",
    "2 yes\n3 yes, sheet attached with COMEDOR",
    "2 yes\n3 no - pantry. New sheet attached",
    "2 yes, 3 is missing an E, put it in please. Sheet attached.",
    "2 yes, 3 is missing a chair. Sheet attached.",
    "2 YES, with the legend split over two rows\n3 YES\nhall.pdf attached",
    "2 YES\nThe other two should be split over two rows\n3 YES",
    "2 YES, out of the office\n3 YES, when I am back from site",
    "2 YES. 3 YES. New sheet attached with logos.",
  ])("%j is for a person", (text) => {
    expect(said(points, 1, text)).toMatchObject({ person: true });
  });
});

describe("as many sheets as a mark asks for are a no to it", () => {
  test.each([
    "1 NO. We'll send four sheets with their own marks.",
    "1 NO. Four sheets attached, one for each.",
    "Sorry didnt realise you needed one each. Will send 4 sheets in the morning",
    "Ok understood, my mistake. 1 NO, I'll make out four separate sheets and send them over by end of day.",
  ])("%j", (text) => {
    expect(said([several], 0, text)).toEqual(plainly([], [1]));
  });

  test.each([
    "1 YES, just one of each",
    "1 YES. Four sheets attached, one for each.",
    "1 NO. Four sheets attached, two for each.",
    "Will send 3 sheets in the morning",
    "Will send 4 sheets if you need them",
    "1 NO. Make four of them.",
    "1 NO. Four sheets attached, all in brass.",
    "Sorry didnt realise you needed one each. Make four from that sheet.",
  ])("%j is for a person", (text) => {
    expect(said([several], 0, text)).toMatchObject({ person: true });
  });
});

describe("how a slip came about, and what is wanted now, tells of a no alone", () => {
  test.each<[string[], string, number[], number[]]>([
    [[capitals], "1 NO - caps lock came off half way. Attached is hall.pdf all in capitals.", [], [1]],
    [
      [misspelt("CWTCH", "WATCH")],
      "1 NO. Client has gone off it, he wants SNUG instead. Amended sheet attached.",
      [],
      [1],
    ],
    [
      [misspelt("CWTCH", "WATCH")],
      "1 NO, the room is now to be called BALLROOM, see sheet attached.",
      [],
      [1],
    ],
    [
      [misspelt("FOYR", "FOUR"), twice],
      "None of those are right, I typed it in the van. New sheet attached.",
      [],
      [1, 2],
    ],
    [
      [misspelt("HIIT", "HIT"), misspelt("STRECH", "STRETCH")],
      "HIIT is correct. STRECH is not, that's on me – corrected sheet is attached.",
      [1],
      [2],
    ],
    [
      [misspelt("HIIT", "HIT"), misspelt("STRECH", "STRETCH")],
      "Good catch on 2! Fixed and attached. HIIT (1) is right.",
      [1],
      [2],
    ],
    [
      [misspelt("HIIT", "HIT"), misspelt("STRECH", "STRETCH")],
      "Thanks for catching 2! 1 is right. Sheet attached.",
      [1],
      [2],
    ],
    [
      [misspelt("HIIT", "HIT"), misspelt("STRECH", "STRETCH")],
      "1 is correct, 2 has been corrected, see attached sheet.",
      [1],
      [2],
    ],
    [
      [misspelt("HIIT", "HIT"), misspelt("STRECH", "STRETCH")],
      "Revised hall.pdf attached with STRETCH. 1 YES.",
      [1],
      [2],
    ],
    [
      [misspelt("MEZZ", "MEZE"), twice],
      "1 YES\n2 should be LAMPS L and LAMPS R, sheet to follow tomorrow when im back in the office",
      [1],
      [2],
    ],
    [
      [misspelt("MEZZ", "MEZE"), twice],
      "1 YES\n2. No - please see attached, they are now LAMPS L and LAMPS R",
      [1],
      [2],
    ],
    [
      [misspelt("MEZZ", "MEZE"), twice],
      "1 is right. The second LAMPS should have been SPOTS, good catch. Revised sheet attached.",
      [1],
      [2],
    ],
    [[finish, misspelt("ALGAE", "ALGEBRA")], "1 NO (I'll send the sheet in Slate shortly)\n2 YES", [2], [1]],
  ])("%j: %j", (points, text, yes, no) => {
    expect(said(points, 0, text)).toEqual(plainly(yes, no));
  });

  test.each<[string[], string]>([
    [[capitals], "1 YES - caps lock came off half way."],
    [[capitals], "1 NO - caps lock came off half way. All in capitals please."],
    [
      [misspelt("CWTCH", "WATCH")],
      "1 NO. Client has gone off it, he wants brass instead. Amended sheet attached.",
    ],
    [
      [misspelt("CWTCH", "WATCH")],
      "1 YES. Client has gone off it, he wants SNUG instead. Amended sheet attached.",
    ],
    [[misspelt("CWTCH", "WATCH")], "1 NO. Client has gone off the job. Sheet attached."],
    [[misspelt("CWTCH", "WATCH")], "1 NO, they should all be gold, sheet attached"],
    [[misspelt("CWTCH", "WATCH")], "1 is the name of the hall so it should be in capitals"],
    [[misspelt("FOYR", "FOUR"), twice], "None of those are right, I typed it in the van. Fix them."],
    [[misspelt("FOYR", "FOUR"), twice], "None of those need a new sheet."],
    [
      [misspelt("HIIT", "HIT"), misspelt("STRECH", "STRETCH")],
      "1 YES. Thanks for catching 2, you can fix it. Sheet attached.",
    ],
    [
      [misspelt("HIIT", "HIT"), misspelt("STRECH", "STRETCH")],
      "You are right about 2, add the T. Sheet attached. 1 YES",
    ],
    [
      [misspelt("HIIT", "HIT"), misspelt("STRECH", "STRETCH")],
      "Good catch on 2! Please fix it. HIIT (1) is right.",
    ],
    [
      [misspelt("HIIT", "HIT"), misspelt("STRECH", "STRETCH")],
      "Revised hall.pdf attached with STRETCH in bold. 1 YES.",
    ],
    [[misspelt("HIIT", "HIT"), misspelt("STRECH", "STRETCH")], "STRETCH. 1 YES."],
    [[misspelt("HIIT", "HIT"), misspelt("STRECH", "STRETCH")], "1 YES. 2 YES with STRETCH. Sheet attached."],
    [[misspelt("MEZZ", "MEZE"), twice], "1 YES\n2 should be LAMPS L and LAMPS R, please change it"],
    [
      [misspelt("MEZZ", "MEZE"), twice],
      "1 is right. The second LAMPS should be SPOTS, and the first in red. Revised sheet attached.",
    ],
    [[finish, misspelt("ALGAE", "ALGEBRA")], "1 NO (send it in Brass)\n2 YES"],
    [[finish, misspelt("ALGAE", "ALGEBRA")], "1 YES, in Slate\n2 YES"],
  ])("%j: %j is for a person", (points, text) => {
    expect(said(points, 0, text)).toMatchObject({ person: true });
  });
});

describe("words for what comes are read as they are meant", () => {
  test.each<[string, string, number[]]>([
    [several, "Four sheets attached.", [1]],
    [several.replace("OF 4", "OF 2"), "Will send two sheets in the morning", [1]],
    [several.replace("OF 4", "OF 12"), "Will send 12 sheets in the morning", [1]],
    [capitals, "1 NO, they should all match. New sheet attached.", [1]],
    [finish, "1 NO, they should all match. New sheet attached.", [1]],
    [misspelt("WITHRS", "WITHER"), "It now says WITHERS, sheet attached.", [1]],
  ])("%#: %s", (question, text, no) => {
    expect(said([question], 0, text)).toEqual(plainly([], no));
  });

  test.each([
    [several, "Will send two sheets in the morning"],
    [misspelt("HIIT", "HIT"), "Will send 4 sheets in the morning"],
    [misspelt("HIIT", "HIT"), "1 NO, they should all match. New sheet attached."],
  ])("%#: %s is for a person", (question, text) => {
    expect(said([question], 0, text)).toMatchObject({ person: true });
  });
});

describe("what goes with a sheet is no answer where none comes", () => {
  test.each([
    "corrected and attached",
    "enclosed",
    "on the attached",
    "for both positions",
    "legends split over two rows",
    "we shortened the legends",
    "we included the address",
    "ship-to is the same as bill-to",
    "ticked that",
  ])("%s", (what) => {
    expect(saidIn(`No to 2, ${what}`)).toEqual({ 2: false });
    expect(saidIn(`No to 2, ${what}`, { promises: false })).toBeUndefined();
  });

  test.each<[string, number[]]>([
    ["Only 2 is wrong", [2]],
    ["2 missed a letter", [2]],
    ["2 should have an E", [2]],
    ["2 is now spelled out", [2]],
    ["2 is spelled out now", [2]],
    ["2 is now LOBBY", [2]],
    ["The second 2 is LOBBY", [2]],
    ["The last one is a typo", [3]],
    ["The last one missed a letter", [3]],
    ["Two typos", [2, 3]],
    ["Neither is right", [2, 3]],
  ])("%s", (line, no) => {
    expect(saidIn(line)).toEqual(Object.fromEntries(no.map((number) => [number, false])));
    expect(saidIn(line, { promises: false })).toBeUndefined();
  });

  test("“the rest are corrected”, and “a sheet for each”", () => {
    for (const promises of [true, false]) {
      expect(saidIn("The rest are corrected", { answered: new Set([2]), promises })).toEqual(
        promises ? { 3: false } : undefined,
      );
      expect(
        saidIn("We made a separate sheet for each", { ...asking(ofSeveral), others: [], promises }),
      ).toEqual(promises ? { 2: false } : undefined);
    }
  });
});

describe("what a clause says of points beside a no", () => {
  test.each<[string, Record<number, boolean> | undefined]>([
    ["2 is a no, 3 is right", { 2: false, 3: true }],
    ["Both are a no", { 2: false, 3: false }],
    ["2 is wrong, they are now Lobby", { 2: false }],
    ["2 is now brass", undefined],
    ["2 is wrong, the second one is LOBBY", { 2: false }],
    ["2 is wrong, the second one is gold", undefined],
    ["2 is wrong, the owner has settled on SNUG instead", { 2: false }],
    ["2 is wrong, the owner has settled on gold instead", undefined],
    ["2 is wrong, the room is now called SNUG", { 2: false }],
  ])("%s", (line, is) => {
    expect(saidIn(line)).toEqual(is);
  });
});

describe("what is said of none, of the last or of the word itself", () => {
  const three = { open: [2, 3, 4] };
  const words = asking(
    "“SALITA” in row 1 of button 1 looks misspelt. If you mean SALTY, send the sheet again.",
    "“COMDOR” in row 1 of button 1 looks misspelt. If you mean CONDOR, send the sheet again.",
  );
  test.each<[string, Partial<Around>, Record<number, boolean> | undefined]>([
    ["Two typos", { answered: new Set([2]) }, undefined],
    ["Neither is right", three, undefined],
    ["None is right", three, { 2: false, 3: false, 4: false }],
    ["2 is right. COMEDOR. New sheet attached", words, undefined],
    ["2 is right. COMEDOR of course", words, { 2: true, 3: false }],
    ["2 is right. It should be COMEDOR", words, { 2: true, 3: false }],
    ["2 is right. It should be comedor", words, undefined],
    ["2 reads now LOBBY", {}, { 2: false }],
    ["2 says now Lobby", {}, undefined],
    ["2 is wrong, the top one should be LOBBY", {}, { 2: false }],
    ["2 is wrong, the top one should be lobby", {}, undefined],
    ["The second 3 is LOBBY", {}, { 3: false }],
    ["No to 2, the address is filled in and 3 is right", {}, { 2: false, 3: true }],
    ["No to 2, the address is filled in and 3 is right", { promises: false }, undefined],
  ])("%s (%#)", (line, around, is) => {
    expect(saidIn(line, around)).toEqual(is);
  });
});

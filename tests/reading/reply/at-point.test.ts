import { describe, expect, test } from "vitest";
import { type AtPoint, pointsApart, saidAtPoint } from "../../../src/reading/reply/at-point.ts";
import { read } from "./read-reply.ts";

describe("what is said of a point that comes again anyway leaves the answers beside it as they are", () => {
  test.each([
    ["1. Legend has been shortened to fit. Revised S-101 attached.\n2. Yes\n3. Yes", [2, 3], []],
    ["1 – aye, redone and attached\n2 YES\n3 YES", [2, 3], []],
    ["Item 1 - Amended. Pls refer to attached S-201 Rev 1.\nItem 2 - Yes.\nItem 3 - Yes.", [2, 3], []],
    ["1. The fitter will redo it and send it over.\n2. YES\n3. YES", [2, 3], []],
    ["1. Revised sheet attached, row 3 redone\n2 yes\n3 yes", [2, 3], []],
    ["1: new sheet attached with the ship-to filled in\n2 yes\n3 yes", [2, 3], []],
    ["2. Yes\n3. No. It should read Terrace. Corrected sheet attached.", [2], [3]],
    ["2 yes\n3 NO, superseded by rev P04, which is attached again here", [2], [3]],
    ["2 y\n3 n, new one coming", [2], [3]],
    ["2 YES\nFor item 3 kindly find attached the corrected sheet.", [2], [3]],
    ["For 1, the new sheet is attached. 2 yes, 3 yes.", [2, 3], []],
    ["Number 2 yes. Number 3 no, typo on our side. New sheet attached.", [2], [3]],
  ])("%j", (text, yes, no) => {
    expect(read(text)).toEqual({ yes, no, person: false });
  });
});

describe("what reaches beyond such a point is for a person", () => {
  test.each([
    "1. New sheet attached, and brass for the others\n2 yes\n3 yes",
    "1. Shortened, attached. Call me before you start.\n2 yes\n3 yes",
    "1 not shortened, it fits\n2 yes\n3 yes",
    "1. Leave it, the sheet is attached as it was\n2 yes\n3 yes",
    "1. New sheet attached. Why was it too long?\n2 yes\n3 yes",
    "1. Attached. The owner prefers the dark version.\n2 yes\n3 yes",
    "1. Attached. Add a pilot light.\n2 yes\n3 yes",
    "1. New sheet attached, arrow 3 redone\n2 yes\n3 yes",
    "1. New sheet attached, redone to begin three rows\n2 yes\n3 yes",
    "1. New sheet attached with sheet prices\n2 yes\n3 yes",
    "1. Revised datasheet 2 attached\n2 yes\n3 yes",
    "1. Fixed. Three of them.\n2 yes\n3 yes",
    "1. New sheet attached with deeper letters\n2 yes\n3 yes",
    "1. New sheet attached. The hall plate goes in the kitchen now.\n2 yes\n3 yes",
    "1. New sheet attached, the wife fancies something curly\n2 yes\n3 yes",
    "2 yes\n3 NO, new sheet attached. The inspector has yet to sign.",
    "2 yes\n3 NO, it should be TERRACE",
    "2 yes\n3 NO, new sheet attached, and cancel the other",
    "2 yes\n3 NO, new sheet attached if the owner agrees",
  ])("%j", (text) => {
    expect(read(text)).toMatchObject({ person: true });
  });
});

describe("a reason behind a yes at its number is heard", () => {
  test.each([
    ["2 YES, it's Welsh\n3 YES", [2, 3]],
    ["2. Yes - confirmed against the room schedule\n3. Yes, as per approved drawing", [2, 3]],
    ["2 yes, it's the client's surname\n3 yes, that's how he wants it", [2, 3]],
    ["2 YES, I did ask twice!\n3 YES :-)", [2, 3]],
  ])("%j", (text, yes) => {
    expect(read(text)).toEqual({ yes, no: [], person: false });
  });
});

describe("a yes is none beside what may take something of it back", () => {
  test.each([
    "2 yes?",
    "2 yes-ish",
    "2 yes, you are right",
    "2 YES, once the owner signs",
    "2 YES, confirmed with the inspector tomorrow",
    "2 YES, it is brass now",
    "2 YES, it is the second one",
    "2 YES, it is SALOON",
    "2 YES, that is what they wanted before",
    "2 YES, these are to go in black",
    "2 YES, two of them",
    "2 YES, but smaller",
    "2 YES, it will change",
    "2 YES, call me",
    "2 YES, add a star",
    "2 YES, it's Saloona",
  ])("%j", (text) => {
    expect(read(text)).toMatchObject({ yes: [], person: true });
  });
});

describe("who introduces answers says nothing", () => {
  test.each([
    "Replies inline.",
    "Please see our responses below:",
    "See my answers in red below.",
    "With reference to trailing mail, please find below our confirmation.",
    "Per Mark:",
    "With regard to the questions:",
  ])("%j", (words) => {
    expect(read(`${words}\n2 YES\n3 YES`)).toEqual({ yes: [2, 3], no: [], person: false });
    expect(read(`${words.replace(/[.:]$/u, "")} and hold the order.\n2 YES\n3 YES`)).toMatchObject({
      person: true,
    });
  });
});

describe("one line at a point", () => {
  const points: AtPoint = { open: [2, 3], others: 1, isOther: (number) => number === 1, promises: false };
  const at = (line: string, more: Partial<AtPoint & { under: number; afterSeveral: boolean }> = {}) => {
    const { under, afterSeveral = false, ...given } = more;
    const own = { line, afterSeveral, ...(under === undefined ? {} : { under }) };
    return saidAtPoint(own, { ...points, ...given });
  };
  const yes = (...numbers: number[]) => numbers.map((number) => ({ number, is: true }));
  const no = (...numbers: number[]) => numbers.map((number) => ({ number, is: false }));

  test.each([
    ["2: yes, it is Czech", yes(2)],
    ["2 & 3: yes, it is Czech", yes(2, 3)],
    ["Question 3 - yes", yes(3)],
    ["2: yes, it is Czech ;-)", undefined],
    ["2: yes, it is Czech :-)", yes(2)],
    ["4: yes", undefined],
    ["2 & 4: yes", undefined],
    ["1: yes", undefined],
    ["1: new sheet attached", []],
    ["1: new sheet attached ;-)", undefined],
    ["1: attached, redone in two rows", []],
    ["1: attached, redone in two rowboats", undefined],
    ["2: new sheet attached", no(2)],
    ["2: ok, new sheet attached", undefined],
    ["Good catch on 3, new sheet attached", no(3)],
    ["2: no", undefined],
    ["2: no, new sheet attached", no(2)],
  ])("%s", (line, said) => {
    expect(at(line)).toEqual(said);
  });

  test("a no needs a new sheet, which may be promised elsewhere", () => {
    expect(at("2: no, our typo", { promises: true })).toEqual(no(2));
    expect(at("2: no, our typo")).toBeUndefined();
    expect(at("2: no, make it red", { promises: true })).toBeUndefined();
  });

  test("it is about the point under which it stands, or that it names, and never about two", () => {
    expect(at("yes, it is Czech", { under: 2 })).toEqual(yes(2));
    expect(at("2: yes, it is Czech", { under: 2 })).toEqual(yes(2));
    expect(at("3: yes, it is Czech", { under: 2 })).toBeUndefined();
  });

  test("without a number it is about the only question, where nothing else was asked", () => {
    const only = { open: [2], others: 0 };
    expect(at("yes, it is Czech", only)).toEqual(yes(2));
    expect(at("yes it is Czech", only)).toBeUndefined();
    expect(at("oh yes, it is Czech", only)).toBeUndefined();
    expect(at("yes, it is Czech", { ...only, others: 1 })).toBeUndefined();
    expect(at("yes, it is Czech", { ...only, afterSeveral: true })).toBeUndefined();
    expect(at("yes, it is Czech", { others: 0 })).toBeUndefined();
  });

  test("“both” are two, and “all” are all", () => {
    expect(at("both yes, it is Czech", { others: 0 })).toEqual(yes(2, 3));
    expect(at("Yes to both, it is Czech", { others: 0 })).toEqual(yes(2, 3));
    expect(at("both yes, it is Czech", { others: 0, open: [2, 3, 4] })).toBeUndefined();
    expect(at("ALL yes, it is Czech", { others: 0, open: [2, 3, 4] })).toEqual(yes(2, 3, 4));
    expect(at("yes for all of them, it is Czech", { others: 0 })).toEqual(yes(2, 3));
    expect(at("yes for all, it is Czech")).toBeUndefined();
  });

  test("220 characters are read, and clauses of twelve words", () => {
    const long = `1: attached${", attached".repeat(20)}`;
    expect(at(`${long}${"!".repeat(9)}`)).toEqual([]);
    expect(at(`${long}${"!".repeat(10)}`)).toBeUndefined();
    expect(at(`1: attached${" here".repeat(11)}`)).toEqual([]);
    expect(at(`1: attached${" here".repeat(12)}`)).toBeUndefined();
  });

  test.each([
    ["2: yes, as drawn", yes(2)],
    ["Q3 > YES. Thanks", undefined],
    ["2 NO - correct is in attached sheet", undefined],
    ["2: sorted", undefined],
    ["2: new sheet attached, make it red", undefined],
    ["2: new sheet attached, good catch", no(2)],
    ["3 NO - corrected sheet attached, it is right now", no(3)],
    ["1: noted ", []],
    ["1: ok, thanks", []],
    ["1: not the same", undefined],
    ["1: noted, but leave it", undefined],
  ])("%s, where something may stand before or behind it", (line, said) => {
    expect(at(line)).toEqual(said);
    expect(at(line, { others: 0 })).toEqual(said);
  });

  test("a no says in one clause what the word should be, and in another where it is mended", () => {
    expect(at("3 NO should be SALON", { promises: true })).toEqual(no(3));
    expect(at("3 NO, typo: SALON", { promises: true })).toBeUndefined();
  });

  test.each([
    "it is Czech, yes to both",
    "hello, yes to both",
    "corrected sheet attached, yes to both",
    "If both yes it is the owner's name",
  ])("“%s” begins with no answer to both", (line) => {
    expect(at(line, { others: 0 })).toBeUndefined();
  });
  test("a reason spells out the letters that were asked about, and no other ones", () => {
    const long = "2 yes, high intensity interval training";
    expect(at(long, { inQuestion: ["hiit"] })).toEqual(yes(2));
    expect(at(long, { inQuestion: ["hit"] })).toBeUndefined();
  });
  test("a sheet that comes is no answer to the only question because a yes stands behind it", () => {
    expect(at("new sheet attached yes.", { open: [2], others: 0 })).toBeUndefined();
  });

  test.each([
    ["1: HALL-12 attached", []],
    ["1: STAIR-12 attached", undefined],
    ["1: S-1234 attached", []],
    ["1: S-12345 attached", undefined],
    ["1: attached, rev 123", []],
    ["1: attached, rev 1234", undefined],
    ["1: attached, shortened to 2 rows", []],
    ["1: attached, shortened to 2 rowsy words", undefined],
  ])("%s: names of sheets and rows have numbers that are no points", (line, said) => {
    expect(at(line)).toEqual(said);
  });

  test("brackets tell in forty characters what now stands on the sheet, unless that is a wish", () => {
    const filled = (detail: string) => at(`1: city filled in (${detail}), new sheet attached`);
    expect(filled("Harrow 2")).toEqual([]);
    expect(filled(`Harrow 2 ${"x".repeat(31)}`)).toEqual([]);
    expect(filled(`Harrow 2 ${"x".repeat(32)}`)).toBeUndefined();
    expect(filled("2 more of these please")).toBeUndefined();
    expect(filled("hold 2 of them")).toBeUndefined();
  });
});

test.each([
  ["1 yes. 2 no, typo", ["1 yes.", "2 no, typo"]],
  ["1 yes; item 2: no", ["1 yes;", "item 2: no"]],
  ["2 yes, 3 yes", ["2 yes, 3 yes"]],
  ["Yes. 2 sheets follow", ["Yes. 2 sheets follow"]],
  ["See sheet. Item 20 yes", ["See sheet.", "Item 20 yes"]],
  ["See sheet. Item 2000 yes", ["See sheet. Item 2000 yes"]],
])("%s has the pieces %j", (line, pieces) => {
  expect(pointsApart(line)).toEqual(pieces);
});

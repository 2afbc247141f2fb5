import { describe, expect, test } from "vitest";
import { plainly, read, subject } from "./read-reply.ts";

/** An answer of ours about two sheets, with a word in each question. */
const words = [
  "FAIL: 1 to fix, 2 questions before order EL-100 can be engraved.",
  "",
  "TO FIX",
  "",
  "W-1 pos 1.pdf",
  "Device, W-1 position 1 of 2",
  "  1. The legend in row 1 of button 2 has 13 characters; 10 fit.",
  "     Shorten it, and send the sheet again.",
  "",
  "PLEASE CONFIRM",
  "",
  "bar.pdf",
  "Device alone, B-1",
  "  2. “KREBBS” in row 1 of button 1 looks misspelt.",
  "     If you mean KERBS, send the sheet again.",
  "     Or reply “2 YES” if it is meant as it stands.",
  "  3. “FOYR” in row 1 of button 3 looks misspelt.",
  "     If you mean FOYER, send the sheet again.",
  "     Or reply “3 YES” if it is meant as it stands.",
].join("\n");
const mixed = { answer: words, bringsSheets: true };

describe("a point is known by its word", () => {
  test.each<[string, number[], number[]]>([
    ["KREBBS is right. FOYR is my mistake, new sheet attached.", [2], [3]],
    ["“Krebbs” is correct.\nFOYR should be FOYER, corrected sheet attached.", [2], [3]],
    ["2 YES\nFOYR is wrong, new sheet attached.", [2], [3]],
  ])("as in %j", (text, yes, no) => {
    expect(read(text, mixed)).toEqual(plainly(yes, no));
  });

  test("unless two questions are about it, or a word is not asked about", () => {
    expect(read("SALONA is right.", { others: 0 }).person).toBe(true);
    expect(read("KREBS is right.", mixed).person).toBe(true);
    expect(read("KREBBS is right for the plate.", mixed).person).toBe(true);
  });
});

describe("a sheet is known by its name", () => {
  test.each([
    "Corrected W-1 pos 1 attached.\n2 YES\n3 YES",
    "The sheet W-1 pos 1.pdf is corrected, see the attached file.\n2 YES\n3 YES",
    "2 YES\n3 YES\n\nRevised plate attached.",
    "Sheet for the plate attached.\n2 YES\n3 YES",
  ])("as in %j", (text) => {
    expect(read(text, mixed)).toEqual(plainly([2, 3]));
  });

  test("and a room by no sheet's name", () => {
    expect(read("The bar is attached to the hall.\n2 YES\n3 YES", mixed).person).toBe(true);
  });
});

describe("what is said of sheets that came", () => {
  test.each([
    "The attached list is how they should read.",
    "Sheet attached, my phone fixed the spelling by itself.",
  ])("is read if it is about something else: %j", (words) => {
    expect(read(`2 YES\n3 YES\n\n${words}`, mixed).person).toBe(true);
  });

  test("needs no number where a question was answered with no", () => {
    expect(read("2 YES\n3 NO\n\nThe corrected sheet comes tomorrow.", { others: 0 })).toEqual(
      plainly([2], [3]),
    );
    expect(read("2 YES\n3 YES\n\nThe corrected sheet comes tomorrow.", { others: 0 }).person).toBe(true);
  });
});

describe("answers without numbers, one a line", () => {
  test("are for the questions in their order", () => {
    expect(read("yes\nno, new sheet attached\n\nDana", { others: 0 })).toEqual(plainly([2], [3]));
    expect(read("Yes.\nYes, it is our brand name.", { others: 0 })).toEqual(plainly([2, 3]));
  });

  test.each([
    ["there are more of them", "yes\nyes\nyes", 0],
    ["there are fewer", "yes", 0],
    ["a point to fix may be meant", "yes\nno, new sheet attached", 1],
    ["something else stands between them", "yes\n\nfor the others:\nno, new sheet attached", 0],
    ["a no begins a courtesy", "yes\nno problem", 0],
  ] as const)("unless %s", (_, text, others) => {
    expect(read(text, { others })).toMatchObject({ yes: [], no: [], person: true });
  });
});

describe("answers in our own text below its header, which nothing marks", () => {
  const header = `From: Plate Desk <orders@quillgate.example>\nSent: Monday\nTo: Dana\nSubject: ${subject}\n\n`;
  const written = (second: string, third: string): string =>
    `Answers in red below.\n\nDana\n\n${header}${words.replace("“2 YES” if it is meant as it stands.", `$&${second}`)}${third}`;

  test.each([
    ["on lines of their own", "\n[Dana] YES", "\n[Dana] NO, attached."],
    ["behind ours", "  Yes", "  No, fixed"],
  ])("are read %s", (_, second, third) => {
    expect(read(written(second, third), mixed)).toEqual(plainly([2], [3]));
  });

  test("and so is what else stands there", () => {
    expect(read(written("\nYES but in gold", "\nYES"), mixed).person).toBe(true);
    expect(read(written("\nYES", "\nYES\nSwap the top two around."), mixed).person).toBe(true);
  });

  test("but not in a text that is mostly another's", () => {
    expect(read(`Hello\n\n${header}PLEASE CONFIRM\n2 YES\n3 YES`, mixed)).toMatchObject({ yes: [] });
  });
});

describe("a number beside the word of another question", () => {
  test.each([
    "2. FOYR is right",
    "2 FOYR: yes",
    "2 YES, keep FOYR",
    "2 KREBBS is right, 3 KREBBS is right",
    "question two: FOYR is right",
  ])("is for a person: %j", (text) => {
    expect(read(text, { ...mixed, bringsSheets: false })).toMatchObject({ yes: [], person: true });
  });

  test.each<[string, number[]]>([
    ["2. KREBBS is right", [2]],
    ["2 YES, keep KREBBS\n3 YES, keep FOYR", [2, 3]],
    ["2 and 3: yes, KREBBS and FOYR are right", [2, 3]],
  ])("and beside its own word is not: %j", (text, yes) => {
    expect(read(text, { ...mixed, bringsSheets: false })).toEqual(plainly(yes));
  });
});

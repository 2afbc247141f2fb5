import { describe, expect, test } from "vitest";
import { plainly, read } from "./read-reply.ts";

const two = { others: 0 };
const one = { open: [3], others: 0 };
/** An answer with three questions, and nothing to mend. */
const three = {
  open: [1, 2, 3],
  others: 0,
  answer: [
    "CONFIRM: questions to answer.",
    "  1. “SALONA” in row 1 of button 1 looks misspelt.",
    "  2. “LOBBIE” in row 1 of button 2 looks misspelt.",
    "  3. “SPORCH” in row 1 of button 3 looks misspelt.",
  ].join("\n"),
};
const unread = { yes: [], no: [], person: true };

describe("of three questions “the other two” are those that are not named", () => {
  test.each([
    ["1 no, the other two yes", [2, 3], [1]],
    ["1 yes. The other two questions are right.", [1, 2, 3], []],
    ["2 no, sheet attached. The other two are right.", [1, 3], [2]],
  ])("%j", (text, yes, no) => {
    expect(read(text, three)).toEqual(plainly(yes, no));
  });

  test.each([
    ["where none is named", "The other two yes", three],
    ["where two are", "1 and 2 yes, the other two no", three],
    ["where there are but two", "the other two yes", two],
  ])("and unclear %s", (_, text, asked) => {
    expect(read(text, asked)).toEqual(unread);
  });
});

describe("“yes and yes”, and lines of a yes or a no alone", () => {
  test.each([
    ["Yes and yes", two, [2, 3], []],
    ["So that is yes and yes.", two, [2, 3], []],
    ["no and no", two, [], [2, 3]],
    ["Yes and yes", one, [3], []],
    ["yes\nyes\nno, sheet attached", three, [1, 2], [3]],
    ["Hello\nyes\nno, sheet attached", two, [2], [3]],
    ["nope\nyep", two, [3], [2]],
  ])("answer the questions in turn: %j", (text, asked, yes, no) => {
    expect(read(text, asked)).toEqual(plainly(yes, no));
  });

  test.each([
    ["Yes and yes", {}],
    ["Yes and yes", three],
    ["Yes and no.", two],
    ["Well, yes and no!", one],
    ["yes\nyes", three],
    ["yes\nno, sheet attached", {}],
    ["3 yes\nyes\nyes", two],
    ["yes\nthanks\nyes", two],
    ["oh yes\nyes", two],
  ])("do not where it is not plain which: %j", (text, asked) => {
    expect(read(text, asked)).toEqual(unread);
  });
});

describe("what is quoted with our answer", () => {
  test.each(["> Thanks for your help", "> corrected sheet attached", "> To: Plate Desk"])(
    "may be a letter that says nothing: %j",
    (quoted) => {
      expect(read(`3 YES\n\n${quoted}`)).toEqual(plainly([3]));
    },
  );

  test.each(["> make it red", "> Whitlock Controls", "> To: Plate Desk, not the lobby", "> Subject: yes"])(
    "may be somebody's remark: %j",
    (quoted) => {
      expect(read(`3 YES\n\n${quoted}`)).toEqual(unread);
    },
  );
});

describe("beside and below a yes stands", () => {
  test.each([
    ["why it is so", "3 yes\nIt is the name of the owner's dog."],
    ["a name", "3 YES\nMarta"],
    ["a footer", "3 YES\nWhitlock Controls\nT 608-555-0119"],
    ["all in capitals", "3 YES, IT IS THE NAME OF THE OWNER"],
    ["thanks for a find, which is that of the point to mend", "Thanks for catching that.\n3 yes"],
    ["the same in one line", "Sorry for the typo. 3 yes"],
    ["the sheet of the point to mend", "3 yes. Corrected sheet for 1 attached."],
    ["a slip at that point", "1 my mistake, sending a new sheet. 3 yes"],
  ])("%s", (_, text) => {
    expect(read(text)).toEqual(plainly([3]));
  });

  test.each([
    ["a reason above it", "It is the name of the owner's dog.\n3 yes", {}],
    ["a word that was asked about", "3 YES\nSalon", {}],
    ["a reason with such a word", "3 yes\nhe named it after Salon", {}],
    ["a slip that may be of it", "3 yes\nmy mistake", {}],
    ["thanks for a find, where there is no other point", "Thanks for catching that.\n3 yes", one],
    ["a slip, where there is no other point", "Sorry for the typo. 3 yes", one],
    ["a sheet, where there is no other point", "3 yes. New sheet attached.", one],
    ["a wish below a name", "3 YES\nMarta\nmake it red", {}],
    ["a name above it", "Marta\n3 YES", {}],
  ])("what leaves it to a person: %s", (_, text, asked) => {
    expect(read(text, asked)).toEqual(unread);
  });

  test("a slip that belongs to the no above it", () => {
    expect(read("2 no\nmy mistake\n3 yes")).toEqual(plainly([3], [2]));
    expect(read("2 no, sheet attached\nsorry about that\n3 yes")).toEqual(plainly([3], [2]));
  });
});

describe("beside sheets that came with the reply", () => {
  test.each(["Corrected sheet attached, 3 yes", "3 yes\nThe corrected plates are attached."])(
    "words about them leave an answer: %j",
    (text) => {
      expect(read(text, { bringsSheets: true })).toEqual(plainly([3]));
    },
  );

  test.each([
    ["that are of the question", "3 yes\nThe corrected sheet for 3 is attached."],
    ["with a bidding", "3 yes\nBoth new sheets attached, but wait."],
    ["that are of no sheet that came", "3 yes\nThe brass plates are nicer."],
  ])("and words do not %s", (_, text) => {
    expect(read(text, { bringsSheets: true })).toEqual(unread);
  });
});

test("a word or two with a comma above a name close a letter", () => {
  expect(read("3: YES\n\nOnwards,\nMarta")).toEqual(plainly([3]));
  expect(read("3: YES\n\nOnwards,\nDana")).toEqual(plainly([3]));
  expect(read("3: YES\n\nOnwards and upwards to all of us,\nDana")).toEqual(unread);
  expect(read("3 YES\n\nOnwards, friends\nDana")).toEqual(unread);
});

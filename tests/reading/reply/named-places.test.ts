import { describe, expect, test } from "vitest";
import { answersBeside } from "../../../src/reading/reply/answers-beside.ts";

const answer = `CONFIRM: order FM-72, 3 questions to answer

Order FM-72, Mill Race Baths
============================
4 sheets came with this letter.

PLEASE CONFIRM (REFERENCE 334-XH46T)

B-1.pdf
Device alone, B-1
  1. “SALONA” in row 1 of button 1 looks misspelt.
     If you mean SALON or SALONS, send the sheet again.
     Or reply “1 YES” if it is meant as it stands.

steam room.pdf
Device alone, B-2
  2. “KITCHN” in row 1 of button 1 looks misspelt.
     If you mean KITCHEN, send the sheet again.
     Or reply “2 YES” if it is meant as it stands.
  3. The finish is Chalk here and Ink on B-1.pdf.
     If one of them is wrong, send the sheet again.
     Or reply “3 YES” if it is meant as it stands.

Order FM-72
  4. “SAUNAA” in row 1 of button 2 looks misspelt.
     If you mean SAUNA, send the sheet again.
     Or reply “4 YES” if it is meant as it stands.
     On: B-4.pdf (earlier letter)
`;

function read(text: string, more = {}) {
  const { answers, statements } = answersBeside(
    text,
    {
      open: [1, 2, 3, 4],
      questions: [1, 2, 3, 4],
      others: 0,
      answer,
      subject: "CONFIRM: order FM-72",
      isFurniture: () => false,
      names: ["Greta Sorley"],
      bringsSheets: false,
      isOnSheets: () => false,
      sheetsNamed: () => undefined,
      ...more,
    },
    () => [],
  );
  return { yes: [...answers.yes], no: [...answers.no], isForPerson: statements.length > 0 };
}

describe("a number is read with its own place beside it", () => {
  test.each<[string, number[], number[]]>([
    ["1 YES (B-1)", [1], []],
    ["1 YES B-1", [1], []],
    ["1 yes - B-1.pdf", [1], []],
    ["1 YES for B-1, 2 NO on B-2", [1], [2]],
    ["1 (B-1): YES", [1], []],
    ["B-1: 1 YES", [1], []],
    ["B-2 3 yes", [3], []],
    ["4 YES (B-4)", [4], []],
    ["FM-72: 1 YES, 2 YES", [1, 2], []],
    ["Order FM-72 - 1 yes", [1], []],
    ["1 YES for FM-72", [1], []],
  ])("“%s”", (text, yes, no) => {
    expect(read(text)).toEqual({ yes, no, isForPerson: false });
  });
});

describe("a place of one point stands for its number", () => {
  test.each<[string, number[], number[]]>([
    ["B-1: yes", [1], []],
    ["B-1 yes, B-4 no", [1], [4]],
    ["yes to B-4", [4], []],
  ])("“%s”", (text, yes, no) => {
    expect(read(text)).toEqual({ yes, no, isForPerson: false });
  });
});

test.each([
  ["a place of another number", "1 YES (B-2)"],
  ["a place that only begins so", "1 YES (B-10)"],
  ["a place of two points", "B-2: yes"],
  ["another order", "FM-7: 1 YES"],
  ["more than a place", "1 YES B-1 in red"],
  ["a place and more", "B-1 yes but not B-4"],
  ["a place that is no answer", "B-1 1"],
])("%s is for a person: “%s”", (_, text) => {
  expect(read(text)).toEqual({ yes: [], no: [], isForPerson: true });
});

test("an answer about two orders says of no number which it is of", () => {
  const two = `${answer}\nOrder QX-551, Steam House\n=========================\n`;
  expect(read("FM-72: 1 YES", { answer: two }).isForPerson).toBe(true);
});

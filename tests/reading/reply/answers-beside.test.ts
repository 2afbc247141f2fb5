import { describe, expect, test } from "vitest";
import { answersBeside } from "../../../src/reading/reply/answers-beside.ts";
import type { Statement } from "../../../src/trade/statement.ts";
import { askedSalona } from "./asked-salona.ts";
import { plainly, read } from "./read-reply.ts";

/** An answer with two questions, and two notes about which nothing is to be done. */
const answer = [
  "CONFIRM: questions to answer.",
  "",
  "PLEASE CONFIRM",
  "  2. “SALONA” in row 1 of button 1 looks misspelt.",
  "  3. “LOBBIE” in row 1 of button 2 looks misspelt.",
  "",
  "WORTH KNOWING",
  "  4. “SPORCH” in row 1 of button 3 is in no list of words.",
  "  5. “KEPSAKE” in row 1 of button 4 is in no list of words.",
].join("\n");
const noted = { answer, others: 0 };

describe("who says that a note is right says nothing that anybody must read", () => {
  test.each([
    "2 YES\n3 YES\n4 is right",
    "2 YES\n3 YES\n4 YES",
    "2 YES\n3 YES\n4 and 5 YES",
    "2, 3, 4 and 5 yes",
    "2 YES\n3 YES\nSPORCH is right",
    "2 YES, 3 YES. SPORCH is right. KEPSAKE is right.",
    "Both YES\nSPORCH is right",
    "Both YES\n  SPORCH is right",
    "Both YES.\nSporch is correct.",
    "Both YES. SPORCH is right.",
    "Both YES. 4 is right.",
    "Both YES. 4 is right. 5 is right.",
  ])("beside answers: %j", (text) => {
    expect(read(text, noted)).toEqual(plainly([2, 3]));
  });

  test.each(["4 is right", "4 YES\n5 YES", "Hello, SPORCH is right.", "SPORCH is right. KEPSAKE is right."])(
    "alone: %j",
    (text) => {
      expect(read(text, noted)).toEqual(plainly([]));
      expect(read(text, { ...noted, open: [] })).toEqual(plainly([]));
    },
  );
});

describe("a person reads", () => {
  test.each([
    ["a note that is wrong", "2 YES\n3 YES\n4 NO"],
    ["one of two notes that is wrong", "2 YES\n3 YES\n4 is right and 5 is wrong"],
    ["a wish about a note", "2 YES\n3 YES\n4: make it red"],
  ])("%s, beside answers that count", (_, text) => {
    expect(read(text, noted)).toEqual({ yes: [2, 3], no: [], person: true });
  });

  test.each([
    ["a note that is wrong, named by its word", "2 YES\n3 YES\nSPORCH is wrong"],
    ["a wish below it", "2 YES\n3 YES\nSPORCH is right\nmake it red"],
    ["a wish behind it", "2 YES\n3 YES\nSPORCH is right. Make it red."],
    ["what is quoted of it", "Both YES\n\n> 4 is right"],
    ["a wish that is quoted below it", "Both YES. SPORCH is right.\n\n> make it red"],
    ["a condition", "Both YES. SPORCH is right if he says so."],
  ])("%s, and no answer counts", (_, text) => {
    expect(read(text, noted)).toEqual({ yes: [], no: [], person: true });
  });

  test("a wish beside a note, where nothing is asked", () => {
    expect(read("SPORCH is right, make it red", { ...noted, open: [] }).person).toBe(true);
  });
});

test("a note that is wrong needs nobody where sheets came with the reply", () => {
  expect(read("2 YES\n3 YES\n4 NO", { ...noted, bringsSheets: true })).toEqual(plainly([2, 3]));
  expect(read("2 YES\n3 YES\n4 is wrong", { ...noted, bringsSheets: true })).toEqual(plainly([2, 3]));
});

test("a sentence of 160 characters may be about a note, and a longer one is read with the answers", () => {
  const right = (length: number): string => `Both YES\nSPORCH${" ".repeat(length - 14)}is right`;
  expect(read(right(160), noted)).toEqual(plainly([2, 3]));
  expect(read(right(161), noted)).toEqual({ yes: [], no: [], person: true });
});

/** What a reply answers to question 3, or withdraws, and what is told where that is said beside its answers. */
function told(text: string, beside: readonly Statement[], { open = [3], bringsSheets = false } = {}) {
  const asked = { ...askedSalona, open, bringsSheets };
  const { answers, statements } = answersBeside(text, asked, (understood) =>
    beside.filter((one) => !("words" in one) || !understood.has(one.words)),
  );
  const count = answers.yes.size + answers.no.size + answers.withdraws.size;
  return [count, ...statements.map((one) => ("words" in one ? `${one.kind} ${one.words}` : one.kind))];
}
const said = (words: string): Statement => ({ kind: "said", where: "text", words });

describe("what is told beside an answer", () => {
  const counts: Statement = { kind: "counts", counts: [], words: "4 devices" };

  test.each<[string, string, Statement[], (number | string)[]]>([
    ["nothing", "3 YES", [said("3 YES")], [1]],
    ["a count, which leaves it one", "3 YES", [said("3 YES"), counts], [1, "counts 4 devices"]],
    ["another point", "3 YES\n4: make it red", [said("4: make it red")], [1, "said 4: make it red"]],
    ["another point that nothing else tells", "3 YES\n4: make it red", [], [1, "said 4: make it red"]],
    ["the same point", "3 YES", [said("3: make it red")], [0, "said 3: make it red"]],
    ["the same point beside a no", "3 NO, sheet attached", [said("3: red")], [0, "said 3: red"]],
    ["a wish", "3 YES", [said("make it red")], [0, "said make it red"]],
    [
      "a wish, with the answer above it",
      "3 YES\nmake it red",
      [said("3 YES"), said("make it red")],
      [0, "said 3 YES", "said make it red"],
    ],
    [
      "a wish that nothing else tells, in one with the answer",
      "3 YES\nmake it red",
      [said("3 YES")],
      [0, "said 3 YES … make it red"],
    ],
    [
      "a number in a quotation",
      "3 YES",
      [{ kind: "said", where: "quotation", words: "4: red" }],
      [0, "said 4: red"],
    ],
    [
      "the words of the answer in a quotation",
      "3 YES\nmake it red",
      [{ kind: "said", where: "quotation", words: "3 YES" }, said("make it red")],
      [0, "said 3 YES", "said make it red"],
    ],
    ["a text that nobody reads", "3 YES", [{ kind: "long" }], [0, "long"]],
    ["words alone that seem to say nothing", "make it red", [], [0, "said make it red"]],
    ["a point beside what is withdrawn", "CANCEL S-104", [said("4: red")], [0, "said 4: red"]],
    ["nothing beside what is withdrawn", "CANCEL S-104", [said("CANCEL S-104")], [1]],
  ])("%s", (_, text, beside, all) => {
    expect(told(text, beside)).toEqual(all);
  });

  test("words alone say nothing where they came with sheets, or nothing was asked", () => {
    expect(told("make it red", [], { bringsSheets: true })).toEqual([0]);
    expect(told("we may cancel it later", [], { open: [] })).toEqual([0]);
  });

  test("an answer with what else is unread is cut at 300 characters, and a line alone at 160", () => {
    const wish = "make it red ".repeat(30).trim();
    expect(told(`3 YES\n${wish}`, [said("3 YES")])).toEqual([0, `said ${`3 YES … ${wish}`.slice(0, 300)}`]);
    expect(told(wish, [])).toEqual([0, `said ${wish.slice(0, 160)}`]);
  });

  test("a reply of thirty thousand characters is read, and a longer one is not", () => {
    expect(told(`3 YES${"\n".repeat(29_995)}`, [])).toEqual([1]);
    expect(told(`3 YES${"\n".repeat(29_996)}`, [])).toEqual([0]);
  });
});

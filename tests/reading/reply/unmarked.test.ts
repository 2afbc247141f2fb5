import { describe, expect, test } from "vitest";
import { withMarks } from "../../../src/reading/reply/unmarked.ts";
import { subject } from "./read-reply.ts";

const [first, fix, please, question] = [
  "CONFIRM: questions to answer.",
  "  1. Shorten it, and send the sheet again.",
  "PLEASE CONFIRM",
  "  2. “SALONA” in row 1 of button 1 looks misspelt.",
];
const sure = "On Mon, Nov 9, 2026 at 9:12 AM Plate Desk wrote:";
const lines = (answer: readonly string[], ...typed: string[]): string[] =>
  withMarks(typed.join("\n"), { subject, answer: answer.join("\n") }).text.split("\n");
/** The lines that are marked as ours. */
const ours = (...typed: string[]): string[] =>
  lines([first, fix, please, question, "", "TOTAL", "Plate Desk"], ...typed).flatMap((line, at) =>
    line === typed[at] ? [] : [line],
  );

describe("a whole line of our answer above a quotation", () => {
  test("is marked as it stood in the answer", () => {
    expect(ours(question.trim(), "yes")).toEqual([`> ${question}`]);
    expect(ours(first, "yes")).toEqual([`> ${first}`]);
    expect(ours("> somebody", question, "yes")).toEqual([`> ${question}`]);
    expect(ours(question, "yes", sure, "hello you", fix)).toEqual([`> ${question}`]);
  });
  test("is told as it stands, and not where it has a mark already", () => {
    const foundIn = (text: string) => [...withMarks(text, { subject, answer: first }).found];
    expect(foundIn(` ${first}\nyes`)).toEqual([first]);
    expect(foundIn(`> ${first}\nyes`)).toEqual([]);
  });
  test("may have an answer behind it", () => {
    expect(lines([first, please], `${first}   Yes`)).toEqual([`> ${first}`, "Yes"]);
    expect(lines([first, please], `${please} 2 yes`)).toEqual([`${please} 2 yes`]);
    expect(lines(["Questions to answer."], "Questions to answer. Yes")).toEqual(["Questions to answer. Yes"]);
  });
  test("may have lost its end, where the reference of a reply stood", () => {
    const answer = [first, "  Order EL-100 of the Red Lion (4711)", "PLEASE CONFIRM BY NUMBER", question];
    expect(lines(answer, "Order EL-100 of the Red Lion", "yes")).toEqual([
      "> Order EL-100 of the Red Lion",
      "yes",
    ]);
    expect(lines(answer, "  Order EL-100 of the Red Lion", "yes")[0]).toBe(
      ">   Order EL-100 of the Red Lion",
    );
    expect(lines(answer, first, "PLEASE CONFIRM", question)[1]).toBe("> PLEASE CONFIRM");
    expect(lines(answer, first, "PLEASE", question)[1]).toBe("PLEASE");
  });
});

describe("a line of ours of fewer than four words", () => {
  test("is known by lines of ours on both sides", () => {
    expect(ours(first, please, question)[1]).toBe(`> ${please}`);
    expect(ours(first, ` ${please} `, "  Plate Desk ", question).slice(1, 3)).toEqual([
      `>  ${please} `,
      ">   Plate Desk ",
    ]);
    expect(ours(first, "", please, "   ", question)).toEqual([`> ${first}`, `> ${please}`, `> ${question}`]);
  });
  test.each([
    [[please, "2 yes"], 0],
    [[first, please, "2 yes"], 1],
    [["2 yes", please, question], 1],
    [[please, question], 1],
    [[first, please], 1],
    [[first, "so", please, question], 2],
    [[first, please, "so", question], 2],
  ])("is the sender's own otherwise: %j", (typed, marked) => {
    expect(ours(...typed)).toHaveLength(marked);
    expect(ours(...typed)).not.toContain(`> ${please}`);
  });
});

describe("our whole answer below a header", () => {
  test("is marked where the sender has written between its lines", () => {
    expect(ours(sure, first, "2 yes", question)).toEqual([`> ${first}`, `> ${question}`]);
    expect(ours("Hello", sure, first, "2 yes", question)).toEqual([`> ${first}`, `> ${question}`]);
    expect(ours(sure, first, "", "   ", "2 yes", question)).toEqual([`> ${first}`, `> ${question}`]);
  });
  test("is known where a program has broken its lines", () => {
    const [half, end] = ["  2. “SALONA” in row 1 of", "button 1 looks misspelt."];
    expect(ours(sure, first, half, end, "2 yes")).toEqual([`> ${first}`, `> ${half}`, `> ${end}`]);
    expect(ours(end, sure, first, "2 yes", question)).toEqual([`> ${first}`, `> ${question}`]);
    expect(ours(sure, first, "looks misspelt", "2 yes", question)).toHaveLength(3);
    expect(ours(sure, first, "looks misspelt", fix, "2 yes", "3 yes")).toHaveLength(3);
  });
  test("is known by its short lines too", () => {
    expect(ours(sure, first, "  TOTAL", "2 yes")).toEqual([`> ${first}`, ">   TOTAL"]);
    expect(ours(sure, first, "row", "2 yes")).toEqual([]);
  });
  test.each([
    ["it is whole", ["2 yes", sure, first, fix, question]],
    ["half of it is another's", [sure, first, "2 yes", "3 yes", question]],
    ["half of it is another's, blank lines aside", [sure, first, "", "   ", "2 yes", "3 yes", question]],
    ["it begins with something else", [sure, "2 yes", first, fix, question]],
    ["some of it has marks", [sure, first, fix, "> row", "2 yes", question]],
    ["nothing is sure to be a header", ["On the other hand he wrote:", first, "2 yes", question]],
    ["it is another letter", [sure, "hello you", question]],
  ])("stays where %s", (_, typed) => {
    expect(ours(...typed)).toEqual([]);
  });
});

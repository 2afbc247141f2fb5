import { describe, expect, test } from "vitest";
import { leadAt, quotedSubject } from "../../../src/reading/reply/leads.ts";
import { ownLines } from "../../../src/reading/reply/own-lines.ts";
import { takeApart } from "../../../src/reading/reply/own-text.ts";

const subject = "CONFIRM: order EL-100, questions to answer";
const lead = (...lines: string[]): unknown => leadAt(lines, 0, subject);

describe("a quotation certainly begins with", () => {
  test.each([
    [0, ["> 1. SALONA"]],
    [0, ["  > 1. SALONA"]],
    [1, ["-----Original Message-----"]],
    [1, ["--- Ursprüngliche Nachricht ---"]],
    [1, ["  -----Original Message-----  "]],
    [1, ["---Mensaje reenviado---"]],
    [4, ["-----Original Message-----", "", " ", "From: orders@quillgate.example"]],
    [1, ["-----Original Message-----", "", "", "", "From: orders@quillgate.example"]],
    [3, ["-----Original Message-----", "", "From: orders@quillgate.example"]],
    [3, ["_____", "From: Burin", `Subject: Re: ${subject}`]],
    [3, ["From: Burin", "Sent: Monday", `Subject: FW: ${subject}`]],
    [3, ["*From:* Burin", "*Date:* Monday", `*Subject:* [EXTERNAL] ${subject}`]],
    [3, ["Von: Burin", "An: Dana", "Betreff: AW: CONFIRM: order EL-100"]],
    [3, ["From: Burin", "Date: Monday", "To: Keepers of the Innkeep"]],
    [1, ["On Mon, Nov 9, 2026 at 4:05 PM Burin <orders@quillgate.example> wrote:"]],
    [1, ["On Mon Nov 9 at 4:05 PM Burin wrote:"]],
    [1, ["Am 09.11.2026 um 16:05 schrieb Burin:"]],
    [1, ["Le lun. 9 nov. 2026 à 16:05, Burin a écrit :"]],
    [2, ["On Mon, Nov 9, 2026 at 4:05 PM Burin", "<orders@quillgate.example> wrote:"]],
    [3, ["On Mon, Nov 9, 2026 at 4:05 PM", "Burin", "<orders@quillgate.example> wrote:"]],
  ])("%i lines: %j", (lines, text) => {
    expect(lead(...text)).toEqual({ lines, sure: true });
  });
});

describe("a quotation only seems to begin with", () => {
  test.each([
    [1, ["-----"]],
    [1, ["--- see the note below ---"]],
    [2, ["_____", "From: Burin"]],
    [2, ["From: Burin", "Date: Monday"]],
    // A header has each field once, the subject of our answer, and no wish.
    [3, ["From: Burin", "Date: Monday", "Date: Tuesday"]],
    [3, ["From: Burin", "Date: Monday", "DATE: Tuesday"]],
    [4, ["From: Burin", "Date: Monday", "To: Dana", "To: Ann"]],
    [3, ["From: Burin", "Date: Monday", "Subject: another order"]],
    [3, ["From: Burin", "Date: Monday", `Subject: not ${subject}`]],
    [3, ["From: Burin", "Date: Monday", "To: keep the old one"]],
    [1, ["On the drawing that my boss sent at 4:05 he wrote:"]],
    [1, ["On Monday the client wrote:"]],
    [1, ["On Mon, Nov 9, 2026 at 4:05 PM please do not engrave, he wrote:"]],
    [1, ["On Mon Tue Nov 9 at 4:05 PM Burin wrote:"]],
    [1, ["Am 9 schrieb Burin:"]],
    [1, ["On Mon 12345 Burin wrote:"]],
    [1, ["Am 9-111-26 schrieb Burin:"]],
    [1, [`---${"x".repeat(60)}---`]],
  ])("%i lines: %j", (lines, text) => {
    expect(lead(...text)).toEqual({ lines, sure: false });
  });
});

test.each([
  [["From: Burin"]],
  [["3 YES"]],
  [["----"]],
  [["--x--"]],
  [["yes -----"]],
  [["----- yes"]],
  [["Date: Monday", "To: Dana", `Subject: ${subject}`]],
  [[`---${"x".repeat(61)}---`]],
  [["He wrote:"]],
  [["On Mon, Nov 9, 2026 at 4:05 PM Burin wrote: yes"]],
  [["On Mon, Nov 9, 2026", "at 4:05 PM", "Burin", "wrote:"]],
  [[`On Mon, Nov 9, 2026 ${"x".repeat(380)} wrote:`]],
  [["Dana", "> 3 YES"]],
])("no quotation begins with %j", (text) => {
  expect(lead(...text)).toBeUndefined();
});

describe("in another language", () => {
  const at = "<orders@quillgate.example>";
  const line = `17.11.2026 09:12 Quillgate ${at}:`;
  const words = (count: number): string => `17.11.2026 09:12 ${"ab ".repeat(count)}${at}:`;
  const to = (name: string, domain: string): string => `17.11.2026 09:12 Quillgate <${name}@${domain}>:`;
  test.each([
    [1, [line, "> 1. SALONA"]],
    [1, [line, "CONFIRM: 1 question to answer"]],
    [1, [line, "", " ", "", "> 1. SALONA"]],
    [1, [`wt., 17 lis 2026 o 09:12 Quillgate ${at} napisał(a):`, "> 1. SALONA"]],
    [1, ["17-11-26 9.12 tarihinde Quillgate yazdı:", "> 1. SALONA"]],
    [1, [`No dia 17/11/2026, às 09h12, Quillgate ${at} escreveu:`, "> 1. SALONA"]],
    [2, [" 17.11.2026 09:12 Quillgate ", ` ${at}: `, "> 1. SALONA"]],
    [3, ["17.11.2026 09:12", "Quillgate", `${at}:`, "> 1. SALONA"]],
    [1, [words(16), "> 1. SALONA"]],
    [1, [to("a".repeat(64), `${"b".repeat(247)}.example`), "> 1. SALONA"]],
  ])("a quotation certainly begins with %i lines: %j", (lines, text) => {
    expect(lead(...text)).toEqual({ lines, sure: true });
  });
  test.each([
    [[line, "3 TAK"]],
    [[line, "CONFIRMED by the owner"]],
    [[line, "PASSING by"]],
    [[line, "", "", "", "", "> 1. SALONA"]],
    [["3 TAK", line, "> 1. SALONA"]],
    [["3 TAK", "17.11.2026 09:12", `Quillgate ${at}:`, "> 1. SALONA"]],
    [["17.11.2026 09:12 Quillgate", " ", `${at}:`, "> 1. SALONA"]],
    [[line.slice(0, -1), "> 1. SALONA"]],
    [[`${line} 3 TAK`, "> 1. SALONA"]],
    [[`17-11-2026 Quillgate ${at}:`, "> 1. SALONA"]],
    [[`17-11-2026 109:12 Quillgate ${at}:`, "> 1. SALONA"]],
    [[`o 09:12 Quillgate ${at}:`, "> 1. SALONA"]],
    [[`117-11-26 09:12 Quillgate ${at}:`, "> 1. SALONA"]],
    [[`17-111-26 09:12 Quillgate ${at}:`, "> 1. SALONA"]],
    [["17.11.2026 09:12 Quillgate:", "> 1. SALONA"]],
    [[`17.11.2026 09:12 ${at} ${at} napisał:`, "> 1. SALONA"]],
    [[`17.11.2026 09:12 nie Quillgate ${at}:`, "> 1. SALONA"]],
    [[`No diario 17/11/2026 09:12 Quillgate ${at}:`, "> 1. SALONA"]],
    [[words(17), "> 1. SALONA"]],
    [[to("a".repeat(65), "b.example"), "> 1. SALONA"]],
    [[to("a", `${"b".repeat(248)}.example`), "> 1. SALONA"]],
  ])("no quotation begins with %j", (text) => {
    expect(lead(...text)).toBeUndefined();
  });
});

test("only the field of the subject, in any of these languages, has a quoted subject", () => {
  expect(quotedSubject("Subject: Stations")).toBe(" Stations");
  expect(quotedSubject("*Betreff:* Stations")).toBe(" Stations");
  expect(quotedSubject("From: Stations")).toBeUndefined();
  expect(quotedSubject("Stations")).toBeUndefined();
});

test("a lead is as long wherever it stands", () => {
  const lines = ["-----Original Message-----", "", "From: orders@quillgate.example", `Subject: ${subject}`];
  for (const before of [[], ["3 YES"], ["3 YES", "", "Dana"]])
    expect(leadAt([...before, ...lines], before.length, subject)).toEqual({ lines: 4, sure: true });
});

test("the longest lead has 400 characters", () => {
  const long = (length: number): string => `On Mon, Nov 9, 2026 ${"x".repeat(length - 27)} wrote:`;
  expect(lead(long(400))).toEqual({ lines: 1, sure: true });
  expect(lead(long(401))).toBeUndefined();
});

describe("the lines of the sender", () => {
  const own = (text: string, isOpen: (point: number) => boolean = () => true): unknown[] =>
    [...ownLines(text, subject, isOpen)].map(({ line, under, afterSeveral }) => [
      line,
      ...(under === undefined ? [] : [under]),
      ...(afterSeveral ? ["several"] : []),
    ]);
  test.each([
    ["stand above the quotation", "3 YES\n\nOn Mon, Nov 9, 2026 Burin wrote:\n1. SALONA\nno", [["3 YES"]]],
    ["stand below a marked line of blanks", "> 2. SALONA\n>   \nYES", [["YES", 2]]],
    ["stand below one marked line", "On Mon, Nov 9, 2026 Burin wrote:\n> 3. SALONA\nYES", [["YES", 3]]],
    [
      "stand below the point that they answer",
      "> 1. Shorten it\n> 2. SALONA\nYES\n> 3. SALONA\n\n  NO  ",
      [
        ["YES", "several"],
        ["NO", 3],
      ],
    ],
    ["stand below all lines of their point", ">  2. SALONA\n>     If you mean SALON\n>\nYES", [["YES", 2]]],
    ["are for no point below other words", "> 2. SALONA\n> Legends are cut as typed.\nYES", [["YES"]]],
    ["are for one point each", "> 2. SALONA\nYES\nThanks", [["YES", 2], ["Thanks"]]],
    [
      "stand among marked lines that a lead introduces",
      "On Mon, Nov 9, 2026 Burin wrote:\n \n> 2. SALONA\nYES",
      [["YES", 2]],
    ],
    ["may begin with what only looks like a lead", "-----\n3 YES", [["-----"], ["3 YES"]]],
    ["are none where there are only blanks", "2 YES\n  \n3 NO", [["2 YES"], ["3 NO"]]],
    ["may end in any way that lines do", "2 YES\r\n3 NO\r4 YES", [["2 YES"], ["3 NO"], ["4 YES"]]],
    ["are for no number that begins no point", "> 2.5 mm\nYES\n> 12345. x\nNO", [["YES"], ["NO"]]],
  ])("%s", (_, text, lines) => {
    expect(own(text)).toEqual(lines);
  });

  test("are for the question right above them, where what stands before that is no open question", () => {
    const isOpen = (point: number): boolean => point > 1;
    expect(own("> 1. Shorten it\n> 2. SALONA\nYES", isOpen)).toEqual([["YES", 2]]);
    expect(own("> 2. SALONA\n> 1. Shorten it\nYES", isOpen)).toEqual([["YES", "several"]]);
    expect(own("> 2. SALONA\n> 3. SALONA\nYES", isOpen)).toEqual([["YES", "several"]]);
    expect(own("> 1. Shorten it\nDone", isOpen)).toEqual([["Done", 1]]);
  });
});

describe("the text of a reply is taken apart into what is its own, what is quoted, and what stands aside", () => {
  test.each<[string, string, string[], string[], string[]]>([
    ["nothing quoted", " 3 YES \n\nDana", ["3 YES", "", "Dana"], [], []],
    ["marked lines", "3 YES\n> 1. SALONA\n>\n> 2. x", ["3 YES"], ["1. SALONA", "2. x"], []],
    ["words below marked lines", "3 YES\n> 1. SALONA\nno\n\n", ["3 YES"], ["1. SALONA"], ["no"]],
    [
      "a lead and no marks",
      "3 YES\nOn Mon, Nov 9, 2026 Burin wrote:\n\n 1. SALONA",
      ["3 YES"],
      ["1. SALONA"],
      [],
    ],
    ["a marked lead", "3 YES\n> On Mon, Nov 9, 2026 Burin wrote:\n> 1. SALONA", ["3 YES"], ["1. SALONA"], []],
    [
      "a lead with nothing below it",
      "3 YES\nOn Mon, Nov 9, 2026 Burin wrote:",
      ["3 YES"],
      [],
      ["On Mon, Nov 9, 2026 Burin wrote:"],
    ],
    ["what may be a lead", "3 YES\n-----\nMake it red", ["3 YES"], [], ["-----", "Make it red"]],
    ["a signature", "3 YES\n-- \nDana\nBuilder", ["3 YES"], [], []],
    ["a signature first", "-- \nDana\nBuilder", [], [], []],
    ["a signature that says something", "3 YES\n-- \nDana\nNot yet", ["3 YES"], [], ["Dana", "Not yet"]],
    ["a signature that keeps something", "3 YES\n-- \nKeep both", ["3 YES"], [], ["Keep both"]],
    [
      "a signature below marked lines",
      "> 1. SALONA\n3 YES\n-- \nnot yet",
      [],
      ["1. SALONA"],
      ["3 YES", "not yet"],
    ],
  ])("%s", (_, text, own, quoted, aside) => {
    expect(takeApart(text, subject)).toEqual({ own, quoted, aside });
  });
});

test("a lead has four hundred characters at most", () => {
  const long = (length: number): string => `On Mon, Nov 9, 2026 at 4:05 PM ${"x".repeat(length - 38)} wrote:`;
  expect(lead(long(400))).toEqual({ lines: 1, sure: true });
  expect(lead(long(401))).toBeUndefined();
});

test.each([
  ["To: please use the oak one", false],
  ["To: do not engrave", false],
  ["To: Innkeep Desk", true],
  ["To: Pleaseley Works", true],
])("“%s” stands in a header that a program wrote: %s", (line, sure) => {
  expect(lead("From: Burin", "Date: Monday", line)).toEqual({ lines: 3, sure });
});

test("a lead in another language stands above an answer that begins as ours do", () => {
  const polish = "wt., 17 lis 2026 o 09:12 Dana napisała:";
  expect(lead(polish, "PASS: order EL-100")).toEqual({ lines: 1, sure: true });
  expect(lead(polish, "It says PASS")).toBeUndefined();
});

import type { ForPerson } from "../../trade/statement.ts";
import { defineLetterCheck } from "../check.ts";
import { fileAs, type Sample, subject } from "../sample.ts";
import { hasNoSheet } from "./no-sheet.ts";

const clean = ({ completeOrder }: Sample) =>
  ({
    files: [fileAs("sheet")],
    orders: [subject(completeOrder()).order],
    held: false,
    reply: false,
    links: [],
  }) as const;
const said = (
  words: string,
  where: "subject" | "text" | "quotation" | "answer" | "reply" = "text",
): ForPerson[] => [{ kind: "said", where, words }];

export const letterSaysMore = defineLetterCheck({
  id: "letter-says-more",
  title: "A letter says more than its sheets",
  severity: "asks",
  verdict: "person",
  source: { kind: "house" },
  why: "Only the sheets are cut. A wish, a change or a question beside them reaches nobody unless a person reads it, and a cancelled order would be made.",
  wordings: {
    subject: {
      says: "“{words}” stands in the subject of your letter. The program acts on sheets only.",
      fix: "A person reads it. What a sheet has a field for, write on the sheet.",
    },
    text: {
      says: "“{words}” stands in your letter. The program acts on sheets only.",
      fix: "A person reads it. What a sheet has a field for, write on the sheet.",
    },
    reply: {
      says: "“{words}” stands in your reply. The program cannot read it as an answer.",
      fix: "A person reads it. If it answers a question, reply with the number and YES or NO alone. What a sheet has a field for, write on the sheet.",
    },
    answer: {
      says: "You answer “{words}”. The program cannot read all that stands beside the answer.",
      fix: "A person reads the whole and settles the question. It is quicker to answer once more with the number and YES or NO alone.",
    },
    manager: {
      says: "{by}, who manages this order, writes: “{words}”",
      outside: "{by}, who manages this order, has written to us about it.",
      fix: "A person reads it before anything is made.",
    },
    quotation: {
      says: "“{words}” stands in a letter that yours quotes or forwards. The program acts on sheets only.",
      fix: "A person reads it. What a sheet has a field for, write on the sheet.",
    },
    file: {
      says: "“{words}” stands in the file {file}. The program acts on sheets only.",
      fix: "A person reads it. What a sheet has a field for, write on the sheet.",
    },
    name: {
      says: "A file is called “{words}”. The program goes by what is in a sheet, not by its name.",
      fix: "A person reads it before anything is made of that file.",
    },
    unsure: {
      says: "Some words of {what} are struck out or hidden, so it is not certain what it says. A person reads it.",
      fix: "Nothing to do.",
    },
    long: {
      says: "The text of {what} is too long for the program to read. A person reads it.",
      fix: "Nothing to do.",
    },
  },
  passing: [
    { shows: "nothing but a cover note", given: (sample) => ({ ...clean(sample), statements: [] }) },
    {
      shows: "a letter without a sheet, which a person reads as a whole",
      given: (sample) => ({ ...clean(sample), files: [], orders: [], statements: said("3 of each") }),
    },
  ],
  failing: [
    {
      shows: "a cancellation in the subject",
      given: (sample) => ({ ...clean(sample), statements: said("CANCEL order BW-2207", "subject") }),
      wording: "subject",
      says: "“CANCEL order BW-2207” stands in the subject of your letter. The program acts on sheets only.",
    },
    {
      shows: "a wish",
      given: (sample) => ({
        ...clean(sample),
        statements: said("Please engrave the other one in red, qty 5."),
      }),
      wording: "text",
      says: "“Please engrave the other one in red, qty 5.” stands in your letter. The program acts on sheets only.",
    },
    {
      shows: "a reply to questions in words that nobody expects",
      given: (sample) => ({ ...clean(sample), statements: said("It is a racehorse.", "reply") }),
      wording: "reply",
      says: "“It is a racehorse.” stands in your reply. The program cannot read it as an answer.",
    },
    {
      shows: "an answer beside words that nobody expects",
      given: (sample) => ({ ...clean(sample), statements: said("1 YES … It is a pub", "answer") }),
      wording: "answer",
      says: "You answer “1 YES … It is a pub”. The program cannot read all that stands beside the answer.",
    },
    {
      shows: "words of the order's manager",
      given: (sample) => ({
        ...clean(sample),
        statements: [{ kind: "said", where: "manager", by: "Ana Reyes", words: "Please hold it." }],
      }),
      wording: "manager",
      says: "Ana Reyes, who manages this order, writes: “Please hold it.”",
    },
    {
      shows: "a remark between the lines of our answer",
      given: (sample) => ({ ...clean(sample), statements: said("just drop the last word", "quotation") }),
      wording: "quotation",
      says: "“just drop the last word” stands in a letter that yours quotes or forwards. The program acts on sheets only.",
    },
    {
      shows: "a wish in a text that is attached",
      given: (sample) => ({
        ...clean(sample),
        statements: [
          { kind: "said", where: "file", file: "changes.txt", words: "Engrave button 2 as EXIT." },
        ],
      }),
      wording: "file",
      says: "“Engrave button 2 as EXIT.” stands in the file changes.txt. The program acts on sheets only.",
    },
    {
      shows: "a name that speaks against its sheet",
      given: (sample) => ({
        ...clean(sample),
        statements: [{ kind: "said", where: "name", words: "K-4 CANCELLED.pdf" }],
      }),
      wording: "name",
      says: "A file is called “K-4 CANCELLED.pdf”. The program goes by what is in a sheet, not by its name.",
    },
    {
      shows: "a struck-out line",
      given: (sample) => ({ ...clean(sample), statements: [{ kind: "unsure" }] }),
      wording: "unsure",
      says: "Some words of your letter are struck out or hidden, so it is not certain what it says. A person reads it.",
    },
    {
      shows: "a text of a hundred pages",
      given: (sample) => ({ ...clean(sample), statements: [{ kind: "long" }] }),
      wording: "long",
      says: "The text of your letter is too long for the program to read. A person reads it.",
    },
  ],
  *find(letter, _, say) {
    // A person reads the whole of such a letter anyhow.
    if (letter.orders.length === 0 && hasNoSheet(letter)) return;
    for (const statement of letter.statements ?? []) {
      if (statement.kind !== "said") yield say(statement.kind, { what: statement.file ?? "your letter" }, []);
      else if (statement.where === "file")
        yield say("file", { file: statement.file, words: statement.words }, []);
      else if (statement.where === "manager")
        yield say("manager", { by: statement.by, words: statement.words }, []);
      else yield say(statement.where, { words: statement.words }, []);
    }
  },
});

import { describe, expect, test } from "vitest";
import { withCopiesMarked } from "../../../src/reading/reply/copies.ts";
import { subject } from "./read-reply.ts";

const answer = [
  "CONFIRM: 1 question before order FM-72 can be engraved.",
  "",
  "Answer each question in a reply to this letter, by its number.",
  "  1. “SALONA” in row 1 of button 1 looks misspelt.",
  "     Or reply “1 YES” if it is meant as it stands.",
  "  2. A person reads “please bring all of it to the back door, and ring the bell there twice”.",
].join("\n");
const marked = (text: string): string => withCopiesMarked(text, { text: answer, subject });
const quoted = (text: string): string => text.replace(/^/gm, "> ");

describe("what is copied from an answer without a mark", () => {
  test("is marked, and what its sender wrote around it is not", () => {
    expect(marked(`1 YES\n\n${answer}\n\nGreta`)).toBe(`1 YES\n\n${quoted(answer)}\n\nGreta`);
  });
  test("is known where a program has broken its lines elsewhere, and made other signs of its own", () => {
    const broken = answer
      .replace("CONFIRM:", "CONFIRM")
      .replace("a reply to", "a\nreply to")
      .replace("  1.", " *1.")
      .replace(" it\n", "\nit ")
      .toUpperCase();
    expect(marked(`1 yes\n${broken}`)).toBe(`1 yes\n${quoted(broken)}`);
  });
  test("may have a line of the sender in it", () => {
    const [above, below] = [
      answer.slice(0, answer.indexOf("  1.")).trim(),
      answer.slice(answer.indexOf("  1.")),
    ];
    expect(marked(`${above}\n1 yes\n${below}`)).toBe(`${quoted(above)}\n1 yes\n${quoted(below)}`);
  });
});

describe("what stays as it is", () => {
  test.each([
    ["a short line that the answer has too", "1 YES"],
    ["a line of the answer that is short", "Or reply “1 YES” if it is meant as it stands."],
    [
      "words of the sender that the answer repeats",
      "please bring all of it to the back door, and ring the bell there twice",
    ],
    [
      "a line of the answer with more behind it",
      "Answer each question in a reply to this letter, by its number. No!",
    ],
    ["what is quoted", `1 YES\n\nOn Mon, Nov 9, 2026 at 9:12 AM Plate Desk wrote:\n\n${answer}`],
    ["what has a mark", `1 YES\n${quoted(answer)}`],
    ["a text that is too long", `${answer}\n${"a ".repeat(60_000)}`],
  ])("%s", (_, text) => expect(marked(text)).toBe(text));
});

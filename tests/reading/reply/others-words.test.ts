import { expect, test } from "vitest";
import { answersBeside } from "../../../src/reading/reply/answers-beside.ts";
import { beginsOthersWords } from "../../../src/reading/reply/others-words.ts";
import { askedSalona } from "./asked-salona.ts";

const answer =
  "Legends are cut exactly as typed.\n\n-- \nBurin, the intake desk of Quillgate Stations\nEngraved push-button stations\norders@quillgate.example, 312-555-0140";
const known = { names: ["Dana Whitlock", "dana"], answer };

test.each([
  "From: Eve Marsh <eve@stranger.example>",
  "*From:* Eve Marsh <eve@stranger.example>",
  "Von: Eve Marsh",
  "From Eve:",
  "Eve Marsh:",
  "Begin forwarded message:",
  "---------- Forwarded message ---------",
  "From: The Office of Eve <office@stranger.example>",
])("somebody else's words begin at “%s”", (line) => {
  expect(beginsOthersWords(line, known)).toBe(true);
});

test.each([
  "From: Dana Whitlock <dana@whitlock.example>",
  "From: D. W. <dana@whitlock.example>",
  "From: Burin <desk@quillgate.example>",
  "From: orders@quillgate.example",
  "From Dana:",
  "Dana Whitlock:",
  "Per Mark:",
  "My answers:",
  "From the site:",
  "1 YES",
  "Sent: Monday, November 9, 2026",
])("the sender goes on, or this desk is quoted, at “%s”", (line) => {
  expect(beginsOthersWords(line, known)).toBe(false);
});

test.each(["From: Eve Marsh <eve@stranger.example>\nSent: Monday\nTo: Dana", "From Eve:", "Eve Marsh:"])(
  "nothing is answered or withdrawn by somebody else: %s",
  (head) => {
    for (const says of ["3 YES", "CANCEL S-104"]) {
      const text = `Thanks,\nDana\n\n${head}\n\n${says}`;
      const { answers } = answersBeside(text, askedSalona, () => []);
      expect([...answers.yes, ...answers.withdraws]).toEqual([]);
    }
    const own = answersBeside(`3 YES\n\nThanks,\nDana\n\n${head}\n\nGood.`, askedSalona, () => []);
    expect([...own.answers.yes]).toEqual([3]);
  },
);

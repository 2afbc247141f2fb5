import { expect, test } from "vitest";
import { asksForSheets } from "../../../src/reading/reply/asks-for-sheets.ts";

test.each([
  "Please send the sheets.",
  "Could you e-mail me a blank plate sheet?",
  "send us the order forms again",
  "Where can I get the device sheets?",
  "We don't have your forms.",
  "I need three more blank sheets.",
])("%s asks for sheets", (sentence) => {
  expect(asksForSheets(sentence)).toBe(true);
});

test.each([
  "The sheets are attached.",
  "We will send the sheets on Monday.",
  "Please engrave the other one in red.",
  "I have corrected the form.",
  "Please confirm. The sheets follow.",
  "We need S-104 by Friday.",
])("%s does not", (sentence) => {
  expect(asksForSheets(sentence)).toBe(false);
});

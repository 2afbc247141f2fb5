import { expect, test } from "vitest";
import { trailsOff } from "../../../src/reading/reply/tails.ts";

// ○ stands for a count that is right, ◆ for a courtesy.
test.each([
  "Order attached, in triplicate.",
  "Sheets attached with frames",
  "Please find our order in small letters",
  "Here is the order per wing.",
  "Sheets attached, unsorted.",
  "the forms, clockwise",
  "Sheets attached, names to follow.",
  "Here they are, drawings will follow.",
  "Order attached for both houses.",
  "Here are the sheets for all six floors.",
  "Sheets for stock",
  "Order attached for the first phase.",
  "Sheets attached, left and right as seen from inside.",
  "Order attached, seen from the hall.",
  "Order attached, Bob agreeing.",
  "Sheets attached, to fit.",
  "Order enclosed, on Bob's account.",
  "Sheets herewith, and Bob knows the rest.",
  "sheets att'd, whenever you like",
  "PFA, part one",
])("“%s” goes on in a way that nobody knows", (words) => {
  expect(trailsOff(words, words)).toBe(true);
});

test.each([
  "Order attached.",
  "Order attached, thanks!",
  "Sheets attached, as promised.",
  "Sheets attached with the pictures you asked for",
  "Sheets attached with best wishes",
  "Sheets attached with Bob",
  "Here they are in one mail",
  "Order attached in English",
  "The forms are filled in by hand",
  "Order attached, rest to follow",
  "The sheets will follow.",
  "One sheet per device",
  "Sheets for the library",
  "The sheets for all of them",
  "Forms for two sheets",
  "Order attached for all your stations",
  "Order attached in 2 mails",
  "Order attached with ◆",
  // No word of it hands anything over.
  "She wrote it in triplicate.",
  "He works in border towns, alone",
  "Attic, unsorted",
])("“%s” does not", (words) => {
  expect(trailsOff(words, words)).toBe(false);
});

test("a count hands over what it counts", () => {
  expect(trailsOff("4 plates, in triplicate", "○ plates, in triplicate")).toBe(true);
  expect(trailsOff("4 plates, in triplicate", "4 plates, in triplicate")).toBe(false);
});

test("what is known of the words says nothing more", () => {
  expect(trailsOff("Sheets attached, with frames", "Sheets attached, ◆")).toBe(false);
});

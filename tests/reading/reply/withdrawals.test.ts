import { expect, test } from "vitest";
import { answersBeside } from "../../../src/reading/reply/answers-beside.ts";
import { askedSalona } from "./asked-salona.ts";

/** The sheets that a reply to an answer withdraws, which asked question 3 and came with its sheets or without. */
function withdrawn(text: string, { open = [3], bringsSheets = false } = {}): string[] {
  const { answers } = answersBeside(text, { ...askedSalona, open, bringsSheets }, () => []);
  return [...answers.withdraws];
}

test.each([
  ["CANCEL S-104", ["1/S-104"]],
  ["CANCEL S-104\nCANCEL S-105", ["1/S-104", "1/S-105"]],
  ["Hello,\n\nplease cancel S-104.\n\nThanks, Dana", ["1/S-104"]],
  ["3 YES\nCANCEL S-104", ["1/S-104"]],
  ["CANCEL S-104\nDana", ["1/S-104"]],
])("%j withdraws %j", (text, sheets) => {
  expect(withdrawn(text)).toEqual(sheets);
});

test.each([
  ["other sheets than the reply may withdraw", "CANCEL S-106"],
  ["with a condition below", "CANCEL S-104\nif it is not cut yet"],
  ["with an answer that names no number", "yes\nCANCEL S-104"],
  ["with an answer to a number that was not asked", "4 YES\nCANCEL S-104"],
  ["with a number answered both ways", "3 YES\n3 NO\nCANCEL S-104"],
  ["above a word that was asked about, though it could be a name", "CANCEL S-104\nSalona"],
  ["with a question", "CANCEL S-104\nIs that right?"],
])("nothing is withdrawn %s", (_, text) => {
  expect(withdrawn(text)).toEqual([]);
});

test("beside new sheets it counts as long as nothing may speak of these", () => {
  const brings = { bringsSheets: true };
  expect(withdrawn("CANCEL S-104\n\nThanks", brings)).toEqual(["1/S-104"]);
  expect(withdrawn("CANCEL S-104\n\nDana", brings)).toEqual(["1/S-104"]);
  expect(withdrawn("Hello all,\n\nCANCEL S-104", brings)).toEqual(["1/S-104"]);
  expect(withdrawn("CANCEL S-104\n\nThe new one is in the file", brings)).toEqual([]);
  expect(withdrawn("CANCEL S-104\n\nCorrected sheet attached.", brings)).toEqual([]);
});

test("a reply that was asked nothing withdraws too", () => {
  expect(withdrawn("CANCEL S-104", { open: [] })).toEqual(["1/S-104"]);
});

test("a text longer than any reply withdraws nothing", () => {
  const long = (length: number): string => `CANCEL S-104${"\n".repeat(length - 12)}`;
  expect(withdrawn(long(30_000))).toEqual(["1/S-104"]);
  expect(withdrawn(long(30_001))).toEqual([]);
});

import { describe, expect, test } from "vitest";
import { asking, finish, misspelt, said, several, twice } from "./read-clauses.ts";

/** What a line answers of a single question. */
const saidOf = (question: string, line: string): Record<number, boolean> | undefined =>
  said(line, { ...asking(question), others: [] });

describe("letters of a word are counted", () => {
  test.each<[string, string, boolean]>([
    ["SNUG", "one G", true],
    ["SNUGG", "one G", false],
    ["STRECH", "single T", true],
    ["SNUGG", "two Gs", true],
    ["SNUG", "two Gs", false],
    ["SNUGGG", "two Gs", false],
    ["SALAMA", "three As", true],
    ["SALAM", "three As", false],
    ["SNUGG", "double G", true],
    ["SALAM", "double A", false],
    ["SNUG", "no second G", true],
    ["SNUGG", "no second G", false],
    ["SNUG", "without a double G", true],
    ["SNUGG", "without a double G", false],
    ["FOYR", "without an E", true],
    ["FOYR", "without an O", false],
    ["FOYR", "with a Y", true],
    ["FOYR", "with an E", false],
  ])("%s has %s: %s", (word, letters, has) => {
    const line = `2 is right, ${letters}`;
    expect(saidOf(misspelt(word, "OTHER"), line)).toEqual(has ? { 2: true } : undefined);
    expect(saidOf(finish, line)).toBeUndefined();
  });

  test.each([
    ["C-W-T-C-H", true],
    ["c w t c h", true],
    ["C-W-T-H", false],
  ])("%s is the word: %s", (letters, is) => {
    expect(saidOf(misspelt("CWTCH", "WATCH"), `2 is right, ${letters}`)).toEqual(
      is ? { 2: true } : undefined,
    );
  });
});

const plum =
  "The device is Plum, but plate S-1 is Barley. If only one is wanted, send the sheet again with the right finish.";
const [coves, comdor] = [misspelt("COVES", "COVERS"), misspelt("COMDOR", "CONDOR")];

describe("a reason fits what the question says", () => {
  test.each([
    [plum, "plum is what he wants"],
    [plum, "plum on barley is what he wants"],
    [finish, "chalk is what he wants"],
    [twice, "2 is on and 4 is the dimmed scene"],
    [twice, "button 2 is the evening scene and button 4 is off"],
    [coves, "the cove lights"],
    [coves, "the coves lights"],
    [coves, "the word lights"],
    [comdor, "not condor"],
    [comdor, "condor does not fit"],
  ])("%#: %s", (question, why) => {
    expect(saidOf(question, `2 is right, ${why}`)).toEqual({ 2: true });
  });

  test.each([
    [plum, "plum on walnut is what he wants"],
    [plum, "barley is what he wants"],
    [finish, "slate is what he wants"],
    [twice, "button 2 is the evening scene and button 3 is off"],
    [finish, "button 2 is the evening scene"],
    [coves, "the den lights"],
    [finish, "the cove lights"],
    [comdor, "not kitchen"],
    [comdor, "kitchen does not fit"],
  ])("%#: %s does not", (question, why) => {
    expect(saidOf(question, `2 is right, ${why}`)).toBeUndefined();
  });
});

describe("what is wanted there fits what the question says", () => {
  test.each<[string, string, boolean]>([
    [finish, "in Slate now", true],
    [finish, "Slate throughout", true],
    [finish, "Walnut throughout", false],
    [finish, "Slat throughout", false],
    [misspelt("SLATEE", "SLATE"), "Slate throughout", false],
    [comdor, "it is comedor", true],
    [comdor, "it is kitchen", false],
  ])("%#: %s: %s", (question, wanted, fits) => {
    expect(saidOf(question, `2 is wrong, ${wanted}`)).toEqual(fits ? { 2: false } : undefined);
  });
});

describe("however it is written", () => {
  test.each([
    [misspelt("Salonn", "SALON"), "two Ns", true],
    [misspelt("Cwtch", "WATCH"), "c-w-t-c-h", true],
    [coves, "the Cove lights", true],
    [plum, "Plum is what he wants", true],
    [plum, "plum on Barley is what he wants", true],
    [plum, "plum on bramble is what he wants", false],
    [several, "typ of 4 is copied from the drawing", true],
    [several.replace("TYP OF 4", "Typ. of 4"), "typ. of 4 is copied from the drawing", true],
    [several, "typ of 6 is copied from the drawing", false],
    [finish, "the word lights", false],
    [comdor, "button 1 is the evening scene", false],
    [twice, "button 2 is the evening scene", true],
    [twice, "button 3 is the evening scene", false],
  ])("%#: %s fits what the question says: %s", (question, why, fits) => {
    expect(saidOf(question, `2 is right, ${why}`)).toEqual(fits ? { 2: true } : undefined);
  });
});

import { describe, expect, test } from "vitest";
import { isPaper, wordsAgainst } from "../../../src/reading/reply/papers.ts";
import { catalogue } from "../../make/config.ts";

describe("a paper has a title, or is longer than a note", () => {
  test.each([
    ["Please hold B-2.", false],
    ["The schedules differ.", false],
    ["Planned for May", false],
    ["PURCHASE ORDER 4711", true],
    ["P.O. No 4711", true],
    ["Drawing 7 of 12", true],
    ["Floor plan, ground floor", true],
    ["Devis 12", true],
    ["Angebot", true],
    [`Dear all, ${"so it is ".repeat(132)}`, false],
    [`Dear all, ${"so it is ".repeat(133)}`, true],
    ["Dear all, ".padEnd(1200, "so it is "), false],
    ["Dear all, ".padEnd(1201, "so it is "), true],
  ])("%s", (text, is) => expect(isPaper(text)).toBe(is));
});

describe("a paper is heard where it speaks against a station of the order", () => {
  const marks = ["B-1", "B-2"];
  test.each([
    ["Purchase order\n\nB-1 1 ea 45.00\n\nB-2 1 ea 45.00", []],
    ["Purchase order\n\nB-2 cancelled\n\nNet 30", ["B-2 cancelled"]],
    ["Floor plan\n\nb2 removed per addendum 2.", ["b2 removed per addendum 2."]],
    ["Floor plan\n\nB-3 removed", []],
    ["Terms\n\nThe seller may not cancel.", []],
    ["Terms\n\nIf this order is cancelled, costs are due.", []],
    ["Purchase order\n\nHold all items until released.", ["Hold all items until released."]],
    ["Purchase order\n\nThis order is cancelled.", ["This order is cancelled."]],
    ["Hold all items until released.", ["Hold all items until released."]],
    ["Plan\n\nHOLD: do not engrave.", ["HOLD: do not engrave."]],
    ["Plan\n\nOn hold!", ["On hold!"]],
    ["Plan\n\nDo not make these yet.", ["Do not make these yet."]],
    [
      "Plan\n\nThe order for the new library wing is cancelled.",
      ["The order for the new library wing is cancelled."],
    ],
    ["Plan\n\nHold-open device on door 4", []],
    ["Plan\n\nDo not scale this drawing.", []],
    [`${"Plan ".padEnd(99_987, "x ")}\n\nB-2 is void`, ["B-2 is void"]],
    [`${"Plan ".padEnd(99_988, "x ")}\n\nB-2 is void`, []],
    [`Plan ${"x ".repeat(60_000)}\n\nB-2 is void`, []],
  ])("%#", (text, said) => {
    const facts = { marks, numbers: [], sheets: [], earlier: [] };
    expect(wordsAgainst(text, facts, catalogue).map(({ words }) => words)).toEqual(said);
  });
});

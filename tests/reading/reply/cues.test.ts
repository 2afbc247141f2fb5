import { expect, test } from "vitest";
import { bids, hasLegend, namesGoods, speaksOfTrade, turnsIn } from "../../../src/reading/reply/cues.ts";

// △ stands for a day.
test.each([
  ["Was it △?", "asks"],
  ["by the △", "limits"],
  ["ready before next △", "limits"],
  ["it is here △", "limits"],
  ["standby △", "nothing"],
  ["cohere △", "nothing"],
  ["by early march", "limits"],
  ["in spring", "limits"],
  ["nearby march", "nothing"],
  ["in springs", "nothing"],
  ["in the new yearbook", "nothing"],
])("%s: it %s", (said, turns) => {
  expect(turnsIn(said)).toBe(turns);
});

test.each([
  ["This is not final", true],
  ["It is not finally here", false],
  ["not yet", true],
  ["not yeti", false],
  ["knot final", false],
  ["We will see.", true],
  ["we'll see what", true],
  ["we'll see whatnot", false],
  ["we will seed", false],
  ["not an order", true],
  ["not an orderly", false],
  ["an order", false],
  ["Please make", true],
  ["Appease make", false],
  ["Please add me", false],
  ["please call before you start", true],
  ["please call beforehand", false],
  ["Send it", true],
  ["and make it", true],
  ["brand make it", false],
  ["Deduct the two", true],
  ["Deducted the two", false],
  ["The left one in front please", true],
  ["pleased with the left one", false],
])("“%s” bids somebody to do something: %s", (said, bidden) => {
  expect(bids(said)).toBe(bidden);
});

test.each([
  ["cut", true],
  ["cutlery", false],
  ["haircut", false],
  ["ship by truck", true],
  ["shipping by truck", false],
  ["devices", true],
  ["mobile devices", false],
  ["handheld device", false],
  ["templates", false],
  ["plateau", false],
  ["hundred", false],
  ["redo", false],
])("“%s” is of the trade: %s", (said, isOfTrade) => {
  expect(speaksOfTrade(said)).toBe(isOfTrade);
});

test("beside papers “them” are papers, and a plate is goods beside anything", () => {
  expect(namesGoods("I lost them")).toBe(true);
  expect(namesGoods("I typed them on my phone")).toBe(false);
  expect(namesGoods("I typed the plate on my phone")).toBe(true);
  expect(namesGoods("I typed it on my phone")).toBe(false);
});

test.each([
  ["Lobby: SA", true],
  ["Lobby: S", false],
  ["A word of twenty-two l: SA", false],
  ["see SALO there", true],
  ["see SAL there", false],
])("“%s” has a legend: %s", (said, has) => {
  expect(hasLegend(said)).toBe(has);
});

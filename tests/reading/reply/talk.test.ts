import { expect, test } from "vitest";
import { areFooter } from "../../../src/reading/reply/idle.ts";
import { isSomebody } from "../../../src/reading/reply/somebody.ts";
import {
  areTalks,
  areWhys,
  isNearQuestion,
  isShortLine,
  isTalk,
  isWhy,
  mayBeLegend,
  namesNear,
} from "../../../src/reading/reply/talk.ts";

test("a clause of forty words may be talk", () => {
  const clause = (words: number): string => `I was there${" very".repeat(words - 3)}`;
  expect(isTalk(clause(40), { open: [2] })).toBe(true);
  expect(isTalk(clause(41), { open: [2] })).toBe(false);
});

test("no number that is asked about stands in talk", () => {
  expect(isTalk("I was there for 12 hours", { open: [2] })).toBe(true);
  expect(isTalk("I was there for 12 hours", { open: [12] })).toBe(false);
});

test.each([
  ["sorry but I was away", true],
  ["we were away when the storm hit", true],
  ["sorry for the data but I was away", true],
  ["we were at the but I was away", false],
  ["sorry but make it red", false],
  ["we were away when they sign it", false],
  ["I was away and the but we left", false],
  ["I was in 2 but we left", false],
  ["we were away when the storm", false],
  ["we were away when the storm hits", false],
  ["were away when the storm hit", false],
  ["sorry but my phone died", true],
])("“%s” only talks: %s", (sentence, talks) => {
  expect(areTalks(sentence, { open: [3] })).toBe(talks);
});

test.each([
  ["SALON", "salona", true],
  ["SALONES", "salona", true],
  ["ALONA", "salona", false],
  ["sam", "sal", true],
  ["sim", "sal", false],
  ["sa", "sal", false],
  ["TERRAZZO", "terrace", true],
])("“%s” is nearly “%s”, which was asked about: %s", (said, asked, isNear) => {
  expect(isNearQuestion(said, [asked])).toBe(isNear);
});

test("words of grammar are near no word in question, though they look like it", () => {
  expect(isNearQuestion("stage word for the curtains", ["foyr", "tabs"])).toBe(false);
  expect(isNearQuestion("they say it so", ["saal"])).toBe(false);
  expect(isNearQuestion("word for foyer", ["foyr"])).toBe(true);
  expect(isNearQuestion("for", ["for"])).toBe(true);
});

test.each([
  ["Mrs. Krebs is the donor", true],
  ["asked Mr Kreb", true],
  ["Mrs. Krebbs is the donor", false],
  ["Mrs. Miller is the donor", false],
  ["Krebs is the donor", false],
])("“%s” names somebody nearly as KREBBS: %s", (line, is) => {
  expect(namesNear(line, ["krebbs"])).toBe(is);
});

test.each([
  ["Dana Whitlock of 14 Mill", true],
  ["Dana Whitlock of 14 Mill Lane", false],
  ["make it red", false],
  ["Will Stone", true],
])("“%s” is a short line below a name: %s", (line, is) => {
  expect(isShortLine(line)).toBe(is);
});

test.each([
  ["Reluctantly", false],
  ["Provisionally.", false],
  ["Grudgingly", false],
  ["Tentatively", false],
  ["Unsorted", false],
  ["Oversized", false],
  ["Duplicate", false],
  ["Whatever", false],
  ["Afresh", false],
  ["Kelly", true],
  ["Emily", true],
  ["Beverly", true],
  ["Una", true],
  ["Mildred", true],
  ["Anita", true],
  ["A.B.", true],
  ["A.B.C.", false],
  ["Dana A. B.", true],
  ["Dana Ann Bo", true],
  ["~ Dana", true],
  ["ABC", true],
  ["ABCD", false],
  ["A. B. C. D.", false],
  ["by Dana", false],
  ["Dana Monday", false],
])("“%s” is somebody: %s", (line, is) => {
  expect(isSomebody(line)).toBe(is);
});

test.each([
  [["Whitlock Controls", "T 608-555-0119"], true],
  [["Whitlock Controls", "www.whitlock.example"], true],
  [["Thanks", "http://x"], true],
  [["Whitlock Controls"], false],
  [["Whitlock Controls", "the lobby", "T 608-555-0119"], false],
  [["Whitlock and Sons and Daughters of Harlow", "dana@whitlock.example"], true],
  [["Whitlock and Sons and Daughters of Harlow Quay", "dana@whitlock.example"], false],
  [["Make it red", "dana@whitlock.example"], false],
])("%j are a footer: %s", (lines, are) => {
  expect(areFooter(lines)).toBe(are);
});

test.each([
  ["it is a family name", true],
  ["it is the name of the owner", true],
  ["it is spelled so", true],
  ["both of these are names", true],
  ["both are intended", true],
  ["same spelling as on the plans", true],
  ["as per the approved drawings", true],
  ["they named it after me", true],
  ["the owner confirmed it", true],
  ["the owner is away", false],
  ["owners are away", false],
  ["it is called that now", false],
  ["it is a name with red letters", false],
  ["it is a SALON", false],
  ["it is a name?", false],
  ["it is the room 2 name", false],
  ["approved by the drawings", false],
  ["knowingly named so", false],
  ["named it after me", true],
  ["I checked with our director.", false],
  ["the both of these are names", false],
  ["the owner is called that", true],
  ["this confirmed the name", true],
])("“%s” only says why: %s", (clause, is) => {
  expect(isWhy(clause, { open: [2] })).toBe(is);
});

test.each([
  ["it is called so because it is a name", true],
  ["it is a name and the owner says it", true],
  ["it is a name and make it red", false],
  ["both are meant as they stand", true],
  ["yes it is meant as it stands", false],
])("“%s” consists of reasons: %s", (clause, are) => {
  expect(areWhys(clause, { open: [2] })).toBe(are);
});

test.each([
  ["the red Barn", true],
  ["red Barn", true],
  ["Barn", false],
  ["of Barn", false],
  ["of red Barn", true],
  ["the Old Mill", false],
  ["the roof Lane", true],
  ["the tower Lane", true],
  ["the krt", true],
  ["the mrs", false],
  ["the McKEE", false],
  ["the KEEler", false],
  ["red eBarn", false],
  ["the strng", true],
  ["the eBay Barn", true],
])("“%s” may have what is to be cut: %s", (said, may) => {
  expect(mayBeLegend(said)).toBe(may);
});

test.each([
  ["nice weather", true],
  ["nice weather around the harbor", false],
  ["I was at “noon”", false],
  ["I was at the salone", false],
  ["I was at the saloon", false],
  ["I like the word", false],
  ["In this case the cupboard.", false],
  ["Ortega Electric & Lighting", false],
  ["I was at the red Barn", false],
  ["nice weather around town", true],
  ["It came in late", true],
  ["You have a nice one", true],
  ["You went there", false],
])("“%s” is talk beside a question about SALONA: %s", (clause, talks) => {
  expect(isTalk(clause, { open: [2], inQuestion: ["salona"] })).toBe(talks);
});

test.each([
  ["Happy New Year", false],
  ["Dana Whitlock", false],
])("“%s” names nothing that may be cut: %s", (said, may) => {
  expect(mayBeLegend(said)).toBe(may);
});

test.each([
  ["Everyone was sick", true],
  ["we were in OKRA today", false],
  ["it means OKRA", false],
  ["It's the owner's surname", false],
])("“%s” is talk beside question 2: %s", (clause, talks) => {
  expect(isTalk(clause, { open: [2] })).toBe(talks);
});

test.each([
  ["That is how the architect has it on the schedule.", true],
  ["the owner is happy with the name", true],
  ["the owner is happy", false],
  ["the owner calls it OKRA", false],
])("“%s” only says why, beside question 2: %s", (clause, is) => {
  expect(isWhy(clause, { open: [2] })).toBe(is);
});

test("talk of several clauses with a number in it is left to a person", () => {
  expect(areTalks("sorry but I was away", { open: [3] })).toBe(true);
  expect(areTalks("sorry but I was away for 12 days", { open: [3] })).toBe(false);
});

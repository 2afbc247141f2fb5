import { expect, test } from "vitest";
import { withoutCameWords } from "../../../src/reading/reply/came-words.ts";
import { read } from "./read-reply.ts";

const onSheets = ["WAITING", "TIMER", "BOARD 1", "BOARD 2", "KÜCHE", "LANDING", "KITCHEN LIGHTS"];

test.each([
  ["No, should be WAITING. Corrected attached.", "No. Corrected attached."],
  ["No. It should say KITCHEN LIGHTS, new one attached", "No, new one attached"],
  ["1. No - TIMER, sheet attached", "1. No , sheet attached"],
  ["2. TIMER, new sheet attached", "2. new sheet attached"],
  ["Should be BOARD 1 and BOARD 2. Revised sheet attached.", "Revised sheet attached."],
  ["1 NO, sheet attached (KÜCHE)", "1 NO, sheet attached"],
  ["2 NO, sheet attached, now KÜCHE in both places.", "2 NO, sheet attached."],
  ["2 NO, changed to “TIMER”. New one attached", "2 NO. New one attached"],
  ["Sheets for position 2 (LANDING) and 3 (TIMER) attached", "Sheets for position 2 and 3 attached"],
])("%s says no more than: %s", (line, rest) => {
  const said = withoutCameWords(line, (words) => onSheets.includes(words.replace(/[“”]/gu, "")));
  expect(said.replace(/ +/gu, " ")).toBe(rest);
});

test.each([
  ["the sheet that came has another word", "No, should be KITCHEN. Corrected attached."],
  ["one of two words is on no sheet", "Should be BOARD 1 and BOARD 3. Revised sheet attached."],
  ["it says yes", "2 YES, now TIMER, sheet attached"],
  ["nothing else is said", "2 - TIMER"],
  ["it is no word in capitals", "No, should be Timer. Corrected attached."],
  ["nothing leads to it", "The TIMER goes on the left, sheet attached"],
])("a line stays as it is where %s", (_why, line) => {
  expect(withoutCameWords(line, (words) => onSheets.includes(words))).toBe(line);
});

test("who says beside a no what stands on the sheet that came has said no, and who says something else has not", () => {
  const text = "2. No, should be SALON, sheet attached\n3 YES";
  const came = { bringsSheets: true, others: 0 };
  expect(read(text, { ...came, onSheets: ["SALON"] })).toEqual({ yes: [3], no: [2], person: false });
  const wish = "2. SALON on the left wall, sheet attached\n3 YES";
  expect(read(wish, { ...came, onSheets: ["SALON"] })).toMatchObject({ no: [], person: true });
});

import { expect, test } from "vitest";
import { approvalsIn, isApproval } from "../../../src/reading/reply/approval.ts";

test.each([
  ["Yes.", true],
  ["OK, go ahead", true],
  ["Approved!", true],
  ["Everything looks good - thanks", true],
  ["Please release it", true],
  ["Proof approved.", true],
  ["Proof approved, go ahead.", true],
  ["The proof is fine. Please proceed with engraving", true],
  ["OK to proceed", true],
  ["Looks good to us, please go ahead and cut.", true],
  ["We approve the proof.", true],
  ["Approved for engraving, thanks", true],
  ["Approved as shown", true],
  ["OK 👍", true],
  ["Fine by me.", true],
  ["Order approved for production", true],
  ["Released for fabrication.", true],
  ["Please proceed with the work.", true],
  ["Go ahead when you are ready", true],
  ["Go ahead when the owner is ready", false],
  ["OK 👎", false],
  ["👍", false],
  ["Proof approved except P-1", false],
  ["Proof approved with changes", false],
  ["The proof is not fine", false],
  ["Proof approved, please cut two of them", false],
  ["OK to proceed on Friday", false],
  ["Please cut it in red", false],
  ["Please go ahead and cut it short", false],
  ["Our proof attached", false],
  ["Approved as noted", false],
  ["Order another", false],
  ["Yes, make it red", false],
  ["Not approved", false],
  ["Yesterday", false],
  ["Go ahead once the owner signs", false],
  ["", false],
  [`Yes${" ".repeat(196)}`, true],
  [`Yes${" ".repeat(197)}`, false],
])("“%s” says no more than that all is as it should be: %s", (line, is) => {
  expect(isApproval(line)).toBe(is);
});

test.each<[string, string[]]>([
  ["Approved.\nthe owner is glad", ["Approved."]],
  ["Approved\nGreta", ["Approved"]],
  ["OK\n\nthe owner is glad", ["OK"]],
  ["yes\ngo ahead", ["yes", "go ahead"]],
  ["Please go ahead and cut\nit short.", []],
  ["We approve\nthe other one.", []],
])("of the lines of “%s” these say so: %j", (text, lines) => {
  expect(approvalsIn(text)).toEqual(lines);
});

import { expect, test } from "vitest";
import { isApproval } from "../../../src/reading/reply/approval.ts";

test.each([
  ["Yes.", true],
  ["OK, go ahead", true],
  ["Approved!", true],
  ["Everything looks good - thanks", true],
  ["Please release it", true],
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

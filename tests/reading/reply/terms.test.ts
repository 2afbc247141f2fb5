import { expect, test } from "vitest";
import { areTerms } from "../../../src/reading/reply/terms.ts";

test.each([
  ["All orders are subject to our standard terms.", true],
  ["Prices may change without notice.", true],
  ["Prices may change.", false],
  ["Our terms hold.", false],
  ["This order is subject to our standard terms.", false],
  ["All orders are subject to our terms?", false],
  [`W${"h".repeat(59)}: same-day pick-up`, true],
  [`W${"h".repeat(60)}: same-day pick-up`, true],
  [`W${"h".repeat(61)}: same-day pick-up`, false],
  [`All orders are subject to our terms.${" ".repeat(264)}`, true],
  [`All orders are subject to our terms.${" ".repeat(265)}`, false],
])("%j tells the terms of a business: %s", (sentence, are) => {
  expect(areTerms(sentence)).toBe(are);
});

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

test.each<[string, boolean]>([
  ["All contracts need binding terms.", true],
  ["All contractors need binding terms.", false],
  ["All sales are final, terms apply.", true],
  ["All salespeople have written terms.", false],
  ["Prices are valid for 100 days.", true],
  ["Prices are valid for 1000 days.", false],
  ["For service, call Ann.", true],
  ["For serviceable lamps, call Ann.", false],
  ["For support, redial.", false],
  ["Larkspur Lamps: same-day delivery", true],
  ["Larkspur Lamps: same-daylight tubes", false],
  ["24 h service", true],
  ["24 hinges", false],
  ["All orders of 1234 no terms.", false],
  ["All orders of 12345 no terms.", true],
  ["All orders of 12 and 1234 no terms.", false],
  ["All orders of 12 and 12345 no terms.", true],
])("%s: words and numbers end where those of terms do", (sentence, are) => {
  expect(areTerms(sentence)).toBe(are);
});

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

test.each<[string, boolean]>([
  ["A+ rated, free estimates", true],
  ["Licensed & insured", true],
  ["Family owned and operated since 1961", true],
  ["Celebrating 40 years!", true],
  ["Safety is no accident.", true],
  ["No job too big or too small", true],
  ["Open Sat 7-12", true],
  ["Mon-Fri 7:30am to 5pm", true],
  ["Proudly serving the valley since 1978", true],
  ["No contract is formed by email.", true],
  ["No contract is formed by us.", false],
  ["Free estimates, and make it brass", false],
  ["Celebrating 40 years, so cut a star", false],
  ["Open Sat 7-12, deliver then", false],
  ["Safety first, add a lock", false],
  ["Serving dishes since 1978 plates", false],
])("%s: what stands in footers and on vans", (sentence, are) => {
  expect(areTerms(sentence)).toBe(are);
});

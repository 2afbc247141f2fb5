import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { composeAnswer } from "../../../src/answer/answer.ts";
import { catalogue } from "../../make/config.ts";
import { hasProgram } from "../../make/program.ts";
import { reportOn } from "../../make/report.ts";
import { completeOrder, device } from "../../make/sample.ts";
import { openBrowser, openPage, violationsOn } from "./browser.ts";

const answers = {
  pass: completeOrder(),
  waiting: completeOrder().slice(0, 3),
  fail: [device({ finish: "SLT" }, { "3": ["RECEPTION", ""] })],
  person: [device({ unsure: [{ place: "row.1.1", one: "ENTRY", other: "ENTER" }] })],
};

/** Grounds that nearly are white. */
const light = `[...document.querySelectorAll("body, body *")]
  .map((element) => getComputedStyle(element).backgroundColor)
  .filter((colour) => colour.startsWith("rgb(") && colour.match(/[0-9]+/g).every((part) => part > 200))`;

describe.runIf(hasProgram("chromium"))("an answer in a browser", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  test.each(["light", "dark"] as const)(
    "that is %s has no words that axe finds too faint",
    async (colorScheme) => {
      const { page } = await openPage(browser, { colorScheme, viewport: { width: 390, height: 844 } });
      for (const [verdict, sheets] of Object.entries(answers)) {
        const { html } = composeAnswer(reportOn(sheets), catalogue);
        await page.setContent(html);
        const faint = (await violationsOn(page)).filter((fault) => fault.startsWith("color-contrast"));
        expect([verdict, faint]).toEqual([verdict, []]);
        const grounds = await page.evaluate<string[]>(light);
        expect([verdict, grounds.length > 0]).toEqual([verdict, colorScheme === "light"]);
      }
    },
  );
});

import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { composeAnswer } from "../../../src/answer/answer.ts";
import { periodPage } from "../../../src/audit/page.ts";
import { catalogue } from "../../make/config.ts";
import { hasProgram } from "../../make/program.ts";
import { reportOn } from "../../make/report.ts";
import { completeOrder, device } from "../../make/sample.ts";
import { slipDay } from "../../make/slip-day.ts";
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

async function expectReadable(page: Page, name: string, scheme: "light" | "dark"): Promise<void> {
  const faint = (await violationsOn(page)).filter((fault) => fault.startsWith("color-contrast"));
  expect([name, faint]).toEqual([name, []]);
  const grounds = await page.evaluate<string[]>(light);
  expect([name, grounds.length > 0]).toEqual([name, scheme === "light"]);
}

describe.runIf(hasProgram("chromium"))("in a browser", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  test.each(["light", "dark"] as const)(
    "an answer that is %s has no words that axe finds too faint",
    async (colorScheme) => {
      const { page } = await openPage(browser, { colorScheme, viewport: { width: 390, height: 844 } });
      for (const [verdict, sheets] of Object.entries(answers)) {
        const { html } = composeAnswer(reportOn(sheets), catalogue);
        await page.setContent(html);
        await expectReadable(page, verdict, colorScheme);
      }
    },
  );

  test.each(["light", "dark"] as const)(
    "the page of a day that is %s has no words that axe finds too faint",
    async (colorScheme) => {
      const { page } = await openPage(browser, { colorScheme });
      await page.setContent(periodPage(slipDay, { charts: true }));
      await expectReadable(page, "day", colorScheme);
    },
  );
});

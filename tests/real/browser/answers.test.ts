import { readdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { hasProgram } from "../../make/program.ts";
import { openBrowser, openPage, playDemo, violationsOn } from "./browser.ts";

const phone = { width: 390, height: 844 };

/** Where the verdict, the step below it and the first problem with its fix end, in pixels from the top. */
const ends = `(() => {
  const end = (element) => element?.getBoundingClientRect().bottom;
  const [, verdict, todo] = document.querySelector("[aria-level='1']").closest("table").querySelectorAll("tr");
  // Its number stands in the first cell of its row, and what it says is bold, unless it is only a note.
  const first = [...document.querySelectorAll("tr")].find(
    (row) => /^\\d+\\.$/.test(row.cells[0].textContent) && row.querySelector("strong") !== null,
  );
  return { verdict: end(verdict), todo: end(todo), first: end(first) };
})()`;

describe.runIf(hasProgram("chromium"))("answers in a browser", () => {
  let browser: Browser;
  let demo: string;
  let answers: string[];
  beforeAll(async () => {
    demo = playDemo();
    answers = readdirSync(join(demo, "answers")).filter((file) => file.endsWith(".html"));
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser.close();
    rmSync(demo, { recursive: true, force: true });
  });
  const addressOf = (file: string): string => pathToFileURL(join(demo, "answers", file)).href;

  test("axe finds nothing on any answer, and none is wider than a phone", async () => {
    expect(answers.length).toBeGreaterThan(90);
    const { page, faults } = await openPage(browser, { viewport: phone });
    for (const file of answers) {
      await page.goto(addressOf(file));
      expect([file, await violationsOn(page)]).toEqual([file, []]);
      const over = await page.evaluate<number>(
        "document.documentElement.scrollWidth - document.documentElement.clientWidth",
      );
      expect([file, over]).toEqual([file, 0]);
    }
    expect(faults).toEqual([]);
  });

  test("one screen of a phone shows the verdict, what to do first, and the first problem with its fix", async () => {
    const { page } = await openPage(browser, { viewport: phone });
    const problems: string[] = [];
    for (const file of answers) {
      await page.goto(addressOf(file));
      const { verdict, todo, first } =
        await page.evaluate<Record<"verdict" | "todo" | "first", number | undefined>>(ends);
      expect([file, verdict]).toEqual([file, expect.any(Number)]);
      expect([file, todo]).toEqual([file, expect.any(Number)]);
      if (first !== undefined) problems.push(file);
      const below = [verdict, todo, first].filter((end) => end !== undefined && end > phone.height);
      expect([file, below]).toEqual([file, []]);
    }
    expect(problems.length).toBeGreaterThan(60);
  });
});

import { rmSync } from "node:fs";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { hasProgram } from "../../make/program.ts";
import { openBrowser, openPage, playDemo, type Served, serveCopy, signIn, violationsOn } from "./browser.ts";

const pages = [
  "/",
  "/people",
  "/orders",
  "/orders?search=larkspur",
  "/orders?search=nothing-of-the-kind",
  "/orders/FW-1184",
  "/orders/SM-610",
  "/letters",
  "/letters/3",
  "/letters/37",
  "/day?from=2026-11-09&to=2026-11-27",
  "/checks",
  "/checks/spelling",
  "/try",
  "/accounts",
  "/erase?address=simone@larchlowe.example",
];

describe.runIf(hasProgram("chromium"))("the desk in a browser", () => {
  let browser: Browser;
  let demo: string;
  const served: Served[] = [];
  beforeAll(async () => {
    demo = playDemo();
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser.close();
    for (const one of served) await one.close();
    rmSync(demo, { recursive: true, force: true });
  });
  const serve = async (): Promise<string> => {
    const one = await serveCopy(demo);
    served.push(one);
    return one.address;
  };

  test("sheets are tried, and nothing of them stays", async () => {
    const { page } = await openPage(browser);
    await signIn(page, await serve());
    await page.click("nav >> text=Letters");
    const before = await page.locator("tr").count();
    await page.click("nav >> text=Try sheets");
    await page.setInputFiles("input[type=file]", `${demo}/letters/27-teasel-characters.eml`);
    await page.click("text=Check them");
    await expect
      .poll(() => page.locator("section pre").textContent())
      .toContain("FAIL: 2 to fix, 1 question before order LL-0093");
    expect(await page.locator("a[download]").count()).toBeGreaterThan(0);
    await page.click("nav >> text=Letters");
    expect(await page.locator("tr").count()).toBe(before);
  });

  test.each([
    ["wide", { viewport: { width: 1280, height: 900 } }],
    ["on a phone", { viewport: { width: 390, height: 844 } }],
    ["in the dark", { viewport: { width: 1280, height: 900 }, colorScheme: "dark" }],
  ] as const)("axe finds nothing on any page, and none is wider than its window: %s", async (_, options) => {
    const address = await serve();
    const { page } = await openPage(browser, { ...options, bypassCSP: true });
    await page.goto(`${address}/sign-in`);
    expect(await violationsOn(page)).toEqual([]);
    await signIn(page, address);
    for (const path of pages) {
      await page.goto(`${address}${path}`);
      expect([path, await violationsOn(page)]).toEqual([path, []]);
      const over = await page.evaluate<number>(
        "document.documentElement.scrollWidth - document.documentElement.clientWidth",
      );
      expect([path, over]).toEqual([path, 0]);
    }
  });
});

import { rmSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { hasProgram } from "../../make/program.ts";
import {
  openBrowser,
  openPage,
  playDemo,
  type Served,
  serveCopy,
  signIn,
  violationsOn,
  visitor,
} from "./browser.ts";

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

  /** Settles a question, has the order released, lets a letter in and puts another aside. */
  async function triage(page: Page, address: string): Promise<void> {
    await signIn(page, address);
    await page.click("nav >> text=People");
    const ticket = page.locator(".ticket", { hasText: "Order FW-1184" });
    await ticket.locator("input[name=why]").fill("Marta said so on the telephone");
    await ticket.locator("button", { hasText: "It is meant so" }).click();
    await expect.poll(() => page.locator(".said").textContent()).toContain("Order FW-1184: pass");
    await page.click("text=Release to engraving");
    await expect.poll(() => page.locator(".said").textContent()).toContain("Released:");
    expect(await page.locator("main").textContent()).toContain("Released to engraving on");

    await page.click("nav >> text=People");
    const held = page.locator(".ticket", { hasText: "Letter 37" });
    await held
      .locator("form", { hasText: "Why it is genuine" })
      .locator("input[name=why]")
      .fill("called back");
    await held.locator("button", { hasText: "Let it in" }).click();
    await expect.poll(() => page.locator(".said").textContent()).toContain("Let in as letter");
    await page.click("nav >> text=People");
    const about = page.locator(".ticket", { hasText: "Letter 25" });
    await about.locator("input[name=why]").fill("answered by telephone");
    await about.locator("button", { hasText: "It is dealt with" }).click();
    await expect.poll(() => page.locator(".said").textContent()).toContain("is dealt with");
    await page.click("nav >> text=People");
    expect(await page.locator(".ticket", { hasText: "Letter 25" }).count()).toBe(0);
  }

  test("a day's triage by mouse", async () => {
    const { page, faults } = await openPage(browser);
    await triage(page, await serve());
    expect(faults).toEqual([]);
  });

  test("the same with scripts off", async () => {
    const { page } = await openPage(browser, { javaScriptEnabled: false });
    await triage(page, await serve());
  });

  test("a question is found and settled by keyboard alone", async () => {
    const address = await serve();
    const { page } = await openPage(browser);
    await page.goto(`${address}/people`);
    const { keyboard } = page;
    await keyboard.type(visitor.user);
    await keyboard.press("Tab");
    await keyboard.type(visitor.password);
    await keyboard.press("Enter");
    await page.waitForURL("**/people");
    await tabTo(page, (text) => text === "Today");
    await keyboard.press("Enter");
    await page.waitForURL(`${address}/`);
    await keyboard.press("/");
    await keyboard.type("fw-1184");
    await keyboard.press("Enter");
    await page.waitForURL("**/orders?search=*");
    await tabTo(page, (text) => text === "FW-1184");
    await keyboard.press("Enter");
    await page.waitForURL("**/orders/FW-1184");
    await tabTo(page, (_, name) => name === "why");
    await keyboard.type("Marta said so on the telephone");
    await tabTo(page, (text) => text === "It is meant so");
    await keyboard.press("Enter");
    await expect.poll(() => page.locator(".said").textContent()).toContain("Order FW-1184: pass");
  });

  test("sheets are tried, and nothing of them stays", async () => {
    const { page } = await openPage(browser);
    await signIn(page, await serve());
    await page.click("nav >> text=Letters");
    const before = await page.locator("tr").count();
    await page.click("nav >> text=Try sheets");
    await page.setInputFiles("input[type=file]", `${demo}/letters/27-teasel-characters.eml`);
    await page.click("text=Check them");
    await expect.poll(() => page.locator("section pre").textContent()).toContain("FAIL: 2 things to fix");
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

  test("an attached page of HTML is kept as a file, and runs nowhere", async () => {
    const address = await serve();
    const { page } = await openPage(browser, { acceptDownloads: true });
    await signIn(page, address);
    const download = page.waitForEvent("download");
    await page.goto(`${address}/files/3/1`).catch(() => undefined);
    expect((await download).suggestedFilename()).not.toBe("");
  });
});

/** Presses Tab until what has the focus is wanted, by its text or its name. */
async function tabTo(page: Page, isWanted: (text: string, name: string) => boolean): Promise<void> {
  for (let i = 0; i < 200; i++) {
    await page.keyboard.press("Tab");
    const [text = "", name = ""] = await page.evaluate<string[]>(
      `[document.activeElement?.textContent?.trim() ?? "", document.activeElement?.getAttribute("name") ?? ""]`,
    );
    if (isWanted(text, name)) return;
  }
  throw new Error("nothing of the kind can be reached by Tab");
}

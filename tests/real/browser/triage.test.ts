import { rmSync } from "node:fs";
import { wcagContrast } from "culori";
import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { hasProgram } from "../../make/program.ts";
import { openBrowser, openPage, playDemo, type Served, serveCopy } from "./browser.ts";
import { byKeys, byMouse, type Stop } from "./hands.ts";
import { triage } from "./triage.ts";

describe.runIf(hasProgram("chromium"))("a clerk's whole work on the desk", () => {
  let browser: Browser;
  let demo: string;
  let served: Served;
  beforeAll(async () => {
    demo = playDemo();
    browser = await openBrowser();
  });
  afterEach(() => served.close());
  afterAll(async () => {
    await browser.close();
    rmSync(demo, { recursive: true, force: true });
  });

  test.each([true, false])("by mouse, scripts: %s", async (javaScriptEnabled) => {
    served = await serveCopy(demo);
    const { page, faults } = await openPage(browser, { javaScriptEnabled });
    await page.goto(`${served.address}/`);
    for (const [, work] of triage) await work(byMouse(page));
    expect(faults).toEqual([]);
  });

  test.each([
    ["with scripts", true, "light"],
    ["with scripts, in the dark", true, "dark"],
    ["without scripts", false, "light"],
  ] as const)("by keyboard alone, %s", async (how, hasScripts, colorScheme) => {
    served = await serveCopy(demo);
    const { page, faults } = await openPage(browser, { javaScriptEnabled: hasScripts, colorScheme });
    const dim = new Set<string>();
    const hand = byKeys(page, { hasScripts, onStop: (stop) => isPlain(stop) || dim.add(tell(stop)) });
    await page.goto(`${served.address}/`);
    const counts: (readonly [string, number])[] = [];
    for (const [what, work] of triage) {
      const before = hand.presses();
      await work(hand);
      counts.push([what, hand.presses() - before]);
    }
    console.info(
      `Keys pressed ${how}:\n${counts.map(([what, n]) => `${`${n}`.padStart(4)} ${what}`).join("\n")}`,
    );
    expect([...dim]).toEqual([]);
    expect(counts.filter(([, n]) => n > most)).toEqual([]);
    expect(faults).toEqual([]);
  });
});

/** Keys that a case takes at most, words not counted. House rule. */
const most = 20;

/** WCAG 2.2: 2.4.11 it is not hidden; 2.4.13 its ring has 2 px and a contrast of 3:1 at least. */
function isPlain({ tag, ring, isSeen }: Stop): boolean {
  // What a skip link leads to is no control.
  if (tag === "MAIN" || tag === "BODY") return true;
  return isSeen && ring.px >= 2 && wcagContrast(ring.colour, ring.ground) >= 3;
}

function tell({ tag, name, ring, isSeen }: Stop): string {
  return `${tag} “${name.slice(0, 40)}”: ${ring.px} px ${ring.colour} on ${ring.ground}, ${isSeen ? "seen" : "hidden"}`;
}

import { execFileSync } from "node:child_process";
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import axe from "axe-core";
import { type Browser, type BrowserContextOptions, chromium, type Page } from "playwright-core";
import { configure } from "../../../src/commands/configuration.ts";
import { openBackOffice, servePage } from "../../../src/commands/wire.ts";

/** Debian's Chromium, without a screen. */
export function openBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox"] });
}

/** The demonstration's folder, made once for all tests of a file. */
export function playDemo(): string {
  const folder = mkdtempSync(join(tmpdir(), "burin-demo-"));
  execFileSync(process.execPath, ["src/main.ts", "demo", folder]);
  return folder;
}

export interface Served {
  readonly address: string;
  readonly close: () => Promise<void>;
}

/** Serves a desk over a copy of the demonstration's record, so that a test may change it. */
export async function serveCopy(demo: string): Promise<Served> {
  const folder = mkdtempSync(join(tmpdir(), "burin-desk-"));
  cpSync(demo, folder, { recursive: true });
  // Paths in the settings lead from a folder of the same depth to the same places.
  const configuration = await configure(join(folder, "burin.yaml"));
  const { desk, close } = await openBackOffice(configuration);
  const page = await servePage(configuration, desk, { port: await freePort() });
  return {
    address: page.address,
    async close() {
      await page.close();
      await close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** A port of the loopback address that nobody has. */
export function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const server = createServer();
    server.listen(0, "127.0.0.1", () => {
      const address = server.address();
      server.close(() => resolve(typeof address === "object" && address !== null ? address.port : 0));
    });
  });
}

/** A page in a window of its own, with everything that went wrong on it. */
export async function openPage(
  browser: Browser,
  options: BrowserContextOptions = {},
): Promise<{ readonly page: Page; readonly faults: string[] }> {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  const faults: string[] = [];
  page.on("pageerror", (error) => faults.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") faults.push(message.text());
  });
  return { page, faults };
}

export const visitor = { user: "rosa", password: "a quill for every wall" } as const;

export async function signIn(page: Page, address: string): Promise<void> {
  await page.goto(`${address}/sign-in`);
  await page.fill("#user", visitor.user);
  await page.fill("#password", visitor.password);
  await page.click("main button");
}

/** What axe-core finds on a page against WCAG 2.2 AA and its best practices, one line each. */
export async function violationsOn(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() =>
    (
      globalThis as unknown as {
        axe: { run: () => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
      }
    ).axe.run(),
  );
  return violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 120)).join(" | ")}`,
  );
}

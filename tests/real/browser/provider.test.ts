import type { Server } from "node:http";
import { Provider } from "oidc-provider";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { openProvider } from "../../../src/desk/provider.ts";
import { serveDesk } from "../../../src/desk/serve.ts";
import type { Desk } from "../../../src/intake/desk.ts";
import { temporaryDesk } from "../../make/desk.ts";
import { hasProgram } from "../../make/program.ts";
import { freePort, openBrowser, openPage } from "./browser.ts";

const secret = "a secret between the desk and the provider";

/** A provider of the package oidc-provider. Whoever names himself is believed; mallory's address is not proved. */
function startProvider(port: number, back: string): Promise<Server> {
  // It warns of what its examples are not for.
  vi.spyOn(console, "warn").mockImplementation(() => undefined);
  vi.spyOn(console, "info").mockImplementation(() => undefined);
  const provider = new Provider(`http://127.0.0.1:${port}`, {
    clients: [{ client_id: "burin", client_secret: secret, redirect_uris: [back] }],
    claims: { openid: ["sub"], email: ["email", "email_verified"] },
    cookies: { keys: ["a key of the tests"] },
    findAccount: (_, id) => ({
      accountId: id,
      claims: () => ({ sub: id, email: `${id}@quillgate.example`, email_verified: id !== "mallory" }),
    }),
  });
  return new Promise((resolve) => {
    const server = provider.listen(port, "127.0.0.1", () => resolve(server));
  });
}

describe.runIf(hasProgram("chromium"))("signing in by an OpenID Connect provider", () => {
  let browser: Browser;
  let desk: Desk;
  let address: string;
  let issuer: string;
  const ends: (() => Promise<void>)[] = [];
  beforeAll(async () => {
    browser = await openBrowser();
    const [port, providerPort] = [await freePort(), await freePort()];
    address = `http://127.0.0.1:${port}`;
    issuer = `http://127.0.0.1:${providerPort}`;
    const server = await startProvider(providerPort, `${address}/sign-in/back`);
    ends.push(
      () =>
        new Promise((resolve) => {
          server.close(() => resolve());
          server.closeAllConnections();
        }),
    );
  });
  afterAll(async () => {
    await browser.close();
    for (const end of ends) await end();
  });

  async function serve(): Promise<() => Promise<void>> {
    desk = await temporaryDesk();
    for (const user of ["ines@quillgate.example", "mallory@quillgate.example"])
      await desk.store.accounts.save(
        { user, name: user, role: "act", isShut: false },
        "a test",
        desk.clock.now(),
      );
    const provider = openProvider({ issuer, clientId: "burin", clientSecret: secret }, true);
    const port = Number(new URL(address).port);
    const { close } = await serveDesk(
      { desk, address, hours: 1, isTryOpen: false, provider },
      { host: "127.0.0.1", port },
    );
    return close;
  }

  async function comeAs(page: Page, login: string, path = "/people"): Promise<void> {
    await page.goto(`${address}${path}`);
    expect(await page.locator("#password").count()).toBe(0);
    await page.click("text=Sign in with your company");
    await page.fill("input[name=login]", login);
    await page.fill("input[name=password]", "anything");
    await page.click("button[type=submit]");
    await page.click("button[type=submit]");
  }

  test("whoever it vouches for comes in, to the page that he wanted", async () => {
    const close = await serve();
    const { page } = await openPage(browser);
    await comeAs(page, "ines");
    await page.waitForURL(`${address}/people`);
    expect(await page.locator("header").textContent()).toContain("ines@quillgate.example");
    await close();
  });

  test("an address that it does not prove, and one without an account, stay out", async () => {
    const close = await serve();
    for (const login of ["mallory", "nobody"]) {
      const { page } = await openPage(browser);
      await comeAs(page, login);
      await expect.poll(() => page.locator("[role=alert]").textContent()).toContain("have no account here");
      await page.goto(`${address}/people`);
      expect(page.url()).toContain("/sign-in");
    }
    await close();
  });

  test("an answer that was not asked for here, or is used twice, lets nobody in", async () => {
    const close = await serve();
    const { page } = await openPage(browser);
    let back = "";
    page.on("request", (request) => {
      if (request.url().startsWith(`${address}/sign-in/back`)) back = request.url();
    });
    await comeAs(page, "ines");
    await page.waitForURL(`${address}/people`);
    expect(back).toContain("code=");
    const { page: other } = await openPage(browser);
    expect((await other.goto(back))?.status()).toBe(403);
    await page.click("text=Sign out");
    expect((await page.goto(back))?.status()).toBe(403);
    await close();
  });

  test("where only it vouches, no password lets anybody in", async () => {
    const close = await serve();
    const body = new URLSearchParams({ user: "ines@quillgate.example", password: "" });
    const response = await fetch(`${address}/sign-in`, {
      method: "POST",
      body,
      headers: { origin: address },
    });
    expect(response.status).toBe(403);
    await close();
  });
});

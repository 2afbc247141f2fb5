import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { hashPassword } from "../../../src/desk/passwords.ts";
import { serveDesk } from "../../../src/desk/serve.ts";
import { temporaryDesk } from "../../make/desk.ts";
import { routes } from "../../make/desk-routes.ts";
import { rawPdf } from "../../make/hostile/raw-pdf.ts";
import { hostileValues } from "../../make/hostile-values.ts";
import { hasProgram } from "../../make/program.ts";
import { post } from "../../make/thread.ts";
import { freePort, openBrowser, openPage, signIn, visitor } from "./browser.ts";

const steal = "document.title = `stolen ${document.cookie} ${JSON.stringify(localStorage)}`; alert(1)";
const attached: Readonly<Record<string, Buffer>> = {
  "page.html": Buffer.from(`<!doctype html><script>${steal}</script><img src=x onerror="${steal}">`),
  "picture.svg": Buffer.from(
    `<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"><script>alert(1)</script></svg>`,
  ),
  "form.pdf": rawPdf({
    1: "<</Type/Catalog/Pages 2 0 R/OpenAction<</S/JavaScript/JS(app.alert\\(1\\);)>>>>",
    2: "<</Type/Pages/Kids[3 0 R]/Count 1>>",
    3: "<</Type/Page/Parent 2 0 R/MediaBox[0 0 300 300]>>",
  }),
};

describe.runIf(hasProgram("chromium"))("what strangers send, in a browser", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  /** A desk to which everything hostile has been sent, and a browser in which somebody is signed in. */
  async function serve(options: { readonly bypassCSP: boolean }) {
    const plain = await temporaryDesk();
    const port = await freePort();
    const address = `http://127.0.0.1:${port}`;
    const desk = { ...plain, rules: { ...plain.rules, links: { address, days: 14 } } };
    const password = await hashPassword(visitor.password);
    await desk.store.accounts.save(
      { user: visitor.user, name: hostileValues.html, role: "administer", password, isShut: false },
      "a test",
      desk.clock.now(),
    );
    const files = Object.entries(attached).map(([file, bytes]) => ({ file, bytes }));
    for (const [name, value] of Object.entries(hostileValues)) {
      const line = value.replaceAll(/[\r\n\t]+/g, " ");
      await post(desk, {
        subject: line,
        text: value,
        files: name === "html" ? files : [{ file: `${value}.txt`, bytes: Buffer.from(value) }],
        sheets: [
          { mark: value, legend: [value, "SALONA"], fill: { order: value, project: value, notes: value } },
        ],
      });
    }
    const { close } = await serveDesk(
      { desk, address, hours: 1, isTryOpen: false },
      { host: "127.0.0.1", port },
    );
    const { page } = await openPage(browser, options);
    const ran: string[] = [];
    page.on("dialog", (dialog) => {
      ran.push(dialog.message());
      void dialog.dismiss();
    });
    page.context().on("page", (other) => ran.push(`a window: ${other.url()}`));
    await signIn(page, address);
    return { desk, address, page, ran, close };
  }

  const marks = (page: Page): Promise<number> =>
    page.evaluate<number>(
      `document.querySelectorAll("img[src=x], svg[onload], [onerror], [onfocus], main script").length`,
    );

  test("nothing runs on any page, even where no content policy forbids it", async () => {
    const { desk, address, page, ran, close } = await serve({ bypassCSP: true });
    const letters = await desk.store.letters.list(100);
    const orders = letters.flatMap(({ orders: numbers }) => numbers);
    expect(letters.length).toBe(Object.keys(hostileValues).length);
    expect(orders.length).toBeGreaterThan(10);
    const paths = routes
      .filter(
        ({ method, path }) =>
          method === "GET" && !/file|proof|original|answer|provider|back|\.\w+$/.test(path),
      )
      .flatMap(({ path, at }) =>
        path.includes(":letter")
          ? letters.map(({ letter }) => `/letters/${letter}`)
          : path.includes(":number") || path === "/orders"
            ? orders.map((order) => at({ order, token: "" }))
            : [at({ order: "", token: "" })],
      );
    for (const path of paths) {
      await page.goto(`${address}${path}`);
      expect([path, await page.locator("h1").count(), await marks(page)]).toEqual([path, 1, 0]);
    }
    expect(ran).toEqual([]);
    await close();
  });

  test("a page, a picture and a form that were attached are kept, and run nowhere in the desk's name", async () => {
    const { desk, address, page, ran, close } = await serve({ bypassCSP: false });
    const letters = await desk.store.letters.list(100);
    const files = letters.flatMap(({ attachments }) => attachments).filter(({ file }) => file in attached);
    expect(files.map(({ file }) => file).toSorted()).toEqual(Object.keys(attached).toSorted());
    await page.evaluate("localStorage.setItem('kept', 'a secret')");
    const [cookie] = await page.context().cookies();
    expect(cookie).toMatchObject({ httpOnly: true, sameSite: "Lax" });
    for (const { id, file } of files) {
      const download = page.waitForEvent("download");
      await page.goto(`${address}/files/${id}`).catch(() => undefined);
      expect((await download).suggestedFilename()).toMatch(/^file \d+-\d+$/);
      // In a frame, as a picture or as a script it is nothing either.
      await page.goto(`${address}/`);
      const got = await page.evaluate<string>(`new Promise((done) => {
        const script = document.createElement("script");
        script.onload = () => done("run");
        script.onerror = () => done("refused");
        script.src = "/files/${id}";
        document.head.append(script);
      })`);
      expect([file, got]).toEqual([file, "refused"]);
      expect(await page.title()).not.toContain("stolen");
    }
    // Shown all the same, as a program might that heeds no disposition, it stands alone: no cookie, no storage.
    const [html] = files.filter(({ file }) => file === "page.html");
    await page.route("**/files/**", async (route) => {
      const response = await route.fetch();
      const { "content-disposition": _, ...headers } = response.headers();
      await route.fulfill({ response, headers: { ...headers, "content-type": "text/html" } });
    });
    await page.goto(`${address}/files/${html?.id}`);
    expect(await page.title()).toBe("");
    expect(await page.evaluate<string>("origin")).toBe("null");
    expect(await page.evaluate<string>("try { document.cookie } catch (cause) { cause.name }")).toBe(
      "SecurityError",
    );
    expect(await page.evaluate<string>("try { localStorage.kept } catch (cause) { cause.name }")).toBe(
      "SecurityError",
    );
    expect(ran).toEqual([]);
    await close();
  });
});

import { expect, test } from "vitest";
import { pagedDesk } from "../make/desk-page.ts";
import { post } from "../make/thread.ts";

/** What somebody could put into any field, subject or name. */
const values = {
  html: `<img src=x onerror=alert(1)>`,
  script: `</pre><script>alert(1)</script>`,
  svg: `<svg onload=alert(1)>`,
  quote: `"' onfocus=alert(1) autofocus x="`,
  override: `S-1\u202Efdp.exe`,
  formula: `=HYPERLINK("http://elsewhere.example")`,
} as const;

/** A page without what stands between quotes, where nothing runs. */
const bare = (page: string): string => page.replaceAll(/"[^"]*"/g, '""');

/** Tags that no page has but by somebody else's hand. */
const foreign = /<img src=x|<script>|<svg|<[a-z][^<>]*\son[a-z]+=/i;

test.each(Object.entries(values))("what somebody sends as %s runs on no page", async (_, value) => {
  const { desk, as } = await pagedDesk();
  const sheet = { mark: "P-1", legend: [value.slice(0, 40)], fill: { order: "FM-80", project: value } };
  await post(desk, { sheets: [sheet], subject: value, text: `please ${value}` });
  const own = await as("administer");
  for (const path of [
    "/",
    "/people",
    "/orders?search=%3Cimg",
    `/orders?search=${encodeURIComponent(value)}`,
    "/orders/FM-80",
    "/letters/1",
  ]) {
    const response = await own.get(path);
    expect([path, response.status]).toEqual([path, 200]);
    expect(bare(await response.text()), path).not.toMatch(foreign);
  }
  const said = await own.post("/orders/FM-80/write", { words: value });
  expect(bare(await said.text())).not.toMatch(foreign);
  await desk.store.accounts.save(
    { user: "x", name: value, role: "see", isShut: false },
    "a test",
    desk.clock.now(),
  );
  expect(bare(await (await own.get("/accounts")).text())).not.toMatch(foreign);
});

test("what is written on the page cannot break a header of the letter that goes out", async () => {
  const { desk, as } = await pagedDesk();
  await post(desk, { sheets: [{ mark: "P-1", legend: ["SALONA"], fill: { order: "FM-80" } }] });
  const own = await as("act");
  await own.post("/orders/FM-80/write", { words: "Hello\r\nBcc: everybody@elsewhere.example\r\n\r\nmore" });
  const answer = await desk.store.answers.of(2);
  const head =
    Buffer.from(answer?.bytes ?? [])
      .toString("latin1")
      .split("\r\n\r\n")[0] ?? "";
  expect(head).toContain("Subject:");
  expect(head).not.toMatch(/^bcc:/im);
});

test("a file that was attached is kept by the browser, never shown or run in the page's name", async () => {
  const { desk, as } = await pagedDesk();
  await post(desk, {
    sheets: [{ mark: "P-1", legend: ["POOL"], fill: { order: "FM-80" } }],
    files: [{ file: `x"\r\nset-cookie: a=b.html`, bytes: Buffer.from("<script>alert(1)</script>") }],
  });
  const own = await as("see");
  const [, file] = (await desk.store.letters.read(1)).attachments;
  const response = await own.get(`/files/${file?.id}`);
  expect(response.status).toBe(200);
  expect(response.headers.get("content-type")).toBe("application/octet-stream");
  expect(response.headers.get("content-disposition")).toMatch(/^attachment; filename\*=UTF-8''[\w%.-]+$/);
  expect(response.headers.get("content-security-policy")).toContain("sandbox");
  expect(response.headers.get("x-content-type-options")).toBe("nosniff");
  expect(response.headers.get("set-cookie")).toBeNull();
});

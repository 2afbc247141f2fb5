import { expect, test } from "vitest";
import type { Role } from "../../src/ports/accounts.ts";
import { pagedDesk, password, tokenIn } from "../make/desk-page.ts";
import { post } from "../make/thread.ts";

const unknownWord = { mark: "P-1", legend: ["SALONA"], fill: { order: "FM-80" } } as const;
const everyPage = [
  "/",
  "/people",
  "/orders",
  "/orders/FM-80",
  "/checks",
  "/day",
  "/letters/1",
  "/files/1/1",
  "/try",
  "/accounts",
  "/erase",
];

test.each(everyPage)("%s is shown to nobody who is not signed in", async (path) => {
  const { desk, browser } = await pagedDesk();
  await post(desk, { sheets: [unknownWord] });
  const response = await browser().get(path);
  expect(response.status).toBe(302);
  expect(response.headers.get("location")).toBe(`/sign-in?next=${encodeURIComponent(path)}`);
});

test("whoever gives a wrong password, or is nobody, is told the same", async () => {
  const { as, browser } = await pagedDesk();
  await as("see");
  for (const user of ["see", "nobody"]) {
    const response = await browser().post("/sign-in", {
      user,
      password: "a quill for every well",
      token: "",
    });
    expect(response.status).toBe(403);
    expect(await response.text()).toContain("User or password is wrong.");
    expect(response.headers.get("set-cookie")).toBeNull();
  }
});

test("of 200 sign-ins in a burst no more than a few are looked at", async () => {
  const { as, browser } = await pagedDesk();
  await as("see");
  const stranger = browser("198.51.100.9");
  const codes: number[] = [];
  for (let i = 0; i < 200; i++)
    codes.push((await stranger.post("/sign-in", { user: "see", password: `guess ${i}`, token: "" })).status);
  expect(codes.filter((code) => code === 403).length).toBeLessThanOrEqual(10);
  expect(codes.at(-1)).toBe(429);
  // From there, the right password is no better.
  expect((await stranger.post("/sign-in", { user: "see", password, token: "" })).status).toBe(429);
});

test("a session's secret is new at each sign-in, and the old one is worth nothing", async () => {
  const { as, browser } = await pagedDesk();
  const own = await as("act");
  const before = own.cookie;
  await own.post("/sign-in", { user: "act", password, token: "" });
  expect(own.cookie).not.toBe(before);
  const other = browser();
  other.cookie = before;
  expect((await other.get("/")).status).toBe(302);
  expect((await own.get("/")).status).toBe(200);
});

test("a secret that somebody has planted does not become a session", async () => {
  const { as, browser } = await pagedDesk();
  await as("act");
  const victim = browser();
  victim.cookie = "burin_desk=planted";
  await victim.post("/sign-in", { user: "act", password, token: "" });
  expect(victim.cookie).not.toContain("planted");
  const planter = browser();
  planter.cookie = "burin_desk=planted";
  expect((await planter.get("/")).status).toBe(302);
});

test("whoever signs out, or is shut out, is out", async () => {
  const { desk, as } = await pagedDesk();
  const own = await as("act");
  const kept = own.cookie;
  await own.post("/sign-out", {});
  own.cookie = kept;
  expect((await own.get("/")).status).toBe(302);

  const other = await as("see");
  const account = await desk.store.accounts.find("see");
  if (account === undefined) throw new Error("no account");
  await desk.store.accounts.save({ ...account, isShut: true }, "a test", desk.clock.now());
  expect((await other.get("/")).status).toBe(302);
  expect((await other.post("/sign-in", { user: "see", password, token: "" })).status).toBe(403);
});

test("a form without the page's token, or from another page, changes nothing", async () => {
  const { desk, as } = await pagedDesk();
  await post(desk, { sheets: [unknownWord] });
  const own = await as("release");
  const fields = { number: "1", act: "yes", why: "she said so" };
  const forged = await own.post("/orders/FM-80/points", { ...fields, token: "x" });
  expect(forged.status).toBe(403);
  const elsewhere = await own.post("/orders/FM-80/points", fields, { origin: "http://elsewhere.example" });
  expect(elsewhere.status).toBe(403);
  const [order] = await desk.store.orders.named("FM-80");
  expect(order).toMatchObject({ verdict: "confirm", revision: 1 });
});

/** What each role may do: the least role for each act. */
const acts: readonly (readonly [path: string, fields: Readonly<Record<string, string>>, least: Role])[] = [
  ["/orders/FM-80/points", { number: "1", act: "say", why: "please look" }, "act"],
  ["/orders/FM-80/write", { words: "Good morning" }, "act"],
  ["/orders/FM-80/place", { sheet: "1/1", mark: "P-2", why: "moved" }, "act"],
  ["/orders/FM-80/release", {}, "release"],
  ["/orders/FM-80/cut", {}, "act"],
  ["/letters/1/aside", { why: "read" }, "act"],
  ["/letters/1/let-in", { why: "known" }, "act"],
  ["/letters/1/again", { why: "lost" }, "act"],
  ["/accounts", { user: "mallory", name: "M", role: "administer", password }, "administer"],
  ["/accounts/shut", { user: "see" }, "administer"],
];

test.each(acts)("%s is done by nobody of a lesser role", async (path, fields, least) => {
  const { desk, as } = await pagedDesk();
  await post(desk, { sheets: [unknownWord] });
  for (const role of ["see", "act", "release"] as const) {
    if (role === least) break;
    const own = await as(role);
    const before = JSON.stringify([
      await desk.store.orders.named("FM-80"),
      await desk.store.letters.history(1),
    ]);
    const response = await own.post(path, fields);
    expect(response.status, role).toBe(403);
    expect(
      JSON.stringify([await desk.store.orders.named("FM-80"), await desk.store.letters.history(1)]),
    ).toBe(before);
    if (role === "act" && least === "release") break;
  }
  expect(await desk.store.accounts.find("mallory")).toBeUndefined();
});

test("after signing in nobody is sent away to another site", async () => {
  const { as } = await pagedDesk();
  const own = await as("see");
  for (const next of [
    "https://elsewhere.example/",
    "//elsewhere.example",
    "/\\elsewhere.example",
    "javascript:alert(1)",
    "/ok\r\nset-cookie: a=b",
  ]) {
    const response = await own.post("/sign-in", { user: "see", password, next, token: "" });
    expect([next, response.headers.get("location")]).toEqual([next, "/"]);
  }
});

test("every page forbids scripts of its own, frames and other sites", async () => {
  const { as } = await pagedDesk();
  const own = await as("administer");
  for (const path of ["/", "/people", "/try", "/accounts", "/no-such-page"]) {
    const response = await own.get(path);
    const policy = response.headers.get("content-security-policy") ?? "";
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self'");
    expect(policy).not.toContain("unsafe");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(response.headers.get("x-content-type-options")).toBe("nosniff");
    expect(response.headers.get("cache-control")).toContain("no-store");
    expect(await response.text()).not.toMatch(/<script(?! src="\/script\.js")|\son\w+=|style="/);
  }
});

test("a path that climbs leads nowhere", async () => {
  const { desk, as } = await pagedDesk();
  await post(desk, { sheets: [unknownWord] });
  const own = await as("administer");
  for (const path of [
    "/files/1/..%2f..%2fetc%2fpasswd",
    "/files/../../etc/passwd",
    "/files/1/999",
    "/files/%00/1",
    "/letters/999999999999999999999",
  ]) {
    const response = await own.get(path);
    expect([path, response.status]).toEqual([path, 404]);
  }
});

test("the page's own token is not another session's", async () => {
  const { as } = await pagedDesk();
  const one = tokenIn(await (await (await as("act")).get("/people")).text());
  const other = tokenIn(await (await (await as("see")).get("/people")).text());
  expect(one).not.toBe("");
  expect(one).not.toBe(other);
});

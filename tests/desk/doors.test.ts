import { expect, test } from "vitest";
import { pagedDesk, password, tokenIn } from "../make/desk-page.ts";
import { routes } from "../make/desk-routes.ts";
import { post } from "../make/thread.ts";

const unknownWord = { mark: "P-1", legend: ["SALONA"], fill: { order: "FM-80" } } as const;
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

test("whatever is asked for forbids scripts of its own, frames and other sites", async () => {
  const { desk, as } = await pagedDesk();
  await post(desk, { sheets: [unknownWord] });
  const own = await as("administer");
  for (const { path, at } of [...routes, { method: "GET", path: "none", at: () => "/no-such-page" }]) {
    const response = await own.get(at({ order: "FM-80", token: "x" }));
    const policy = response.headers.get("content-security-policy") ?? "";
    const told = (what: unknown) => expect(what, path);
    told(policy).toContain("default-src 'none'");
    told(policy).not.toContain("unsafe");
    told(response.headers.get("x-content-type-options")).toBe("nosniff");
    told(response.headers.get("cache-control")).toContain("no-store");
    if (response.headers.has("content-disposition")) told(policy).toBe("sandbox; default-src 'none'");
    else told(policy).toMatch(/script-src 'self'.*frame-ancestors 'none'/);
    if (response.headers.get("content-type")?.startsWith("text/html") === true)
      told(await response.text()).not.toMatch(/<script(?! src="\/script\.js")|\son\w+=|style="/);
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

test("nobody shuts himself out", async () => {
  const { desk, as } = await pagedDesk();
  const own = await as("administer");
  const refused = await own.post("/accounts/shut", { user: "administer" });
  expect([refused.status, await refused.text()]).toEqual([
    400,
    expect.stringContaining("Nobody shuts himself out"),
  ]);
  expect((await desk.store.accounts.find("administer"))?.isShut).toBe(false);
  expect((await own.get("/accounts")).status).toBe(200);
});

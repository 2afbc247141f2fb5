import { expect, test } from "vitest";
import type { Desk } from "../../src/intake/desk.ts";
import { may, roles } from "../../src/ports/accounts.ts";
import { type Browser, pagedDesk, tokenIn } from "../make/desk-page.ts";
import { awayProvider, type Known, type Route, routes } from "../make/desk-routes.ts";
import { post } from "../make/thread.ts";

const unknownWord = { mark: "P-1", legend: ["SALONA"], fill: { order: "FM-80" } } as const;
const known: Known = { order: "FM-80", token: "x" };
const named = routes.map((route) => [`${route.method} ${route.path}`, route] as const);
const posts = named.filter(([, { method }]) => method === "POST");

const front = { provider: awayProvider } as const;

async function deskWithOrder() {
  const paged = await pagedDesk(front);
  await post(paged.desk, { sheets: [unknownWord] });
  return paged;
}

/** All that an act could change. */
async function recordOf({ store }: Desk): Promise<string> {
  const letters = await store.letters.list(100);
  const histories = await Promise.all(letters.map(({ letter }) => store.letters.history(letter)));
  return JSON.stringify([await store.orders.named("FM-80"), histories, await store.accounts.all()]);
}

/** Asks as a page's own form or link would, unless told otherwise. */
function ask(own: Browser, route: Route, over: Readonly<Record<string, string>> = {}): Promise<Response> {
  const path = route.at(known);
  return route.method === "GET" ? own.get(path) : own.post(path, { ...route.fields, ...over });
}

test("every route of the app stands in the table, and nothing else", async () => {
  const { app } = await pagedDesk(front);
  const own = app.routes
    .filter(({ method }) => method !== "ALL")
    .map(({ method, path }) => `${method} ${path}`);
  expect(own.length).toBeGreaterThan(30);
  expect(named.map(([name]) => name).toSorted()).toEqual([...new Set(own)].toSorted());
});

test("nobody who is not signed in comes to what is not for guests, and nothing changes", async () => {
  const { desk, browser } = await deskWithOrder();
  const before = await recordOf(desk);
  for (const [name, route] of named) {
    const response = await ask(browser(), route, { token: "" });
    const told = [name, response.status, response.headers.get("location") ?? ""];
    const way = `/sign-in?next=${encodeURIComponent(route.at(known).replace(/\?.*/, ""))}`;
    if (route.least === "guest") expect(told).not.toEqual([name, 302, way]);
    else if (route.method === "GET") expect(told).toEqual([name, 302, way]);
    else {
      expect(told).toEqual([name, 403, ""]);
      expect(await response.text()).toContain("Sign in first.");
    }
  }
  expect(await recordOf(desk)).toBe(before);
});

test.each(roles)("whoever %s may do that and what it takes less for, and no more", async (role) => {
  const { desk, as } = await deskWithOrder();
  const own = await as(role);
  const before = await recordOf(desk);
  const isAllowed = ({ least }: Route): boolean => least === "guest" || may(role, least);
  for (const [name, route] of named.filter(([, one]) => !isAllowed(one))) {
    const response = await ask(own, route);
    expect([name, response.status]).toEqual([name, 403]);
    expect([name, await response.text()]).toEqual([name, expect.stringContaining("may not do that")]);
  }
  expect(await recordOf(desk)).toBe(before);
  for (const [name, route] of named.filter(([, one]) => isAllowed(one))) {
    const response = await ask(await as(role), route);
    expect([name, await response.text()]).not.toEqual([name, expect.stringContaining("may not do that")]);
  }
});

test("a forged form changes nothing, whoever is signed in", async () => {
  const { desk, as } = await deskWithOrder();
  const [own, other] = [await as("administer"), await as("see")];
  const others = tokenIn(await (await other.get("/try")).text());
  const before = await recordOf(desk);
  for (const [name, route] of posts) {
    const elsewhere = await own.post(route.at(known), route.fields ?? {}, {
      origin: "http://elsewhere.example",
    });
    expect([name, elsewhere.status]).toEqual([name, 403]);
    expect(await elsewhere.text()).toContain("came from another page");
    // Whoever signs in has no token yet; whoever follows a link has the link.
    if (route.least === "guest") continue;
    for (const token of ["", "x", others]) {
      const response = await ask(own, route, { token });
      expect([name, response.status]).toEqual([name, 403]);
      expect(await response.text()).toContain("too old");
    }
  }
  expect(await recordOf(desk)).toBe(before);
});

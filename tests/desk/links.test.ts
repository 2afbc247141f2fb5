import { simpleParser } from "mailparser";
import { expect, test } from "vitest";
import type { Desk } from "../../src/intake/desk.ts";
import { takeDue } from "../../src/intake/take.ts";
import { temporaryDesk } from "../make/desk.ts";
import { pagedDesk } from "../make/desk-page.ts";
import { routes } from "../make/desk-routes.ts";
import { post } from "../make/thread.ts";

const address = "http://desk.quillgate.example";
const unknownWord = { mark: "P-1", legend: ["SALONA"], fill: { order: "FM-80" } } as const;

async function linkedDesk(): Promise<{ desk: Desk; set: (moment: string) => void }> {
  const plain = await temporaryDesk();
  let now = new Date("2026-11-09T15:00:00Z");
  const desk = {
    ...plain,
    clock: { now: () => now },
    rules: { ...plain.rules, links: { address, days: 14 } },
  };
  return {
    desk,
    set: (moment) => {
      now = new Date(moment);
    },
  };
}

/** The path that the answer to a letter leads to. */
async function linkIn(desk: Desk, letter: number): Promise<string> {
  const answer = await desk.store.answers.of(letter);
  const { text = "", html = "" } = await simpleParser(Buffer.from(answer?.bytes ?? []));
  const [, path = ""] = /http:\/\/desk\.quillgate\.example(\/answer\/\S+)/.exec(text) ?? [];
  if (path !== "") expect(html).toContain(`<a href="${address}${path}">`);
  return path;
}

test("the link of an answer shows its questions, and a button settles them as a reply would", async () => {
  const { desk } = await linkedDesk();
  const { letter } = await post(desk, { sheets: [unknownWord] });
  const { browser } = await pagedDesk({ desk });
  const path = await linkIn(desk, letter);
  const own = browser();
  const shown = await own.get(path);
  expect(shown.status).toBe(200);
  expect(await shown.text()).toContain("SALONA");
  // Opening it, as a mail program or a guard does, changes nothing.
  expect((await desk.store.orders.named("FM-80"))[0]).toMatchObject({ verdict: "confirm", revision: 1 });
  const taken = await own.post(path, { order: "FM-80", "q-1": "yes", token: "" });
  expect(taken.status).toBe(200);
  expect(await taken.text()).toContain("No question is open");
  expect((await desk.store.orders.named("FM-80"))[0]).toMatchObject({ verdict: "pass", revision: 2 });
  while (await takeDue(desk));
  const answer = await desk.store.answers.of(letter + 1);
  expect(answer?.recipient).toBe("greta@fallowmere.example");
  const [confirmed] = await desk.store.orders.confirmed("greta@fallowmere.example", "FM-80");
  expect(confirmed).toMatchObject({ number: 1, by: "greta@fallowmere.example" });
});

test("a link settles nothing that needs one of us", async () => {
  const { desk } = await linkedDesk();
  const { letter } = await post(desk, {
    sheets: [unknownWord, { mark: "P-2", legend: ["MAIN", "SW"], fill: { order: "FM-80" } }],
  });
  const { browser } = await pagedDesk({ desk });
  const path = await linkIn(desk, letter);
  const [order] = await desk.store.orders.named("FM-80");
  const safety = order?.questions.find(({ problem }) => problem.check === "safety-wording")?.number;
  expect(safety).toBeDefined();
  const own = browser();
  expect(await (await own.get(path)).text()).not.toContain("MAIN");
  expect((await own.post(path, { order: "FM-80", [`q-${safety}`]: "yes", token: "" })).status).toBe(400);
  expect((await desk.store.orders.named("FM-80"))[0]?.verdict).not.toBe("pass");
});

test("a link opens no other order, nothing else of the desk, and nothing when it is forged or old", async () => {
  const { desk, set } = await linkedDesk();
  const { letter } = await post(desk, { sheets: [unknownWord] });
  await post(desk, {
    from: "Bo <bo@oakmoor.example>",
    sheets: [{ ...unknownWord, fill: { order: "OX-9" } }],
  });
  const { browser } = await pagedDesk({ desk });
  const path = await linkIn(desk, letter);
  const own = browser();
  expect((await own.post(path, { order: "OX-9", "q-1": "yes", token: "" })).status).toBe(404);
  await own.get(path);
  for (const route of routes.filter(({ method, least }) => method === "GET" && least !== "guest")) {
    const asked = route.at({ order: "FM-80", token: path });
    expect([asked, (await own.get(asked)).status]).toEqual([asked, 302]);
  }
  const [number, until, code = ""] = path.replace("/answer/", "").split("-", 3);
  const forged = [
    `${number}-${until}-${code.slice(0, -1)}${code.endsWith("A") ? "B" : "A"}`,
    `2-${until}-${code}`,
    `${number}-zzz-${code}`,
    "x",
    "%00",
  ];
  for (const token of forged)
    expect([token, (await own.get(`/answer/${token}`)).status]).toEqual([token, 404]);
  set("2026-11-22T15:00:00Z");
  expect((await own.get(path)).status).toBe(200);
  set("2026-11-24T15:00:00Z");
  expect((await own.get(path)).status).toBe(404);
});

test("a desk without such a page names none", async () => {
  const desk = await temporaryDesk();
  const { letter } = await post(desk, { sheets: [unknownWord] });
  const answer = await desk.store.answers.of(letter);
  expect(Buffer.from(answer?.bytes ?? []).toString()).not.toContain("/answer/");
});

import { expect, onTestFinished, test } from "vitest";
import { openHealth } from "../../src/telemetry/health.ts";
import { serveStatus } from "../../src/telemetry/status.ts";
import { freePort } from "../make/free-port.ts";

type Counts = () => Promise<Record<string, number>>;
const lettersOf = (unfinished: Counts) => ({
  unfinished,
  isKnown: async () => Object.keys(await unfinished()).length > 0,
});

async function served(states: Counts): Promise<(path: string) => Promise<Response>> {
  const port = await freePort();
  const close = await serveStatus(port, { letters: lettersOf(states) });
  onTestFinished(close);
  return (path) => fetch(`http://127.0.0.1:${port}${path}`);
}

test("/healthz says ok while the record answers, and 503 when it does not", async () => {
  let works = true;
  const get = await served(() => (works ? Promise.resolve({}) : Promise.reject(new Error("gone"))));
  expect((await get("/healthz")).status).toBe(200);
  works = false;
  const failed = await get("/healthz");
  expect([failed.status, await failed.text()]).toEqual([503, "the record does not answer\n"]);
});

test("/metrics counts letters by where they stand now", async () => {
  let states: Record<string, number> = { held: 2, unknown: 1 };
  const get = await served(() => Promise.resolve(states));
  const first = await (await get("/metrics")).text();
  expect(first).toContain('burin_letters{state="held"} 2');
  expect(first).toContain('burin_letters{state="unknown"} 1');
  states = { held: 3 };
  const next = await (await get("/metrics")).text();
  expect(next).toContain('burin_letters{state="held"} 3');
  expect(next).not.toContain('state="unknown"');
});

test("any other page is not there, and a port that is taken is told", async () => {
  const port = await freePort();
  onTestFinished(await serveStatus(port, { letters: lettersOf(() => Promise.resolve({})) }));
  expect((await fetch(`http://127.0.0.1:${port}/`)).status).toBe(404);
  await expect(serveStatus(port, { letters: lettersOf(() => Promise.resolve({})) })).rejects.toThrow(
    "EADDRINUSE",
  );
});

test("/healthz is red while a part does not work, says which and why, and is green again by itself", async () => {
  let now = new Date("2026-11-09T15:00:00Z");
  const health = openHealth({ now: () => now });
  const port = await freePort();
  onTestFinished(await serveStatus(port, { letters: lettersOf(() => Promise.resolve({})) }, health));
  const get = async (path: string): Promise<[number, string]> => {
    const response = await fetch(`http://127.0.0.1:${port}${path}`);
    return [response.status, await response.text()];
  };
  health.good("mailbox orders", 1200);
  health.good("sender");
  expect(await get("/healthz")).toEqual([200, "ok\n"]);
  health.bad("sender", "sign-in refused");
  expect(await get("/healthz")).toEqual([503, "sender: sign-in refused\n"]);
  const [, metrics] = await get("/metrics");
  expect(metrics).toContain('burin_healthy{part="sender"} 0');
  expect(metrics).toContain('burin_healthy{part="mailbox orders"} 1');
  health.good("sender");
  expect(await get("/healthz")).toEqual([200, "ok\n"]);
  now = new Date("2026-11-09T15:20:01Z");
  expect(await get("/healthz")).toEqual([
    503,
    "mailbox orders: no progress since 2026-11-09T15:00:00.000Z\n",
  ]);
  health.good("mailbox orders", 1200);
  expect(await get("/healthz")).toEqual([200, "ok\n"]);
});

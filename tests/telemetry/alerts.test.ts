import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { expect, onTestFinished, test } from "vitest";
import { parse } from "yaml";
import { z } from "zod";
import { openHealth } from "../../src/telemetry/health.ts";
import { openLoad } from "../../src/telemetry/load.ts";
import { serveStatus } from "../../src/telemetry/status.ts";
import { freePort } from "../make/free-port.ts";

const file = "config/alerts.yaml";
const text = readFileSync(file, "utf8");
const rule = z.strictObject({
  alert: z.string().regex(/^Burin[A-Z]\w+$/),
  expr: z.string(),
  for: z
    .string()
    .regex(/^\d+[smh]$/)
    .optional(),
  annotations: z.strictObject({ summary: z.string() }),
});
// https://prometheus.io/docs/prometheus/latest/configuration/alerting_rules/
const form = z.strictObject({
  groups: z.array(z.strictObject({ name: z.string(), rules: z.array(rule).min(1) })),
});

/** What a worker tells that has a mailbox and a part that reports its health. */
async function metrics(): Promise<string> {
  const clock = { now: () => new Date("2026-11-09T15:00:00Z") };
  const health = openHealth(clock);
  health.good("mailbox orders");
  const load = openLoad();
  load.lies("orders", () => new Date("2026-11-09T14:58:30Z"));
  load.lies("quiet", () => undefined);
  const counted = load.counted({
    send: () => Promise.resolve({ kind: "sent", words: "250 kept" }),
    find: () => Promise.resolve(true),
  });
  await counted.send({ messageId: "<a@b.example>", recipient: "ines@b.example", bytes: new Uint8Array() });
  const port = await freePort();
  const store = {
    letters: { unfinished: () => Promise.resolve({ unknown: 1 }), isKnown: () => Promise.resolve(false) },
  };
  onTestFinished(await serveStatus(port, store, health, { load, reader: { busy: () => 2 }, clock }));
  return (await fetch(`http://127.0.0.1:${port}/metrics`)).text();
}

test("letters, readers and answers are told", async () => {
  const told = await metrics();
  for (const line of [
    'burin_oldest_letter_seconds{mailbox="orders"} 90',
    'burin_oldest_letter_seconds{mailbox="quiet"} 0',
    "burin_readers_busy 2",
    'burin_answers_total{outcome="sent"} 1',
    'burin_answers_total{outcome="refused"} 0',
  ])
    expect(told).toContain(`\n${line}\n`);
});

test("the sample of alerts asks for nothing that is not told", async () => {
  const told = await metrics();
  const { groups } = form.parse(parse(text));
  const asked = groups.flatMap(({ rules }) => rules.map(({ expr }) => expr));
  for (const expr of asked) {
    const names = expr.match(/burin_\w+(?:\{[^}]*\})?/g) ?? [];
    expect(names, expr).not.toEqual([]);
    for (const name of names) {
      const [, metric, labels = ""] = /^(\w+)(?:\{(.*)\})?$/.exec(name) ?? [];
      expect(told).toMatch(new RegExp(`^${metric}(?:\\{${labels || ".*"}\\})? `, "m"));
    }
  }
});

test("the sample of alerts has the form of rules", (context) => {
  const { error, status, stdout } = spawnSync("promtool", ["check", "rules", file], { encoding: "utf8" });
  context.skip(error !== undefined, "promtool is not installed; another test holds the file to the form");
  expect([status, stdout]).toEqual([0, expect.stringContaining("SUCCESS: 5 rules found")]);
});

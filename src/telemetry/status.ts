import { createServer } from "node:http";
import { Counter, collectDefaultMetrics, Gauge, Registry } from "prom-client";
import type { Clock } from "../ports/clock.ts";
import type { Reader } from "../ports/reader.ts";
import type { Store } from "../ports/store.ts";
import type { openHealth } from "./health.ts";
import type { Watched } from "./load.ts";

/**
 * Serves /healthz and /metrics on the loopback address. Healthy means that the record answers and all parts of the
 * worker do their work. Resolves to a function that closes it. Rejects when the port is taken.
 */
export async function serveStatus(
  port: number,
  store: { readonly letters: Pick<Store["letters"], "unfinished" | "isKnown"> },
  health?: ReturnType<typeof openHealth>,
  watched?: { readonly load: Watched; readonly reader: Pick<Reader, "busy">; readonly clock: Clock },
): Promise<() => Promise<void>> {
  const register = new Registry();
  collectDefaultMetrics({ register });
  const letters = new Gauge({
    name: "burin_letters",
    help: "Letters that are not done with, by where they stand",
    labelNames: ["state"],
    registers: [register],
    async collect() {
      const states = await store.letters.unfinished();
      // A state without letters is left out.
      letters.reset();
      for (const [state, count] of Object.entries(states)) letters.set({ state }, count);
    },
  });
  const healthy = new Gauge({
    name: "burin_healthy",
    help: "1 for a part that does its work, 0 for one that does not",
    labelNames: ["part"],
    registers: [register],
    collect() {
      const bad = new Set(health?.troubles().map(({ part }) => part));
      for (const part of health?.parts() ?? []) healthy.set({ part }, bad.has(part) ? 0 : 1);
    },
  });
  if (watched !== undefined) watch(watched, register);
  const server = createServer((request, response) => {
    const answer = async (): Promise<[number, string, string]> => {
      if (request.url === "/healthz") {
        await store.letters.isKnown("");
        const troubles = health?.troubles() ?? [];
        const lines = troubles.map(({ part, why }) => `${part}: ${why}\n`);
        return lines.length === 0 ? [200, "text/plain", "ok\n"] : [503, "text/plain", lines.join("")];
      }
      if (request.url === "/metrics") return [200, register.contentType, await register.metrics()];
      return [404, "text/plain", "try /healthz or /metrics\n"];
    };
    void answer()
      .catch((): [number, string, string] => [503, "text/plain", "the record does not answer\n"])
      .then(([code, type, text]) => response.writeHead(code, { "content-type": type }).end(text));
  });
  await new Promise<void>((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, "127.0.0.1", resolve);
  });
  return () =>
    new Promise((resolve) => {
      server.close(() => resolve());
      server.closeAllConnections();
    });
}

/** What there is to do, who is at work, and what became of answers. */
function watch(
  {
    load,
    reader,
    clock,
  }: { readonly load: Watched; readonly reader: Pick<Reader, "busy">; readonly clock: Clock },
  register: Registry,
): void {
  const registers = [register];
  const oldest = new Gauge({
    name: "burin_oldest_letter_seconds",
    help: "How long the oldest letter has been there that is not done with, by mailbox; 0 where there is none",
    labelNames: ["mailbox"],
    registers,
    collect() {
      for (const [mailbox, since] of load.oldest())
        oldest.set({ mailbox }, since === undefined ? 0 : (clock.now().getTime() - since.getTime()) / 1000);
    },
  });
  const readers: Gauge = new Gauge({
    name: "burin_readers_busy",
    help: "Reader processes that are at work",
    registers,
    collect() {
      readers.set(reader.busy?.() ?? 0);
    },
  });
  const answers = new Counter({
    name: "burin_answers_total",
    help: "Answers handed to the mail server since the worker was started, by what became of them",
    labelNames: ["outcome"],
    registers,
    collect() {
      answers.reset();
      for (const [outcome, count] of load.answers()) answers.inc({ outcome }, count);
    },
  });
}

import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Configuration, configure } from "../../src/commands/configuration.ts";
import { systemClock } from "../../src/commands/system-clock.ts";
import { type OpenDesk, openDesk } from "../../src/commands/wire.ts";
import { loadScenario } from "../../src/demo/load.ts";
import type { Sender } from "../../src/ports/sender.ts";
import { openLog } from "../../src/telemetry/log.ts";
import { ordersOf } from "../make/orders-of.ts";

/** Orders as letters, of so many buyers in turn. */
export async function lettersOf(count: number, buyers: number): Promise<Buffer[]> {
  const workshop = { ...(await configure()), ...(await loadScenario("fixtures")) };
  const letters: Buffer[] = [];
  for await (const bytes of ordersOf(count, buyers, workshop)) letters.push(Buffer.from(bytes));
  return letters;
}

/** The letter's Message-ID, by which its answer names it. */
export function nameOf(bytes: Uint8Array, field = "message-id"): string {
  const header =
    Buffer.from(bytes)
      .toString("latin1")
      .split(/\r?\n\r?\n/)[0] ?? "";
  return new RegExp(`^${field}:\\s*(<[^>]+>)`, "im").exec(header)?.[1] ?? "";
}

/** The desk of the demonstration with a record of its own and without limits, at work in this process. */
export async function deskFor(sender: Sender): Promise<OpenDesk & { readonly folder: string }> {
  const folder = mkdtempSync(join(tmpdir(), "burin-bench-"));
  const { settings, ...rest } = await configure();
  const configuration: Configuration = {
    ...rest,
    settings: { ...settings, record: join(folder, "record"), folders: [], mailboxes: [] },
  };
  const opened = await openDesk(configuration, { clock: systemClock, log: openLog("warn") });
  const mostAnswers = { toOne: 1e9, toAll: 1e9, toOneADay: 1e9, inThreadADay: 1e9 };
  const desk = { ...opened.desk, sender, rules: { ...opened.desk.rules, mostAnswers } };
  return { ...opened, desk, folder };
}

/** The value below which this share of them lies. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

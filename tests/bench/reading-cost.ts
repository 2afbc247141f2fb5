/**
 * What reading one sheet takes, in milliseconds by the clock and of the processor: ours, warm and in this process, with
 * its pages accounted for, beside tools that read the fields alone. The sheets are those of the demonstration and of
 * the tests, filled in by every quick program that is installed.
 *
 *     npx node tests/bench/reading-cost.ts
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { openPdf } from "../../src/reading/pdf/open-pdf.ts";
import { maker, trade } from "../make/config.ts";
import { type SampleSheet, sampleSheets } from "../make/odd-sheets/sheets.ts";
import { writers } from "../make/pages/honest.ts";
import { demoSheets } from "../make/pages/orders.ts";

/** Milliseconds by the clock and of the processor. */
type Taken = readonly [clock: number, processor: number];

/** Programs that take long to fill in a sheet, or of whose files nothing is read. */
const slow = /LibreOffice|Chromium/;
const shops = await Promise.all([trade.forms(), maker.forms()]);
const known = {
  editions: shops.flatMap(({ editions }) => editions),
  blanks: new Map(shops.flatMap(({ blanks }) => [...blanks])),
};
const sheets = [...(await demoSheets()).slice(0, 20), ...(await sampleSheets())].filter(({ edition }) =>
  known.blanks.has(edition),
);
const byProgram = new Map<string, Uint8Array[]>();
for (const { name, needs: [program = "true", ...ask] = [], fill } of writers) {
  if (slow.test(name)) continue;
  if (spawnSync(program, ask).status !== 0) console.log(`${name}: not installed`);
  else byProgram.set(name, await filledBy(fill));
}

/** A row that is longer than its field leaves some programs without a sheet. */
async function filledBy(fill: (sheets: readonly SampleSheet[]) => Promise<(Uint8Array | undefined)[]>) {
  const made: Uint8Array[] = [];
  for (const sheet of sheets)
    for (const one of await fill([sheet]).catch(() => [])) if (one !== undefined) made.push(one);
  return made;
}

async function read(bytes: Uint8Array): Promise<{ readonly taken: Taken; readonly isLookedAt: boolean }> {
  let isLookedAt = false;
  const [began, used] = [performance.now(), process.cpuUsage()];
  await openPdf(bytes, async () => void (isLookedAt = true), known);
  const { user, system } = process.cpuUsage(used);
  return { taken: [performance.now() - began, (user + system) / 1000], isLookedAt };
}

function line(name: string, taken: readonly Taken[], more = ""): string {
  const figures = ([0, 1] as const).flatMap((i) => {
    const sorted = taken.map((one) => one[i]).toSorted((a, b) => a - b);
    return [0.5, 0.95].map((part) => (sorted[Math.floor(sorted.length * part)] ?? 0).toFixed(1).padStart(8));
  });
  return `${name.padEnd(34)} ${String(taken.length).padStart(5)} ${figures.join(" ")} ${more}`;
}

const all = [...byProgram.values()].flat();
for (let round = 0; round < 2; round++) for (const bytes of all) await read(bytes);
console.log("milliseconds a sheet               files    clock      p95     cpu      p95");
const ours: Taken[] = [];
for (const [name, files] of byProgram) {
  const found = [];
  for (const bytes of files) found.push(await read(bytes));
  const taken = found.map((one) => one.taken);
  ours.push(...taken);
  console.log(line(`ours: ${name}`, taken, ` ${found.filter((one) => one.isLookedAt).length} looked at`));
}
console.log(line("ours", ours));
const folder = mkdtempSync(join(tmpdir(), "burin-reading-"));
all.forEach((bytes, i) => {
  writeFileSync(join(folder, `${String(i).padStart(4, "0")}.pdf`), bytes);
});
const { stdout, status, stderr } = spawnSync("/usr/bin/python3", ["tests/bench/peers/reading.py", folder], {
  encoding: "utf8",
  maxBuffer: 64_000_000,
});
rmSync(folder, { recursive: true });
if (status !== 0) throw new Error(`reading.py failed: ${stderr}`);
const others = JSON.parse(stdout) as Readonly<Record<string, readonly Taken[]>>;
for (const name of ["pikepdf", "qpdf --json FILE", "pdftk FILE dump_data_fields_utf8"])
  console.log(others[name] === undefined ? `${name}: not installed` : line(name, others[name]));

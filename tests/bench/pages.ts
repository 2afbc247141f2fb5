/**
 * What the comparison of pages costs and finds: sheets filled by as many programs as are installed, blank ones and ones
 * that we have filled in before, which must raise nothing; sheets that show other than they hold, in two halves, of
 * which only the first was looked at while limits were set; and processor time for reading a sheet with and without the
 * comparison. `pages.ts [honest|forged|cost]`
 */
import { spawnSync } from "node:child_process";
import { roomOf } from "../../src/drawing/blank/choices.ts";
import { judge } from "../../src/reading/judge.ts";
import { openPdf } from "../../src/reading/pdf/open-pdf.ts";
import { maker, trade } from "../make/config.ts";
import type { SampleSheet } from "../make/odd-sheets/sheets.ts";
import { sampleSheets } from "../make/odd-sheets/sheets.ts";
import { forgedReturns, honestReturns } from "../make/pages/copies.ts";
import { forgeries } from "../make/pages/forged.ts";
import { writers } from "../make/pages/honest.ts";
import { demoSheets } from "../make/pages/orders.ts";
import { prefilledSheets } from "../make/pages/prefilled.ts";
import { hasProgram } from "../make/program.ts";

const [only] = process.argv.slice(2);
/** The forms of both shops. */
const shops = [trade, maker];
const editions = shops.flatMap((shop) => shop.editions);
const drawn = await Promise.all(shops.map((shop) => shop.forms()));
const known = { editions, blanks: new Map(drawn.flatMap(({ blanks }) => [...blanks])) };
const samples = (await sampleSheets()).filter(({ edition }) => known.blanks.has(edition));

/** What is doubted in a file; "unseen" where the comparison itself failed. */
async function doubtsIn(bytes: Uint8Array): Promise<string[]> {
  const facts = await openPdf(bytes, undefined, known);
  const { file, sheet } = judge(
    facts,
    { id: "1/1", file: "a.pdf" },
    { catalogue: trade.catalogue, editions },
  );
  if (sheet === undefined) return [file.kind];
  // Files inside are opened, and named in the answer, as files of their own.
  const inside = facts.kind === "pdf" ? (facts.attached?.files ?? []) : [];
  return [
    ...sheet.doubts.map(({ what, place = "", kind = "" }) => `${what} ${kind}${place}`),
    ...sheet.unsure.map(({ place }) => `unsure ${place}`),
    ...inside.map(({ name }) => `file ${name}`),
  ];
}

/** A row longer than the form lets anybody type is no honest one: programs write one text and show another. */
function canBeTyped({ values, edition: name }: SampleSheet): boolean {
  return shops.every(({ catalogue, editions }) =>
    editions
      .filter((edition) => edition.name === name)
      .flatMap(({ form, fields }) => fields.map((field) => ({ form, ...field })))
      .every(
        ({ name, place, form }) =>
          String(values[name] ?? "").length <= (roomOf(place, form, catalogue) ?? Number.POSITIVE_INFINITY),
      ),
  );
}

async function honest(): Promise<void> {
  const fresh = [...samples, ...(await demoSheets())].filter(canBeTyped);
  let [files, raised] = [0, 0];
  for (const { name, needs = [], most, gives, fill } of writers) {
    const [program = "true", ...ask] = needs;
    if (spawnSync(program, ask).status !== 0) {
      console.log(`${name.padEnd(28)} not installed`);
      continue;
    }
    const step = Math.max(1, Math.floor(fresh.length / most));
    const sheets = fresh.filter((_, i) => i % step === 0).slice(0, most);
    const found: string[] = [];
    for (const bytes of await fill([
      ...sheets,
      ...(await prefilledSheets(sheets.filter((_, i) => i % 3 === 0))),
    ]))
      if (bytes !== undefined) found.push((await doubtsIn(bytes)).join(", "));
    const bad = found.filter((doubts) => doubts !== (gives ?? ""));
    files += found.length;
    raised += bad.length;
    console.log(
      `${name.padEnd(28)} ${found.length} files, ${gives === undefined ? "" : `all to be refused as ${gives}, `}${bad.length} raise something ${[...new Set(bad)].join(" | ")}`,
    );
  }
  for (const { how, needs, make } of honestReturns)
    for (const sample of needs === undefined || hasProgram(...needs) ? samples : []) {
      const doubts = await doubtsIn(await make(sample));
      files++;
      if (doubts.length > 0) raised++;
      if (doubts.length > 0) console.log(`${how}, ${sample.edition}: ${doubts.join(", ")}`);
    }
  console.log(`Honest: ${files} files, ${raised} raise something.`);
}

async function forged(): Promise<void> {
  for (const half of [0, 1]) {
    let [caught, all] = [0, 0];
    const missed: string[] = [];
    for (const [i, { how, make }] of [...forgeries, ...forgedReturns].entries()) {
      if (i % 2 !== half) continue;
      for (const sample of samples) {
        all++;
        const doubts = await doubtsIn(await make(sample));
        if (doubts.length > 0 && !doubts.some((one) => one.startsWith("unseen"))) caught++;
        else missed.push(`${how}, ${sample.edition}`);
      }
    }
    console.log(
      `${half === 0 ? "Looked at" : "Set aside"}: ${caught} of ${all} caught${missed.map((one) => `\n  missed: ${one}`).join("")}`,
    );
  }
}

async function cost(): Promise<void> {
  const sheets = [...samples, ...(await demoSheets())].slice(0, 60);
  const ways = { "by themselves": undefined, "compared with the blank": known } as const;
  for (const forms of Object.values(ways))
    for (const { filled } of sheets.slice(0, 20)) await openPdf(filled, undefined, forms);
  const spent = new Map<string, number>();
  for (let round = 0; round < 3; round++)
    for (const [way, forms] of Object.entries(ways)) {
      const [began, used] = [performance.now(), process.cpuUsage()];
      for (const { filled } of sheets) await openPdf(filled, undefined, forms);
      const { user, system } = process.cpuUsage(used);
      const [cpu, clock] = [
        (user + system) / 1000 / sheets.length,
        (performance.now() - began) / sheets.length,
      ];
      spent.set(way, (spent.get(way) ?? 0) + cpu);
      console.log(
        `pages looked at ${way}: ${cpu.toFixed(1)} ms of processor, ${clock.toFixed(1)} ms by the clock, a sheet`,
      );
    }
  const [before = 1, after = 1] = spent.values();
  console.log(`Compared / by themselves: ${(after / before).toFixed(2)} in processor time.`);
}

const parts = { honest, forged, cost };
for (const [name, part] of Object.entries(parts)) if (only === undefined || only === name) await part();

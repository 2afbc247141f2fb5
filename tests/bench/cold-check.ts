/**
 * What one command takes from its start to its end, in seconds by the clock and of the processor: `burin --help`,
 * `burin check` of one sheet filled in by our own and of one that must be looked at. Beside them stands what no check
 * by both readers can do without, each in a process of its own: Node.js itself, pdf.js and pdf-lib loaded and the
 * fields of the sheet read. Prints the median of each and what it is of the last two together.
 *
 *     npx node tests/bench/cold-check.ts [--times 7]
 */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { writers } from "../make/pages/honest.ts";
import { demoSheets } from "../make/pages/orders.ts";
import { type Timed, timed } from "./timed.ts";
import { told } from "./told.ts";

const { times } = told(import.meta.filename, { times: 7 });
const folder = mkdtempSync(join(tmpdir(), "burin-cold-"));
const [sheet] = await demoSheets();
const [viewed] =
  (await writers.find(({ name }) => name.startsWith("pdf-lib"))?.fill(sheet ? [sheet] : [])) ?? [];
if (sheet === undefined || viewed === undefined) throw new Error("no sheet to check");
const file = (name: string, bytes: Uint8Array): string => {
  writeFileSync(join(folder, name), bytes);
  return join(folder, name);
};
const ours = file("ours.pdf", sheet.filled);
const burin = resolve("src/burin.sh");
const pdf = resolve("src/reading/pdf");
/** A program that reads the fields of our sheet with one of the readers. */
const reading = (name: string, text: string): string[] => {
  const head = 'import { readFileSync } from "node:fs";';
  return [
    process.execPath,
    file(name, Buffer.from(`${head}\nconst bytes = readFileSync("${ours}");\n${text}`)),
  ];
};
const commands: readonly (readonly [name: string, command: readonly string[]])[] = [
  ["burin --help", [burin, "--help"]],
  ["burin check, filled by our own", [burin, "check", ours]],
  ["burin check, a picture needed", [burin, "check", file("viewed.pdf", viewed)]],
  ["Node.js alone", [process.execPath, "-e", "0"]],
  [
    "Node.js and pdf.js",
    reading(
      "pdfjs.mjs",
      `import { withPdf } from "${pdf}/pdf.ts";
       import { readFormByPdfjs } from "${pdf}/pdfjs-form.ts";
       await withPdf(bytes, readFormByPdfjs);`,
    ),
  ],
  [
    "Node.js and pdf-lib",
    reading(
      "walking.mjs",
      `import { openForWalking } from "${pdf}/walked-pdf.ts";
       import { readFormByWalking } from "${pdf}/walked-form.ts";
       readFormByWalking(await openForWalking(bytes));`,
    ),
  ],
];
const median = (taken: readonly Timed[], of: keyof Timed): number =>
  taken.map((one) => one[of]).toSorted((a, b) => a - b)[Math.floor(taken.length / 2)] ?? 0;
const rows = commands.map(([name, command]) => {
  // Once before it is measured. A sheet that is not to pass ends a check with 1.
  const taken = Array.from({ length: times + 1 }, () => timed(name, command, [0, 1])).slice(1);
  return { name, clock: median(taken, "clock"), processor: median(taken, "processor") };
});
const least = rows.slice(-2).reduce((sum, { processor }) => sum + processor, 0);
console.log("seconds                           clock  processor  of both readers");
for (const { name, clock, processor } of rows)
  console.log(
    `${name.padEnd(32)} ${clock.toFixed(2).padStart(6)} ${processor.toFixed(2).padStart(10)}  x ${(processor / least).toFixed(2)}`,
  );
rmSync(folder, { recursive: true });

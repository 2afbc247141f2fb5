/**
 * What a letter costs: so many good orders of ten buyers (about three sheets each) are checked and answered by
 * `burin work --once`, and by small scripts of the kind that a person would write, each with Debian's packages, on the
 * same letters in the same run; the third of them does most of what ours does. Prints letters a second, and processor
 * time a letter of all processes together.
 *
 *     npx node tests/bench/letter-cost.ts [--letters 60] [--peers]
 */
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { parseArgs } from "node:util";
import { stringify } from "yaml";
import { configure, projectFile } from "../../src/commands/configuration.ts";
import { loadScenario } from "../../src/demo/load.ts";
import { ordersOf } from "../make/orders-of.ts";
import { timed } from "./timed.ts";

const { values } = parseArgs({
  options: { letters: { type: "string", default: "60" }, peers: { type: "boolean", default: false } },
});
const count = Number(values.letters);
const folder = mkdtempSync(join(tmpdir(), "burin-cost-"));
mkdirSync(join(folder, "letters"));
const configuration = await configure();
const scenario = await loadScenario("fixtures");
let n = 0;
for await (const bytes of ordersOf(count, 10, { ...configuration, ...scenario }))
  writeFileSync(join(folder, "letters", `${String(++n).padStart(5, "0")}.eml`), bytes);
const settings = join(folder, "burin.yaml");
const { catalogue, editions, glossary = "glossary.txt" } = configuration.settings;
const ours = (path: string): string => projectFile("config", path);
writeFileSync(
  settings,
  stringify({
    ...configuration.settings,
    catalogue: ours(catalogue),
    editions: ours(editions),
    glossary: ours(glossary),
    record: "record",
    folders: ["letters"],
    // Letters over a limit would wait, and cost less.
    answers: {
      ...configuration.settings.answers,
      folder: "answers",
      most_per_hour: { to_one: 1e6, to_all: 1e6 },
      most_per_day: { to_one: 1e6, in_thread: 1e6 },
    },
    release: undefined,
  }),
);

const rows: [string, ReturnType<typeof timed>][] = [
  ["burin", timed("burin", [process.execPath, "src/main.ts", "work", "--once", "--settings", settings])],
];
const answers = readdirSync(join(folder, "answers")).filter((name) => name.endsWith(".eml")).length;
if (answers !== count) throw new Error(`${count} letters, and ${answers} answers`);
if (values.peers)
  for (const peer of ["p1", "p2", "p3"])
    rows.push([
      peer,
      timed(peer, [
        "/usr/bin/python3",
        resolve(`tests/bench/peers/${peer}.py`),
        join(folder, "letters"),
        join(folder, peer),
      ]),
    ]);
const [, first] = rows[0] ?? [];
for (const [name, { clock, processor }] of rows)
  console.log(
    `${name.padEnd(6)} ${(count / clock).toFixed(1).padStart(7)} letters/s  ${((1000 * processor) / count).toFixed(0).padStart(5)} ms of the processor a letter` +
      (first === undefined ? "" : `  x ${(first.processor / processor).toFixed(2)}`),
  );
rmSync(folder, { recursive: true });

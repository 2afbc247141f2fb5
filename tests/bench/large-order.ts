/**
 * What the next letter of an order costs once the order has so many sheets. Desks of one process get the same letters by
 * turns. With each the order is of another size. A letter brings a station more (a plate and three devices), or a
 * station once more with other legends. Prints the processor time of the main process and of its readers, the time by
 * the clock and the size of the answer, each as a median, and how many times the first size it is.
 *
 *     npx node tests/bench/large-order.ts [--sizes 40,400] [--letters 6]
 *
 * --sizes    sheets of the order, in fours
 * --letters  letters of each kind that are measured
 *
 * Takes about two minutes. Ends with 1 if a letter costs more than twice what it costs with the first size.
 */
import { rmSync } from "node:fs";
import { configure } from "../../src/commands/configuration.ts";
import { builder } from "../../src/demo/build.ts";
import { composeLetter } from "../../src/demo/letter.ts";
import { loadScenario } from "../../src/demo/load.ts";
import { takeDue, takeLetter } from "../../src/intake/take.ts";
import { deskFor, quantile } from "./desk-for.ts";
import { processorOfChildren } from "./processes.ts";
import { told } from "./told.ts";

const { sizes, letters: count } = told(import.meta.filename, { sizes: "40,400", letters: 6 });

/** Sheets of a station, and stations in each letter that fills the order. */
const sheetsEach = 4;
const stationsALetter = 10;

const words = ["READING", "FOYER", "EVENING", "PRESENT", "DINING", "GALLERY", "STAIR", "TERRACE", "KITCHEN"];
const build = builder({ ...(await configure()), ...(await loadScenario("fixtures")) });

/** A station as files: a plate of three gangs and its devices. `turn` chooses its legends. */
async function station(n: number, turn: number): Promise<{ file: string; bytes: Uint8Array }[]> {
  const mark = `S-${1001 + 7 * n}`;
  const word = (k: number): string => words[(n + k + turn) % words.length] ?? "";
  const fill = {
    "contact.email": "ida@marlowe.example",
    "bill.name": "Marlowe Electric",
    project: "Tern Point",
    order: "C-4417",
    mark,
    finish: "Barley",
    lettering: "Sepia",
    gangs: "3",
  };
  const like = { like: "fenwright", plain: [] };
  const gangs = [1, 2, 3];
  const files = [
    {
      ...like,
      file: `${mark} plate.pdf`,
      edition: "plate-4",
      fill,
      legends: Object.fromEntries(gangs.map((k) => [`${k}`, [word(k)]])),
    },
    ...gangs.map((k) => ({
      ...like,
      file: `${mark} ${k}.pdf`,
      fill: { ...fill, layout: "TRIO", standing: "in-plate", position: `${k}` },
      legends: { "1": [word(k)], "2": ["DIM"], "3": ["OFF"] },
    })),
  ];
  return Promise.all(files.map(async (one) => ({ file: one.file, bytes: await build(one) })));
}

let lettersMade = 0;

async function letterOf(stations: readonly number[], turn = 0): Promise<Uint8Array> {
  const attachments = (await Promise.all(stations.map((n) => station(n, turn)))).flat();
  return composeLetter(
    {
      name: `letter-${++lettersMade}`,
      from: "Ida Marlowe <ida@marlowe.example>",
      date: new Date(Date.parse("2026-11-09T15:00:00Z") + 60_000 * lettersMade).toISOString(),
      subject: "Order C-4417",
      text: "Please find our sheets attached.\n\nIda",
      logo: false,
    },
    { to: "orders@quillgate.example", attachments },
  );
}

/** What a letter costs, in milliseconds and, for its answer, in thousands of bytes. */
const figures = ["main", "readers", "clock", "answer"] as const;
type Cost = Readonly<Record<(typeof figures)[number], number>>;

/** A desk with an order of so many sheets, and what letters cost there. */
async function deskWith(size: number) {
  let answer = 0;
  const { desk, close, folder } = await deskFor({
    send: ({ bytes }) => {
      answer = bytes.length / 1000;
      return Promise.resolve({ kind: "sent", words: "250 told" });
    },
    find: () => Promise.resolve(false),
  });
  const verdicts = new Set<string>();
  const take = async (bytes: Uint8Array): Promise<Cost> => {
    const [began, before, readers] = [
      performance.now(),
      process.cpuUsage(),
      processorOfChildren(process.pid),
    ];
    const { letter } = await takeLetter(desk, bytes, new Date());
    while (await takeDue(desk));
    const { user, system } = process.cpuUsage(before);
    const cost = {
      main: (user + system) / 1000,
      readers: processorOfChildren(process.pid) - readers,
      clock: performance.now() - began,
      answer,
    };
    verdicts.add((await desk.store.letters.read(letter)).verdict ?? "none");
    return cost;
  };
  const stations = Array.from({ length: size / sheetsEach }, (_, n) => n);
  for (let at = 0; at < stations.length; at += stationsALetter)
    await take(await letterOf(stations.slice(at, at + stationsALetter)));
  verdicts.clear();
  const end = async (): Promise<void> => {
    await close();
    rmSync(folder, { recursive: true });
  };
  return { size, take, verdicts, end };
}

const desks = [];
for (const size of sizes.split(",").map(Number)) {
  console.error(`An order of ${size} sheets comes in …`);
  desks.push(await deskWith(size));
}
const largest = Math.max(...desks.map(({ size }) => size)) / sheetsEach;
let worst = 1;
for (const kind of ["a station more", "a station changed"]) {
  const costs = desks.map((): Cost[] => []);
  // The first letter of a kind is not counted: it reads what is read once.
  for (let round = 0; round <= count; round++) {
    const letter = await (kind === "a station more" ? letterOf([largest + round]) : letterOf([round], 1));
    console.error(`${kind}: letter ${round} of ${count}`);
    for (const [i, { take }] of desks.entries()) {
      const cost = await take(letter);
      if (round > 0) costs[i]?.push(cost);
    }
  }
  const medianOf = (i: number, figure: keyof Cost): number =>
    quantile(costs[i]?.map((cost) => cost[figure]) ?? [], 0.5);
  for (const [i, { size, verdicts }] of desks.entries()) {
    const shown = figures.map((figure) => {
      const median = medianOf(i, figure);
      const unit = figure === "answer" ? "kB" : "ms";
      return `${figure} ${median.toFixed(0).padStart(6)} ${unit} x ${(median / medianOf(0, figure)).toFixed(2)}`;
    });
    const processor = (n: number): number => medianOf(n, "main") + medianOf(n, "readers");
    worst = Math.max(worst, processor(i) / processor(0));
    console.log(
      `${kind.padEnd(17)} ${String(size).padStart(5)} sheets  ${shown.join("  ")}  ${[...verdicts].join("+")}`,
    );
    verdicts.clear();
  }
}
for (const { end } of desks) await end();
process.exitCode = worst <= 2 ? 0 : 1;

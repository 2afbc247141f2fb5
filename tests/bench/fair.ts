/**
 * How long answers take in one mailbox while another is flooded. First letters come to a quiet desk one by one, then as
 * many while a flood of other buyers' letters lies in a second mailbox. Prints both, and how memory grew with the flood.
 *
 *     npx node tests/bench/fair.ts [--letters 300] [--one] [--probes 30] [--leave]
 *
 * With --one all of the flood comes from one buyer, else it comes from ten for each 300 letters. With --leave the flood
 * is left alone once the letters beside it are answered; ten thousand letters would take an hour. Ends with 1 if the
 * answers of the flooded desk take more than twice as long.
 */
import { rmSync } from "node:fs";
import { setTimeout as sleep } from "node:timers/promises";
import { parseArgs } from "node:util";
import { runWorker } from "../../src/worker/worker.ts";
import { deskFor, lettersOf, quantile } from "./desk-for.ts";
import { openMailboxOf, tellingSender } from "./mailbox-of.ts";

const { values } = parseArgs({
  options: {
    letters: { type: "string", default: "300" },
    one: { type: "boolean", default: false },
    probes: { type: "string", default: "30" },
    leave: { type: "boolean", default: false },
  },
});
const [count, probes] = [Number(values.letters), Number(values.probes)];
// The last ones come one by one. Their buyers are none of the flood's.
const quietly = await lettersOf(2 * probes + 5, 7);
const most = 300;
const drops = await lettersOf(Math.min(count, most), values.one ? 1 : 10);
const flood = Array.from({ length: count }, (_, i) => {
  const round = values.one ? 0 : Math.floor(i / most);
  const letter = (drops[i % most] ?? Buffer.of())
    .toString("latin1")
    .replaceAll(/@buyer(?=\d+\.example)/g, `@flood${round}-`)
    .replace(/^(message-id:\s*<)/im, `$1${i}.`);
  return Buffer.from(letter, "latin1");
});
const sender = tellingSender();
const { desk, close, folder } = await deskFor(sender);
const [orders, other] = [openMailboxOf("orders"), openMailboxOf("other")];
const stop = new AbortController();
const working = runWorker(desk, [orders, other], { once: false, signal: stop.signal });

/** Seconds from a letter's delivery to its answer, of each. */
async function probe(letters: readonly Uint8Array[]): Promise<number[]> {
  const taken: number[] = [];
  for (const letter of letters) {
    const began = performance.now();
    other.deliver(letter);
    await sender.answered(letter);
    taken.push((performance.now() - began) / 1000);
    await sleep(200);
  }
  return taken;
}

const megabytes = (): number => process.memoryUsage().rss / 1e6;
const says = (name: string, all: readonly number[]): void =>
  console.log(
    `${name.padEnd(24)} median ${quantile(all, 0.5).toFixed(2)} s, 95 of 100 within ${quantile(all, 0.95).toFixed(2)} s`,
  );

await probe(quietly.slice(0, 5)); // what is read once is read now
const usual = await probe(quietly.slice(5, 5 + probes));
says("usual", usual);
for (const letter of flood) orders.deliver(letter);
while (sender.count() < probes + 15) await sleep(100);
const before = { memory: megabytes(), answers: sender.count() };
const flooded = await probe(quietly.slice(5 + probes));
const isFlooded = sender.count() < count + 2 * probes;
says("beside the flood", flooded);
if (!isFlooded) console.log("The flood ended before the letters beside it: take more --letters.");
if (!values.leave) await Promise.all(flood.map((letter) => sender.answered(letter)));
const grown = megabytes() - before.memory;
console.log(
  `memory ${before.memory.toFixed(0)} MB, ${((1000 * grown) / (sender.count() - before.answers)).toFixed(0)} kB more an answer`,
);
const times = quantile(flooded, 0.5) / quantile(usual, 0.5);
console.log(`x ${times.toFixed(2)}`);
stop.abort();
await working;
await close();
rmSync(folder, { recursive: true });
process.exitCode = times <= 2 && isFlooded ? 0 : 1;

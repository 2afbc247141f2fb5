/**
 * How long a letter takes from its delivery to its answer, on real servers: Postfix takes it in by SMTP, Dovecot keeps
 * the mailbox, a worker in a process of its own reads it by IMAP and sends by SMTP. The clock of a letter starts when it
 * is handed to Postfix, and stops when the answer lies in the buyer's inbox. Each letter is of another buyer, with an
 * order of about three sheets. Letters come at each rate for so many seconds, each rate to servers, a worker and a
 * record of its own, after one letter that is not counted. Prints seconds by the clock, how many letters had no answer
 * at the end, and the processor time of the worker with its readers.
 *
 *     npx node tests/bench/delivery.ts [--rates 1,5,20] [--seconds 15] [--patience 60]
 *
 * --rates     letters a second
 * --seconds   how long letters come at each rate
 * --patience  how many seconds more there are for answers when the last letter has come
 *
 * As root, on Debian. Takes about four minutes.
 */
import { setTimeout as sleep } from "node:timers/promises";
import { fieldOf, setUp, startWorker } from "../real/desk/burin.ts";
import { alice, desk, startRig } from "../real/rig/rig.ts";
import { lettersOf, nameOf, quantile } from "./desk-for.ts";
import { processorOf } from "./processes.ts";
import { told } from "./told.ts";

const { rates, seconds, patience } = told(import.meta.filename, {
  rates: "1,5,20",
  seconds: 15,
  patience: 60,
});
const all = rates.split(",").map(Number);
const most = Math.ceil(Math.max(...all) * seconds) + 1;
console.error(`${most} letters are made …`);
const letters = await lettersOf(most, most);

/** What became of letters that came at one rate. */
interface Delivered {
  readonly taken: readonly number[];
  readonly unanswered: number;
  /** Milliseconds of the processor a letter that was answered. */
  readonly processor: number;
  /** Letters answered a second, from the first delivery to the last answer. */
  readonly pace: number;
}

async function deliverAt(rate: number): Promise<Delivered> {
  const rig = await startRig();
  if ("why" in rig) throw new Error(rig.why);
  const began = new Map<string, number>();
  const taken: number[] = [];
  let last = 0;
  await rig.watch(alice, (answer) => {
    const name = fieldOf(answer, "In-Reply-To") ?? "";
    const start = began.get(name);
    if (start === undefined) return;
    began.delete(name);
    last = performance.now();
    taken.push((last - start) / 1000);
  });
  const worker = startWorker(setUp(rig, { trade: "config" }));
  try {
    const send = (letter: Uint8Array): Promise<void> => {
      began.set(nameOf(letter), performance.now());
      return rig.deliver(`ida@buyer${began.size}.example`, desk, letter);
    };
    const isQuiet = async (until: number): Promise<void> => {
      while (began.size > 0 && performance.now() < until) await sleep(50);
    };
    const [first = new Uint8Array(), ...rest] = letters;
    await send(first);
    await isQuiet(performance.now() + 180_000);
    if (began.size > 0) throw new Error(`the worker answers nothing:\n${worker.log()}`);
    taken.length = 0;
    const before = processorOf(worker.pid);
    const start = performance.now();
    const sending: Promise<void>[] = [];
    for (const [n, letter] of rest.slice(0, Math.round(rate * seconds)).entries()) {
      await sleep(Math.max(0, start + (1000 * n) / rate - performance.now()));
      sending.push(send(letter));
    }
    await Promise.all(sending);
    await isQuiet(performance.now() + patience * 1000);
    return {
      taken,
      unanswered: began.size,
      processor: (processorOf(worker.pid) - before) / taken.length,
      pace: (1000 * taken.length) / (last - start),
    };
  } finally {
    await worker.end("SIGKILL");
    await rig.stop();
  }
}

for (const rate of all) {
  console.error(`${rate} letters a second for ${seconds} s …`);
  const { taken, unanswered, processor, pace } = await deliverAt(rate);
  const [median, p95, p99] = [0.5, 0.95, 0.99].map((share) => quantile(taken, share).toFixed(2));
  console.log(
    `${String(rate).padStart(4)} letters/s: median ${median} s, 95 % within ${p95} s, 99 % within ${p99} s, ` +
      `${unanswered} of ${taken.length + unanswered} unanswered, ${pace.toFixed(1)} answers/s, ` +
      `${processor.toFixed(0)} ms of the worker and its readers a letter`,
  );
}

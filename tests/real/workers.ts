import { connect, createServer, type Socket } from "node:net";
import { setTimeout as sleep } from "node:timers/promises";
import { parseArgs } from "node:util";
import { Client } from "pg";
import { letterKey } from "../../src/reading/letter/letter-key.ts";
import { noPostgres, startPostgres } from "../make/postgres.ts";
import { setUp, startWorker, type Worker } from "./desk/burin.ts";
import { answersIn } from "./desk/count.ts";
import { filledSheet, letterBytes } from "./desk/letters.ts";
import { startNetwork } from "./network.ts";
import { desk, startRig } from "./rig/rig.ts";

// Several workers over one PostgreSQL and one mailbox, while letters come in: one of them is killed with -9 every few
// seconds and another started, the server is restarted, as by a power cut too, and one worker's way to it is cut for a
// while: the server runs in a network of its own, with a cable that only this worker uses. Where the machine lets us
// make no network, a way that is silent stands for it. Counts what became of the letters:
//   npx node tests/real/workers.ts [--workers 4] [--letters 120] [--every 0.5]
// Ends with 1 if a letter is unanswered, lost or answered twice.

const { values } = parseArgs({
  options: {
    workers: { type: "string", default: "4" },
    letters: { type: "string", default: "120" },
    /** Seconds between two letters. */
    every: { type: "string", default: "0.5" },
  },
});
const [count, letters, every] = [Number(values.workers), Number(values.letters), Number(values.every)];

/** Seconds between two kills; between two restarts of the server; and how long a way is cut. */
const killEvery = 4;
const restartEvery = 25;
const cutFor = 15;

/** Seconds for what is left when the last letter has come. A letter over which workers died rests for a quarter of an hour. */
const patience = 1200;

const senders = ["alice@brightwire.example", "bob@fernhill.example", "dana@oakmoor.example"];

/** A way to the record that can be cut. */
interface Way {
  readonly record: string;
  readonly cut: (is: boolean) => void;
  readonly end: () => void;
}

/** A way through this process that can be silent: connections stay, and nothing passes. */
async function silentWay(record: string): Promise<Way> {
  const open = new Set<Socket>();
  let isSilent = false;
  const server = createServer((near) => {
    const far = connect(Number(new URL(record).port), "127.0.0.1");
    for (const [one, other] of [
      [near, far],
      [far, near],
    ] as const) {
      open.add(one);
      if (isSilent) one.pause();
      one.on("data", (data) => other.write(data));
      one.on("error", () => other.destroy());
      one.on("close", () => {
        open.delete(one);
        other.destroy();
      });
    }
  });
  await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("no port");
  return {
    record: record.replace(/:\d+\//, `:${address.port}/`),
    cut(is) {
      isSilent = is;
      for (const socket of open)
        if (is) socket.pause();
        else socket.resume();
    },
    end() {
      server.close();
      for (const socket of open) socket.destroy();
    },
  };
}

if (noPostgres !== undefined) throw new Error(noPostgres);
const rig = await startRig();
if ("why" in rig) throw new Error(rig.why);
const network = startNetwork();
const server = await startPostgres(
  network && { through: network.through, addresses: [network.whole, network.apart] },
);
const record = await server.database();
const way: Way = network
  ? { ...network, record: record.replace(network.whole, network.apart) }
  : await silentWay(record);
const client = (): Client => new Client(record);
try {
  const answers = { grace_seconds: 30, lease_seconds: 10, patience_seconds: 5 };
  const direct = setUp(rig, { record, answers });
  const apart = setUp(rig, { record: way.record, answers });
  // One of them goes by the way that can be cut.
  const start = (i: number): Worker => startWorker(i === 0 ? apart : direct);
  const workers = Array.from({ length: count }, (_, i) => start(i));
  const keys = new Map<string, string>();
  let [kills, restarts, cuts] = [0, 0, 0];
  const over = new AbortController();
  const trouble = async (): Promise<void> => {
    for (let second = 1; !over.signal.aborted; second++) {
      await sleep(1000);
      if (second % killEvery === 0 && count > 1) {
        const i = Math.floor(Math.random() * count);
        await workers[i]?.end("SIGKILL");
        workers[i] = start(i);
        kills++;
      }
      if (second % restartEvery === 0) {
        server.restart(restarts++ % 2 === 0 ? "fast" : "immediate");
      }
      if (second % 30 === 10) {
        way.cut(true);
        cuts++;
      }
      if (second % 30 === 10 + cutFor) way.cut(false);
    }
    way.cut(false);
  };
  const troubled = trouble();
  for (let n = 0; n < letters; n++) {
    const from = senders[n % senders.length] ?? "";
    const name = `letter-${n}`;
    const sheet = n % 3 === 0 ? { sheet: await filledSheet(`BW-${n}`) } : {};
    const bytes = await letterBytes(name, { from, ...sheet });
    await rig.deliver(from, desk, bytes);
    keys.set(`<${name}@${from.split("@")[1]}>`, letterKey(bytes));
    await sleep(every * 1000);
  }
  over.abort();
  await troubled;
  const states = async (): Promise<Record<string, number>> => {
    const one = client();
    await one.connect();
    const { rows } = await one.query<{ state: string; n: string }>(
      "select state, count(*) as n from letters group by state",
    );
    await one.end();
    return Object.fromEntries(rows.map(({ state, n }) => [state, Number(n)]));
  };
  const done = (now: Record<string, number>): number => (now["sent"] ?? 0) + (now["held"] ?? 0);
  for (const end = Date.now() + patience * 1000; Date.now() < end; await sleep(1000))
    if (done(await states()) >= letters) break;
  const now = await states();
  for (const worker of workers) await worker.end("SIGTERM");
  await sleep(12_000);
  const copies = new Map<string, number>();
  for (const address of senders)
    for (const [to, ids] of await answersIn(rig, address)) copies.set(to, new Set(ids).size);
  const one = client();
  await one.connect();
  const { rows } = await one.query<{ key: string; state: string }>("select key, state from letters");
  await one.end();
  const stateOf = new Map(rows.map((row) => [row.key, row.state]));
  const sent = [...keys];
  const lost = sent.filter(([, key]) => !stateOf.has(key)).length;
  const twice = sent.filter(([id]) => (copies.get(id) ?? 0) > 1).length;
  const unanswered = sent.filter(([id, key]) => !copies.has(id) && stateOf.get(key) !== "held").length;
  console.log(
    `${count} workers, ${letters} letters; ${kills} kills, ${restarts} restarts of the server, ${cuts} cuts of ${network ? "a cable" : "a way through this process"}: ` +
      `unanswered ${unanswered}, lost ${lost}, answered twice ${twice}; ${JSON.stringify(now)}`,
  );
  if (unanswered + lost + twice > 0) process.exitCode = 1;
} finally {
  server.stop();
  way.end();
  await rig.stop();
}

import { setTimeout as sleep } from "node:timers/promises";
import { parseArgs } from "node:util";
import { letterKey } from "../../src/reading/letter/letter-key.ts";
import { type Setup, setUp, startWorker } from "./desk/burin.ts";
import { answersIn, type Count, claimsOf, count, finishedIn, inHandOf, isQuiet } from "./desk/count.ts";
import { filledSheet, letterBytes } from "./desk/letters.ts";
import { alice, desk, type Rig, startRig } from "./rig/rig.ts";

// Kills the worker with -9 over a stream of letters, again and again, and counts what became of them:
//   npx node tests/real/kill.ts [kills] [--seed N] [--policy witness|none|both]
// A tenth of the sends lose their connection just before or just after the final dot, and the IMAP server is
// killed as well now and then. The seed decides what happens, not how fast the machine is when it happens.
// Ends with 1 if a letter is unanswered, lost or answered twice.

const { values, positionals } = parseArgs({
  options: {
    seed: { type: "string", default: String(Date.now() % 1_000_000) },
    policy: { type: "string", default: "both" },
  },
  allowPositionals: true,
});
const kills = Number(positionals[0] ?? 500);

/** Share of the sends that are cut before the final dot, and of those cut after it. */
const cut = 0.05;

/** Kills of the worker between two of the IMAP server, and how long that stays down, in milliseconds. */
const imapEvery = 40;
const imapDownMs = 1500;

/** Milliseconds between two letters. */
const letterEvery = 1500;

/**
 * How long a worker that is left alone may finish nothing before it is given up, in milliseconds. A letter over which
 * workers have died rests for a quarter of an hour.
 */
const idleMs = 1_200_000;

/**
 * Shares of the kills that come while the worker starts, and when it has been at work for long enough to take up what
 * an earlier one left; and how long it works at most from its first letter on, otherwise and then, in milliseconds.
 */
const whileStarting = 0.2;
const lasting = 0.2;
const longestWork = 3000;
const lastingWork = 8000;

/**
 * In seconds. The rig's queue tries again after 2 to 10 s and is run every 5 s, so that with the server's time down
 * a copy lags less than 20 s.
 */
const grace = 30;
const lease = 5;

/** Numbers between 0 and 1 that follow from a seed (mulberry32, public domain, T. Ettinger). */
function chanceOf(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

async function run(witness: boolean): Promise<Count> {
  const rig = await startRig();
  if ("why" in rig) throw new Error(rig.why);
  try {
    const chance = chanceOf(Number(values.seed));
    const proxy = await rig.proxy("smtps");
    let [before, after] = [0, 0];
    const happens = (tell: () => void) => () => {
      if (chance() >= cut) return false;
      tell();
      return true;
    };
    proxy.faults.push(
      { from: "client", at: /\r\n\.\r\n$/, does: "drop", times: Infinity, happens: happens(() => before++) },
      {
        from: "server",
        at: /250 2\.0\.0 Ok: queued/,
        does: "reset",
        times: Infinity,
        happens: happens(() => after++),
      },
    );
    const answers = { grace_seconds: grace, lease_seconds: lease, patience_seconds: 5 };
    const setup = setUp(rig, { smtps: proxy.port, witness, answers });
    const began = Date.now();
    const sent: Sent = { keys: new Map(), over: false };
    const stream = sendLetters(rig, sent);
    const inHand = await killAll(rig, setup, chance);
    sent.over = true;
    await stream;
    console.log(
      `${kills} kills in ${Math.round((Date.now() - began) / 60_000)} min over ${sent.keys.size} letters; in hand when ` +
        `the worker was killed: ${[...inHand].map(([state, n]) => `${n} ${state}`).join(", ")}; ` +
        `sends cut before the dot ${before}, after it ${after}`,
    );
    // What comes now has only to be finished.
    proxy.faults.length = 0;
    const last = startWorker(setup);
    for (let [done, end] = [0, 0]; !isQuiet(setup, sent.keys.size); await sleep(1000)) {
      const now = finishedIn(setup);
      if (now > done || end === 0) [done, end] = [now, Date.now() + idleMs];
      if (Date.now() > end) break;
    }
    await last.end("SIGTERM");
    // the mail server's own queue
    await sleep(20_000);
    return count(setup, sent.keys, await answersIn(rig, alice));
  } finally {
    await rig.stop();
  }
}

/** Name → content key of every letter sent so far. */
interface Sent {
  readonly keys: Map<string, string>;
  over: boolean;
}

async function sendLetters(rig: Rig, sent: Sent): Promise<void> {
  for (let n = 1; !sent.over; n++) {
    const name = `letter-${n}`;
    const bytes = await letterBytes(name, n % 10 === 0 ? { sheet: await filledSheet(`BW-${n}`) } : {});
    const deliver = () =>
      rig.deliver(alice, desk, bytes).then(
        () => true,
        () => false,
      );
    // as any mail server would: again until it is taken
    while (!(await deliver())) await sleep(letterEvery);
    sent.keys.set(name, letterKey(bytes));
    await sleep(letterEvery);
  }
}

/** How many letters stood where when the worker that had them was killed. */
async function killAll(rig: Rig, setup: Setup, chance: () => number): Promise<Map<string, number>> {
  const seen = new Set<string>();
  const counts = new Map<string, number>();
  let startMs = 2000;
  let imap: Promise<void> = Promise.resolve();
  for (let n = 1; n <= kills; n++) {
    if (n % imapEvery === 0) imap = imap.then(() => killImap(rig, chance() * longestWork));
    const worker = startWorker(setup);
    const kind = chance();
    if (kind < whileStarting) await sleep(chance() * startMs);
    else {
      startMs = await firstClaim(setup);
      await sleep(chance() * (kind < whileStarting + lasting ? lastingWork : longestWork));
    }
    await worker.end("SIGKILL");
    for (const { key, state } of inHandOf(setup)) {
      if (!seen.has(key)) counts.set(state, (counts.get(state) ?? 0) + 1);
      seen.add(key);
    }
    if (n % 50 === 0) console.log(`  ${n} kills`);
  }
  await imap;
  return counts;
}

async function killImap(rig: Rig, afterMs: number): Promise<void> {
  await sleep(afterMs);
  await rig.kill9Imap();
  await sleep(imapDownMs);
  await rig.startImap();
}

/** Waits until a worker takes a letter up, 30 s at most, and tells how long that took, in milliseconds. */
async function firstClaim(setup: Setup): Promise<number> {
  const start = performance.now();
  const before = claimsOf(setup);
  while (claimsOf(setup) === before && performance.now() - start < 30_000) await sleep(25);
  return performance.now() - start;
}

console.log(`seed ${values.seed}, grace ${grace} s, lease ${lease} s`);
for (const policy of values.policy === "both" ? ["witness", "none"] : [values.policy]) {
  console.log(policy === "witness" ? "with a witness copy:" : "without a witness copy:");
  const { unanswered, lost, twice, ...more } = await run(policy === "witness");
  console.log(
    `unanswered ${unanswered}, lost ${lost}, answered twice ${twice}; answered ${more.answered}, waiting for a person ` +
      `${more.person} (answered all the same ${more.personAnswered}), delivered twice by the mail server itself ${more.redelivered}`,
  );
  if (unanswered + lost + twice > 0) process.exitCode = 1;
}

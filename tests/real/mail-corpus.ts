import { mkdtempSync } from "node:fs";
import { rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Desk } from "../../src/intake/desk.ts";
import { takeLetter } from "../../src/intake/take.ts";
import { headerLines } from "../../src/reading/letter/header-lines.ts";
import { openPool } from "../../src/sandbox/pool.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import { catalogue, editions } from "../make/config.ts";
import { lettersIn } from "./letters-in.ts";
import { missedOf } from "./second-parser.ts";

/**
 * Takes every letter of a corpus to its end, and asks a second parser whether a file was missed:
 *
 *     BURIN_MAIL_CORPUS=folder npx node tests/real/mail-corpus.ts
 *
 * A folder of .eml files and mboxes, at any depth, or one mbox. Ends with 1 when a letter has no end, or when
 * a file is missed.
 */
const corpus = process.env["BURIN_MAIL_CORPUS"];
if (corpus === undefined) throw new Error("BURIN_MAIL_CORPUS is to name a folder of letters");

const log = { info: () => undefined, warn: () => undefined };
const folder = mkdtempSync(join(tmpdir(), "burin-"));
const desk: Desk = {
  store: await openStore(openSqlite(":memory:"), openBlobs(folder)),
  reader: openPool({ log }),
  // Nothing leaves the house.
  sender: { send: () => Promise.resolve({ kind: "sent", words: "kept" }), find: () => Promise.resolve(true) },
  clock: { now: () => new Date() },
  log,
  chance: () => 0.5,
  catalogue,
  editions,
  timeZone: "Etc/UTC",
  from: { name: "Order desk", address: "orders@quillgate.example" },
  secret: "a secret of this trial",
  rules: {
    ours: ["orders@quillgate.example"],
    returnPathWritten: false,
    receivedLines: 1,
    sharedDomains: [],
    known: [],
    staff: [],
    managing: [],
    mostAnswers: {
      toOne: Number.POSITIVE_INFINITY,
      toAll: Number.POSITIVE_INFINITY,
      toOneADay: Number.POSITIVE_INFINITY,
      inThreadADay: Number.POSITIVE_INFINITY,
    },
    lease: 600,
    patience: 600,
    grace: 120,
  },
};

/** Letters of a corpus were written to others; each is taken as if its receivers were this desk. */
function deskFor(bytes: Uint8Array): Desk {
  const receivers = headerLines(bytes).filter(({ name }) => name === "to" || name === "cc");
  const ours = receivers.flatMap(
    ({ value }) => value.toLowerCase().match(/[^\s<>,;:"]+@[^\s<>,;:"]+/g) ?? [],
  );
  return { ...desk, rules: { ...desk.rules, ours } };
}

const ends = new Map<string, number>();
const kinds = new Map<string, number>();
const count = (counts: Map<string, number>, key: string): void =>
  void counts.set(key, (counts.get(key) ?? 0) + 1);
const faults: string[] = [];
let [letters, again, slowest] = [0, 0, 0];

for (const { name, bytes } of lettersIn(corpus)) {
  const began = performance.now();
  const taken = await takeLetter(deskFor(bytes), bytes, new Date(0));
  slowest = Math.max(slowest, performance.now() - began);
  letters++;
  if (taken.again) {
    again++;
    continue;
  }
  const { state, why, attachments } = await desk.store.letters.read(taken.letter);
  const reasoned = state === "sent" || ((state === "held" || state === "silent") && (why ?? "") !== "");
  if (!reasoned || why?.startsWith("the program failed"))
    faults.push(`${name}: ends ${state}, ${why ?? "without a reason"}`);
  count(ends, state === "sent" ? "answered" : `${state}: ${why}`);
  for (const { kind } of attachments) count(kinds, kind);
  for (const missed of await missedOf(bytes)) faults.push(`${name}: missed ${missed}`);
}
await desk.reader.close();
await desk.store.close();
await rm(folder, { recursive: true });

console.log(`${letters} letters (${again} of them twice), the slowest ${Math.round(slowest)} ms`);
for (const [what, counts] of [
  ["letters", ends],
  ["attachments", kinds],
] as const)
  for (const [key, n] of [...counts].toSorted((a, b) => b[1] - a[1])) console.log(`${what} ${n} ${key}`);
console.log(faults.length === 0 ? "no letter without an end, no file missed" : faults.join("\n"));
process.exitCode = faults.length === 0 ? 0 : 1;

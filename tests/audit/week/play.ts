import { mkdirSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { takeNote } from "../../../src/intake/check-note.ts";
import type { Desk } from "../../../src/intake/desk.ts";
import { releaseOrder } from "../../../src/intake/release.ts";
import { takeDue, takeLetter } from "../../../src/intake/take.ts";
import { openBlobs } from "../../../src/store/blobs.ts";
import { openSqlite } from "../../../src/store/sqlite.ts";
import { openStore } from "../../../src/store/store.ts";
import { temporaryDesk } from "../../make/desk.ts";
import { letterOf } from "../../make/thread.ts";
import type { Step } from "./letters.ts";

/** A desk with its record in a folder, a clock that is set, and letters by the names that a script gives them. */
export interface Played {
  readonly folder: string;
  /** Settings with which `burin` reads its record. */
  readonly settings: string;
  readonly play: (steps: readonly Step[]) => Promise<void>;
  readonly numberOf: (letter: string) => number;
  readonly close: () => Promise<void>;
}

export async function openWeek(): Promise<Played> {
  const folder = mkdtempSync(join(tmpdir(), "burin-week-"));
  mkdirSync(join(folder, "record"));
  const store = await openStore(
    openSqlite(join(folder, "record/record.sqlite")),
    openBlobs(join(folder, "record/blobs")),
  );
  let now = new Date(0);
  const made = await temporaryDesk({ store, clock: { now: () => now } });
  const manager = { name: "Ana Reyes", address: "ana@quillgate.example" };
  const managing = [{ buyer: "marrowby.example", manager, waits: true }];
  const desk: Desk = { ...made, rules: { ...made.rules, managing } };
  const letters = new Map<string, number>();
  const numberOf = (letter: string): number => {
    const number = letters.get(letter);
    if (number === undefined) throw new Error(`no letter ${letter}`);
    return number;
  };
  const settings = join(folder, "burin.yaml");
  writeFileSync(
    settings,
    `catalogue: ${resolve("fixtures/trade/catalogue.yaml")}
editions: ${resolve("fixtures/trade/editions")}
glossary: ${resolve("config/glossary.txt")}
record: record
folders: [letters]
answers: { from: { name: Order desk, address: orders@quillgate.example }, folder: answers }
time_zone: America/Chicago
`,
  );
  return {
    folder,
    settings,
    numberOf,
    async play(steps) {
      for (const step of steps) {
        const at = momentOf(step.at);
        now = new Date(at.getTime() + (step.after ?? 20) * 1000);
        if ("letter" in step) letters.set(step.letter, await take(desk, step, at, numberOf));
        else await act(desk, step, numberOf);
        while (await takeDue(desk));
      }
    },
    close: () => store.close(),
  };
}

/** "16 09:00" in November 2026 on the clocks of Chicago, which are six hours behind UTC then. */
function momentOf(at: string): Date {
  return new Date(`2026-11-${at.replace(" ", "T")}:00-06:00`);
}

async function take(
  desk: Desk,
  step: Extract<Step, { letter: string }>,
  at: Date,
  numberOf: Played["numberOf"],
): Promise<number> {
  const bytes = await ("absent" in step ? absence(step.absent, at) : written(desk, step.mail, at, numberOf));
  return (await takeLetter(desk, bytes, at)).letter;
}

async function written(
  { store }: Desk,
  { replyTo, ...mail }: Extract<Step, { mail: unknown }>["mail"],
  at: Date,
  numberOf: Played["numberOf"],
): Promise<Uint8Array> {
  const to = replyTo === undefined ? undefined : await store.letters.read(numberOf(replyTo));
  return letterOf({ ...mail, date: at.toISOString(), ...(to === undefined ? {} : { to }) });
}

/** RFC 3834 §5: a machine says that nobody is there. */
function absence(from: string, at: Date): Uint8Array {
  return new TextEncoder().encode(
    [
      `From: ${from}`,
      "To: orders@quillgate.example",
      "Subject: I am out of the office",
      `Date: ${at.toUTCString().replace("GMT", "+0000")}`,
      `Message-ID: <absent-${at.getTime()}@fallowmere.example>`,
      "Auto-Submitted: auto-replied",
      "",
      "I am out of the office until Monday.",
      "",
    ].join("\r\n"),
  );
}

async function act(
  desk: Desk,
  step: Exclude<Step, { letter: string }>,
  numberOf: Played["numberOf"],
): Promise<void> {
  const { store, clock } = desk;
  if ("release" in step) {
    await releaseOrder(desk, step.release, "Tom Aldous", () => Promise.resolve("here"));
    return;
  }
  const by = { name: "Rosa Imhoff", why: "called" };
  if ("letIn" in step) {
    await store.letters.letIn(numberOf(step.letIn), { sender: step.as }, by, clock.now());
    return;
  }
  const [order] = await store.orders.named(step.yes);
  if (order === undefined) throw new Error(`no order ${step.yes}`);
  const acts = order.questions.map(({ number }) => ({ kind: "yes" as const, number }));
  const { buyer, number } = order;
  await takeNote(desk, { id: step.at, buyer, order: number, by: by.name, why: by.why, acts });
}

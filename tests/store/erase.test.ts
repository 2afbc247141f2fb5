import { mkdirSync, readdirSync } from "node:fs";
import { join } from "node:path";
import * as fc from "fast-check";
import { expect, onTestFinished, test } from "vitest";
import type { Desk } from "../../src/intake/desk.ts";
import { erasePerson, planErasing } from "../../src/intake/erase.ts";
import { putAside, recordCut } from "../../src/intake/settle.ts";
import { takeDue, takeLetter } from "../../src/intake/take.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { removePackage } from "../../src/store/package-folder.ts";
import { rebuildOrders } from "../../src/store/rebuild.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import { newLedger, people } from "../make/acts/ledger.ts";
import { type Step, take } from "../make/acts/steps.ts";
import { again, step } from "../make/acts/stories.ts";
import { at, authority, type Story } from "../make/acts/world.ts";
import { temporaryDesk, temporaryFolder } from "../make/desk.ts";
import { brightwire, figuresOn, foundIn, mara, rowsBeside } from "../make/erasing.ts";
import { type QuickLetter, quickBytes, quickReader } from "../make/quick.ts";

const rosa = { name: "Rosa Imhoff", why: "asked for by letter" };

interface Record {
  readonly folder: string;
  readonly desk: Desk;
  readonly story: Story;
}

async function openRecord(folder: string): Promise<Record> {
  const ledger = newLedger();
  const packages = join(folder, "released");
  const db = openSqlite(join(folder, "record.sqlite"));
  const store = await openStore(db, openBlobs(join(folder, "blobs")));
  const made = await temporaryDesk({ reader: quickReader, store, clock: { now: () => at(ledger.minute) } });
  const desk = {
    ...made,
    rules: {
      ...made.rules,
      authority,
      releasing: { afterHours: 24, buyers: ["brightwire.example"], put: () => Promise.resolve("") },
      erasing: { remove: (name: string) => removePackage(packages, name) },
      mostAnswers: { toOne: 999, toAll: 999, toOneADay: 999, inThreadADay: 999 },
    },
  };
  return { folder, desk, story: { desk, ledger, packages, alarms: [] } };
}

function provedMara(n: number, moment: Date): [QuickLetter, Uint8Array] {
  const quick = mara.letter(n, moment);
  const found = `Authentication-Results: ${authority}; dkim=pass header.d=oakmoor.example\r\n`;
  const bytes = Buffer.from(quickBytes(quick))
    .toString()
    .replace("@brightwire.example>", "@oakmoor.example>");
  return [quick, Buffer.from(found + bytes)];
}

/** Plays a story of the people of Brightwire; now and then another buyer writes. */
async function play({ desk, story }: Record, steps: readonly Step[]): Promise<void> {
  mkdirSync(story.packages, { recursive: true });
  for (const [n, one] of steps.entries()) {
    await take(story, one);
    if (n % 3 !== 0) continue;
    const [quick, bytes] = provedMara(n, at(story.ledger.minute));
    await takeLetter(desk, bytes, quick.receivedAt);
  }
  while (await takeDue(desk));
}

/** Does about each thing in the way what its sentence says, until nothing is. */
async function clearTheWay(desk: Desk, address: string): Promise<void> {
  for (let rounds = 0; rounds < 20; rounds++) {
    const { inTheWay } = await planErasing(desk, { address, givesUp: true });
    if (inTheWay.length === 0) return;
    for (const { what } of inTheWay) {
      const [kind, which = ""] = what.split(" ");
      const [order] = kind === "order" ? await desk.store.orders.named(which) : [];
      if (order !== undefined) await recordCut(desk, order, [], "Rosa Imhoff");
      if (kind === "letter") await putAside(desk, Number(which), rosa);
    }
    while (await takeDue(desk));
  }
  throw new Error("something stays in the way");
}

const everybody = [people.stranger, people.colleague, people.buyer];
const tally = { people: 0, letters: 0, orders: 0, packages: 0 };

/** Erases some people one after the other, and holds the record against what it was. */
async function eraseAll(record: Record, addresses: readonly string[]): Promise<void> {
  const { folder, desk, story } = record;
  const path = join(folder, "record.sqlite");
  for (const address of addresses) await clearTheWay(desk, address);
  const days = Array.from({ length: 12 }, (_, i) => `2026-11-${String(i + 9).padStart(2, "0")}`).filter(
    (day) => new Date(`${day}T00:00:00-06:00`) <= at(story.ledger.minute),
  );
  const before = await figuresOn(desk, days);
  const gone: number[] = [];
  const names = new Map<string, string>();
  for (const address of addresses) {
    const { letters } = await planErasing(desk, { address, givesUp: true });
    gone.push(...letters.map(({ letter }) => letter));
  }
  const beside = rowsBeside(path, gone, addresses);
  // A day later, so that the days of the story are over.
  story.ledger.minute += 1440;
  for (const address of addresses) {
    const plan = await planErasing(desk, { address, givesUp: true });
    const { standIn, orders, letters, deleted, inTheWay } = await erasePerson(
      desk,
      { address, givesUp: true },
      rosa,
    );
    expect([inTheWay, deleted.isFree]).toEqual([[], true]);
    expect({ orders, letters }).toEqual({ orders: plan.orders, letters: plan.letters });
    if (standIn === undefined) continue;
    names.set(address, standIn);
    for (const [n, order] of orders.entries()) names.set(order, `${standIn} order ${n + 1}`);
    tally.people++;
    tally.letters += letters.length;
    tally.orders += orders.length;
    tally.packages += deleted.packages.length;
  }
  const mapped = async (): Promise<string[]> => {
    const back = new Map([...names].map(([old, now]) => [now, old]));
    return figuresOn(desk, days, back);
  };
  expect(await mapped()).toEqual(before);
  expect(rowsBeside(path, gone, addresses)).toEqual(beside);
  const verified = await desk.store.verify();
  expect(verified).toMatchObject({ differ: [], older: 0 });
  expect(verified.broken).toBeUndefined();
  expect(verified.erased.map(({ by }) => by)).toEqual(verified.erased.map(() => "Rosa Imhoff"));
  const db = openSqlite(path);
  await rebuildOrders(db);
  await db.destroy();
  expect(await mapped()).toEqual(before);
  expect((await desk.store.verify()).differ).toEqual([]);
}

test("whoever is erased, nothing of him is left, the chain holds, days count the same, and others are untouched", async () => {
  onTestFinished(() => (process.env["BURIN_RUNS"] === undefined ? undefined : console.info(tally)));
  await fc.assert(
    fc.asyncProperty(
      fc.option(again),
      fc.array(step, { minLength: 2, maxLength: 10, size: "max" }),
      fc.constantFrom("all of Brightwire", "all of Brightwire", "mara"),
      async (first, steps, which) => {
        const record = await openRecord(temporaryFolder());
        const right = { legend: "ENTRY", badPhone: false } as const;
        const whole = { kind: "send", who: "buyer", scan: false, words: false, inReply: false } as const;
        const begin: Step = { ...whole, order: "BW-2207", sheets: [{ ...right, spot: "T-9 alone" }] };
        await play(record, [begin, ...(first ?? []), ...steps]);
        await eraseAll(record, which === "mara" ? [mara.address] : everybody);
        const words = which === "mara" ? ["oakmoor", "Mara", "OM-9", "555-0133", "Quarry"] : brightwire;
        expect(foundIn(record.folder, words)).toEqual([]);
        if (which !== "mara") expect(readdirSync(record.story.packages)).toEqual([]);
        await record.desk.store.close();
        expect(foundIn(record.folder, words)).toEqual([]);
      },
    ),
    process.env["BURIN_RUNS"] === undefined
      ? { numRuns: 8, seed: 20_261_128 }
      : { numRuns: Number(process.env["BURIN_RUNS"]) },
  );
  expect(tally.orders).toBeGreaterThan(0);
}, 3_600_000);

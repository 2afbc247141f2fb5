import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { rm } from "node:fs/promises";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { expect, test } from "vitest";
import { takeNote } from "../../src/intake/check-note.ts";
import type { Desk } from "../../src/intake/desk.ts";
import { eraseDue, erasePerson, finishErasing, planDue, planErasing } from "../../src/intake/erase.ts";
import { noteKey } from "../../src/intake/note-answer.ts";
import { releaseOrder } from "../../src/intake/release.ts";
import { letIn, putAside, recordCut, settleOrder } from "../../src/intake/settle.ts";
import { summariesDue } from "../../src/intake/summary.ts";
import { takeDue, takeLetter } from "../../src/intake/take.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { removePackage } from "../../src/store/package-folder.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import type { Note } from "../../src/trade/note.ts";
import { authority } from "../make/acts/world.ts";
import { keepingSender, temporaryDesk, temporaryFolder } from "../make/desk.ts";
import { brightwire, figuresOn, foundIn, mara } from "../make/erasing.ts";
import { aloneAt, type QuickLetter, quickBytes, quickReader, takeQuick } from "../make/quick.ts";

const ines = "ines@brightwire.example";
const whom = { address: ines, givesUp: false };
const rosa = { name: "Rosa Imhoff", why: "asked for by letter" };

/** A desk over a record in a folder, whose clock stands where `clock.now` says. */
async function openDesk(
  folder: string,
  clock: { now: Date },
  more: Partial<Desk["rules"]> = {},
): Promise<Desk> {
  const store = await openStore(openSqlite(join(folder, "record.sqlite")), openBlobs(join(folder, "blobs")));
  const desk = await temporaryDesk({ store, reader: quickReader, clock: { now: () => clock.now } });
  return { ...desk, rules: { ...desk.rules, ...more } };
}

const monday = new Date("2026-11-09T15:00:00Z");
const sheets = [aloneAt("T-9", "SALONA")];
const letter = (id: string, receivedAt: Date = monday) => ({ id, dated: receivedAt, receivedAt });

test("an order that is not done with is in the way, unless it is given up; it then waits for nobody", async () => {
  const clock = { now: monday };
  const desk = await openDesk(temporaryFolder(), clock);
  await takeQuick(desk, { ...letter("a"), sheets: [aloneAt("T-9", "MAIN SW")] });
  const refused = await erasePerson(desk, whom, rosa);
  expect(refused).toMatchObject({
    inTheWay: [
      { what: "order BW-2207", why: expect.stringContaining("not done with") },
      { what: "letter 1", why: expect.stringContaining("waits for a person") },
    ],
  });
  expect("standIn" in refused).toBe(false);
  expect((await desk.store.orders.named("BW-2207")).map(({ buyer }) => buyer)).toEqual([ines]);
  const waits = async (day: string): Promise<string> =>
    JSON.stringify((JSON.parse((await figuresOn(desk, [day]))[0] ?? "") as unknown[])[0]);
  expect(await waits("2026-11-10")).toContain("order BW-2207: safety-wording");
  // The moment in which the 10th ends.
  clock.now = new Date("2026-11-11T06:00:00Z");
  expect(await erasePerson(desk, { ...whom, givesUp: true }, rosa)).toMatchObject({ standIn: "erased-1" });
  expect(await waits("2026-11-10")).toContain("order erased-1 order 1: safety-wording");
  expect(await waits("2026-11-11")).not.toContain("safety-wording");
  expect(await desk.store.people.waiting(clock.now)).toEqual([]);
  expect(await desk.store.orders.named("BW-2207")).toEqual([]);
  await desk.store.close();
});

test("while a letter is being answered nothing of its sender is erased, whatever is given up", async () => {
  const made = await openDesk(temporaryFolder(), { now: monday });
  const desk = { ...made, sender: keepingSender(() => ({ kind: "later", words: "451 try later" })) };
  const taken = await takeQuick(desk, { ...letter("a"), sheets });
  expect(taken.state).toBe("later");
  const { inTheWay, standIn } = await erasePerson(desk, { ...whom, givesUp: true }, rosa);
  expect([standIn, inTheWay]).toEqual([
    undefined,
    [{ what: "letter 1", why: "it is still to be judged or answered" }],
  ]);
  expect((await desk.store.letters.bytesOf(1)).length).toBeGreaterThan(0);
  await desk.store.close();
});

test("a letter that is erased is answered no second time, and its sender is a stranger again", async () => {
  const desk = await openDesk(temporaryFolder(), { now: monday });
  const first = { ...letter("a"), sheets };
  await takeQuick(desk, first);
  await erasePerson(desk, { ...whom, givesUp: true }, rosa);
  expect(await desk.store.buyers.knows(ines)).toBe(false);
  const again = await takeQuick(desk, first);
  expect(again).toMatchObject({ letter: 1, state: "sent", isErased: true, from: "erased-1", subject: "" });
  const next = await takeQuick(desk, { ...letter("b"), sheets });
  expect([next.letter, next.state, next.verdict]).toEqual([2, "sent", "confirm"]);
  // Asked by numbers that count from 1 again.
  expect((await desk.store.orders.named("BW-2207"))[0]).toMatchObject({
    revision: 1,
    questions: [{ number: 1 }],
  });
  expect(await letIn(desk, 1, rosa)).toMatchObject({ done: false });
  expect(await desk.store.letters.sendAgain(1, rosa, monday)).toBe(false);
  await expect(desk.store.letters.bytesOf(1)).rejects.toThrow("letter 1 is erased");
  await desk.store.close();
});

test("a held letter goes with the copy that was let in", async () => {
  const desk = await openDesk(temporaryFolder(), { now: monday });
  await takeQuick(desk, { ...letter("a"), from: "Brightwire <no-reply@brightwire.example>", sheets });
  expect(await letIn(desk, 1, rosa, ines)).toMatchObject({ done: true });
  while (await takeDue(desk));
  const { letters, orders } = await planErasing(desk, whom);
  expect([letters.map((one) => one.letter), orders]).toEqual([[1, 2], ["BW-2207"]]);
  expect(await erasePerson(desk, { ...whom, givesUp: true }, rosa)).toMatchObject({ standIn: "erased-1" });
  await expect(desk.store.letters.bytesOf(1)).rejects.toThrow("letter 1 is erased");
  await desk.store.close();
});

test("letters that somebody wrote about orders of others are named, though he have none of his own", async () => {
  const desk = await openDesk(temporaryFolder(), { now: monday }, { authority });
  const proved = async (quick: QuickLetter): Promise<void> => {
    const found = `Authentication-Results: ${authority}; dkim=pass header.d=brightwire.example\r\n`;
    await takeLetter(desk, Buffer.concat([Buffer.from(found), quickBytes(quick)]), monday);
  };
  const tom = "tom@brightwire.example";
  const from = `Tom Reed <${tom}>`;
  const elsewhereOf = async (address: string) => (await planErasing(desk, { ...whom, address })).elsewhere;
  await proved({ ...letter("a"), sheets });
  await proved({ ...letter("b"), from, sheets: [aloneAt("T-10", "LOUNGE")] });
  expect(await elsewhereOf(tom)).toEqual([{ letter: 2, buyer: ines }]);
  expect(await elsewhereOf(ines)).toEqual([]);
  await proved({ ...letter("c"), from, sheets: [aloneAt("T-1", "ENTRY", { order_number: "TR-5" })] });
  expect(await elsewhereOf(tom)).toEqual([{ letter: 2, buyer: ines }]);
  await desk.store.close();
});

test("a question that was asked, mended and asked again is no other's once its order is erased", async () => {
  const clock = { now: monday };
  const desk = await openDesk(temporaryFolder(), clock);
  const rows = [
    ["T-9", "SALONA"],
    ["T-9", "ENTRY"],
    ["T-10", "LOUNJA"],
    ["T-9", "SALONA"],
    ["T-11", "KITCHIN"],
  ] as const;
  for (const [i, [mark, row]] of rows.entries()) {
    clock.now = new Date(monday.getTime() + i * 60_000);
    await takeQuick(desk, { ...letter(`${i}`, clock.now), sheets: [aloneAt(mark, row)] });
  }
  const asked = (await desk.store.orders.named("BW-2207"))[0]?.questions ?? [];
  expect(asked.map(({ number }) => number)).toEqual([2, 1, 3]);
  const names = new Map([
    [ines, "erased-1"],
    ["BW-2207", "erased-1 order 1"],
  ]);
  const before = await figuresOn(desk, ["2026-11-09"], names);
  clock.now = new Date("2026-11-11T15:00:00Z");
  expect(await erasePerson(desk, { ...whom, givesUp: true }, rosa)).toMatchObject({ standIn: "erased-1" });
  expect(await figuresOn(desk, ["2026-11-09"])).toEqual(before);
  await desk.store.close();
});

test("what a buyer has settled on the page of our letter counts as his once he is erased", async () => {
  const clock = { now: monday };
  const desk = await openDesk(temporaryFolder(), clock);
  await takeQuick(desk, { ...letter("a"), sheets });
  const acts = [{ kind: "yes", number: 1 }] as const;
  await takeNote(desk, { id: "1", buyer: ines, order: "BW-2207", by: ines, why: "", acts, isSenders: true });
  while (await takeDue(desk));
  const settled = async () => {
    const { slips } = await desk.store.audited(monday, new Date("2026-11-10T06:00:00Z"));
    return slips.map(({ ending }) => ending);
  };
  expect(await settled()).toEqual(["yes"]);
  clock.now = new Date("2026-11-11T15:00:00Z");
  expect(await erasePerson(desk, { ...whom, givesUp: true }, rosa)).toMatchObject({ standIn: "erased-1" });
  expect(await settled()).toEqual(["yes"]);
  await desk.store.close();
});

test("of what was said of a letter, its events keep the verdict alone", async () => {
  const desk = await openDesk(temporaryFolder(), { now: monday });
  await takeQuick(desk, { ...letter("a"), sheets });
  await takeQuick(desk, { ...letter("b"), text: "Do you cut brass?" });
  await putAside(desk, 2, { name: "Rosa Imhoff", why: "Ines Calloway says so on the telephone" });
  const words = async (id: number): Promise<string[]> =>
    (await desk.store.letters.history(id)).flatMap(({ what, words }) =>
      ["ready", "sent", "put aside"].includes(what) ? [words] : [],
    );
  expect([await words(1), await words(2)]).toEqual([
    ["confirm", "250 kept"],
    ["person", "250 kept", "Ines Calloway says so on the telephone"],
  ]);
  await erasePerson(desk, { ...whom, givesUp: true }, rosa);
  expect([await words(1), await words(2)]).toEqual([
    ["confirm", ""],
    ["person", "", ""],
  ]);
  await desk.store.close();
});

test("bytes that somebody else has sent too stay until he is erased", async () => {
  const folder = temporaryFolder();
  const desk = await openDesk(folder, { now: monday });
  const shared = aloneAt("T-9", "SALONA", { order_number: "" });
  await takeQuick(desk, { ...letter("a"), sheets: [shared] });
  await takeQuick(desk, { ...letter("b"), from: "Mara Ellis <mara@oakmoor.example>", sheets: [shared] });
  const bytes = async (id: string) => (await desk.store.orders.originals([id])).get(id);
  const before = await bytes("2/1");
  await erasePerson(desk, { ...whom, givesUp: true }, rosa);
  expect(await bytes("2/1")).toEqual(before);
  expect(foundIn(join(folder, "blobs"), ["SALONA"])).not.toEqual([]);
  await erasePerson(desk, { address: mara.address, givesUp: true }, rosa);
  expect(foundIn(folder, ["SALONA", "Mara", "Calloway"])).toEqual([]);
  await desk.store.close();
});

test("bytes that come again while they are deleted are there for whoever sent them last", async () => {
  const folder = temporaryFolder();
  const desk = await openDesk(folder, { now: monday });
  await takeQuick(desk, { ...letter("a"), sheets });
  await desk.store.erasures.erase({ address: ines, givesUp: true }, rosa, monday);
  // Another worker has found the bytes of the sheet there, when the erasing ends.
  const own = openBlobs(join(folder, "blobs"));
  let ended = 0;
  const blobs = {
    ...own,
    put: async (bytes: Uint8Array) => {
      const sha = await own.put(bytes);
      if (ended === 0 && new TextDecoder().decode(bytes).startsWith('{"file"'))
        ended = (await desk.store.erasures.finish(() => Promise.resolve(false))).bytes;
      return sha;
    },
  };
  const store = await openStore(openSqlite(join(folder, "record.sqlite")), blobs);
  const from = "Mara Ellis <mara@oakmoor.example>";
  const taken = await takeQuick({ ...desk, store }, { ...letter("b"), from, sheets });
  expect([taken.state, ended]).toEqual(["sent", 3]);
  expect((await store.orders.originals(taken.attachments.map(({ id }) => id))).size).toBe(1);
  await store.close();
  await desk.store.close();
});

test("an answer whose bytes are deleted before its letter is written is put once more", async () => {
  const folder = temporaryFolder();
  const desk = await openDesk(folder, { now: monday });
  const own = openBlobs(join(folder, "blobs"));
  let lost = 0;
  const blobs = {
    ...own,
    put: async (bytes: Uint8Array) => {
      const sha = await own.put(bytes);
      const isAnswer = Buffer.from(bytes).toString("latin1").includes("\r\nIn-Reply-To:");
      if (isAnswer && lost++ === 0) await rm(join(folder, "blobs", sha.slice(0, 2), sha));
      return sha;
    },
  };
  const store = await openStore(openSqlite(join(folder, "record.sqlite")), blobs);
  const taken = await takeQuick({ ...desk, store }, { ...letter("a"), sheets });
  expect([taken.state, lost]).toEqual(["sent", 2]);
  expect((await store.answers.of(1))?.bytes.length).toBeGreaterThan(0);
  await store.close();
  await desk.store.close();
});

test("a released order stays until it is engraved whole, and its package goes with it", async () => {
  const folder = temporaryFolder();
  const packages = join(folder, "released");
  mkdirSync(packages);
  const desk = await openDesk(
    folder,
    { now: monday },
    {
      erasing: { remove: (name) => removePackage(packages, name) },
    },
  );
  await takeQuick(desk, { ...letter("a"), sheets: [aloneAt("T-9", "ENTRY")] });
  const put = (name: string): Promise<string> => {
    mkdirSync(join(packages, name));
    writeFileSync(join(packages, name, "schedule.csv"), "ENTRY");
    return Promise.resolve(name);
  };
  expect(await releaseOrder(desk, "BW-2207", "Rosa Imhoff", put)).toMatchObject({ ok: true });
  while (await takeDue(desk));
  mkdirSync(join(packages, "OM-9 revision 1"));
  const refused = await erasePerson(desk, { ...whom, givesUp: true }, rosa);
  expect(refused.inTheWay).toMatchObject([
    { what: "order BW-2207", why: expect.stringContaining("burin cut") },
  ]);
  await recordCut(desk, { buyer: ines, number: "BW-2207" }, [], "Rosa Imhoff");
  const erased = await erasePerson(desk, whom, rosa);
  expect(erased.deleted).toMatchObject({ packages: ["BW-2207 revision 2"], notFound: [], isFree: true });
  expect(readdirSync(packages)).toEqual(["OM-9 revision 1"]);
  await desk.store.close();
});

test("an order that changes after all of it was engraved is not done with", async () => {
  const clock = { now: monday };
  const desk = await openDesk(temporaryFolder(), clock);
  await takeQuick(desk, { ...letter("a"), sheets: [aloneAt("T-9", "ENTRY")] });
  await releaseOrder(desk, "BW-2207", "Rosa Imhoff", () => Promise.resolve(""));
  await recordCut(desk, { buyer: ines, number: "BW-2207" }, [], "Rosa Imhoff");
  while (await takeDue(desk));
  const { inTheWay, letters } = await planErasing(desk, whom);
  expect(inTheWay).toEqual([]);
  expect(letters[0]).toEqual({ letter: 1, receivedAt: monday, from: ines, subject: "Stations" });
  clock.now = new Date("2026-11-10T15:00:00Z");
  await takeQuick(desk, { ...letter("b", clock.now), sheets: [aloneAt("T-10", "LOUNGE")] });
  const ways = async (givesUp: boolean): Promise<string[]> =>
    (await planErasing(desk, { ...whom, givesUp })).inTheWay.map(({ what }) => what);
  expect(await ways(false)).toContain("order BW-2207");
  expect(await ways(true)).not.toContain("order BW-2207");
  // Nobody knows where its package lies.
  const { deleted } = await erasePerson(desk, { ...whom, givesUp: true }, rosa);
  expect(deleted).toMatchObject({ packages: [], notFound: ["BW-2207 revision 2"] });
  await desk.store.close();
});

test("an order of which all is engraved is not done with while its buyer says more", async () => {
  const desk = await openDesk(temporaryFolder(), { now: monday });
  await takeQuick(desk, { ...letter("a"), sheets: [aloneAt("T-9", "ENTRY")] });
  await releaseOrder(desk, "BW-2207", "Rosa Imhoff", () => Promise.resolve(""));
  await recordCut(desk, { buyer: ines, number: "BW-2207" }, [], "Rosa Imhoff");
  while (await takeDue(desk));
  const { letter: said } = await takeQuick(desk, {
    ...letter("b"),
    text: "Please pack order BW-2207 in two.",
  });
  expect((await planErasing(desk, whom)).inTheWay).toEqual([
    {
      what: "order BW-2207",
      why: "it is not done with (person): have it cancelled, or give it up",
    },
    { what: `letter ${said}`, why: "it waits for a person: settle it, or put it aside" },
  ]);
  await desk.store.close();
});

test.each([
  ["are known for eight days, so that none is told twice", "2026-12-01T14:00:00.000Z", true],
  ["are known no longer than eight days", "2026-12-01T14:00:00.001Z", false],
])(
  "weeks that a manager was told of go with whoever had an order by then, and %s",
  async (_, erased, isKnown) => {
    const clock = { now: monday };
    const desk = await openDesk(temporaryFolder(), clock, {
      managing: [
        {
          manager: { name: "Ana Reyes", address: "ana@quillgate.example" },
          waits: false,
          summary: { weekday: "monday", hour: 8 },
        },
      ],
    });
    const tell = async (day: string): Promise<Note[]> => {
      clock.now = new Date(`${day}T14:00:00Z`);
      const notes = await summariesDue(desk);
      for (const note of notes) await takeNote(desk, note);
      while (await takeDue(desk));
      return notes;
    };
    await takeQuick(desk, mara.letter(1, monday));
    expect(await tell("2026-11-16")).toHaveLength(1);
    clock.now = new Date("2026-11-17T15:00:00Z");
    await takeQuick(desk, { ...letter("a", clock.now), sheets });
    const [week] = await tell("2026-11-23");
    const key = noteKey(week ?? expect.fail("no week is told of"));
    const { letters } = await planErasing(desk, { ...whom, givesUp: true });
    // Mara's letter and the first week stay.
    expect(letters.map((one) => one.letter)).toEqual([3, 4]);
    clock.now = new Date(erased);
    await erasePerson(desk, { ...whom, givesUp: true }, rosa);
    expect(await desk.store.letters.isKnown(key)).toBe(isKnown);
    await expect(desk.store.letters.bytesOf(4)).rejects.toThrow("letter 4 is erased");
    await desk.store.close();
  },
);

test("by the calendar what nothing came for goes, with all that hangs together, and the rest stays and is named", async () => {
  const clock = { now: monday };
  const desk = await openDesk(temporaryFolder(), clock, { erasing: { afterDays: 30 } });
  const numbered = (order_number: string, mark = "T-9") => aloneAt(mark, "ENTRY", { order_number });
  await takeQuick(desk, { ...letter("a"), sheets: [numbered("BW-1")] });
  await takeQuick(desk, { ...letter("b"), sheets: [numbered("BW-2", "A-1"), numbered("BW-3", "A-2")] });
  await takeQuick(desk, { ...letter("c"), sheets: [numbered("BW-4", "A-3")] });
  await releaseOrder(desk, "BW-4", "Rosa Imhoff", () => Promise.resolve(""));
  await takeQuick(desk, { ...letter("d"), text: "Do you cut brass?" });
  while (await takeDue(desk));
  clock.now = new Date("2026-12-01T15:00:00Z");
  await takeQuick(desk, { ...letter("e", clock.now), sheets: [numbered("BW-3", "A-4")] });
  clock.now = new Date("2026-12-09T16:00:00Z");
  const due = await planDue(desk);
  expect(due.inTheWay.map(({ what }) => what)).toEqual(["order BW-4", "letter 5"]);
  expect(await eraseDue(desk)).toMatchObject(due);
  const left = await desk.store.buyers.stateOf(ines, []);
  // The letter that brought BW-2 brought BW-3 too, for which something came later.
  expect(left.orders.map(({ number }) => number)).toEqual(["BW-2", "BW-3", "BW-4"]);
  await putAside(desk, 5, rosa);
  await recordCut(desk, { buyer: ines, number: "BW-4" }, [], "Rosa Imhoff");
  clock.now = new Date("2027-01-12T16:00:00Z");
  await eraseDue(desk);
  expect((await desk.store.buyers.stateOf(ines, [])).orders).toEqual([]);
  expect(await planErasing(desk, whom)).toMatchObject({ orders: [], letters: [], inTheWay: [] });
  expect(await desk.store.verify()).toMatchObject({ differ: [] });
  await desk.store.close();
});

test("by the calendar what is not old enough yet is in nobody's way, to the moment", async () => {
  const clock = { now: monday };
  const desk = await openDesk(temporaryFolder(), clock, { erasing: { afterDays: 30 } });
  await takeQuick(desk, { ...letter("a"), sheets: [aloneAt("T-9", "ENTRY")] });
  await releaseOrder(desk, "BW-2207", "Rosa Imhoff", () => Promise.resolve(""));
  await takeQuick(desk, { ...letter("b"), text: "Do you cut steel?" });
  clock.now = new Date(monday.getTime() - 1);
  await takeQuick(desk, { ...letter("c", clock.now), text: "Do you cut brass?" });
  while (await takeDue(desk));
  const dueAt = async (moment: string): Promise<string[]> => {
    clock.now = new Date(moment);
    return (await planDue(desk)).inTheWay.map(({ what }) => what);
  };
  expect(await dueAt("2026-12-09T14:59:59.999Z")).toEqual([]);
  expect(await dueAt("2026-12-09T15:00:00.000Z")).toEqual(["letter 4"]);
  expect(await dueAt("2026-12-09T15:00:00.001Z")).toEqual(["order BW-2207", "letter 3", "letter 4"]);
  await desk.store.close();
});

/** A record with all that is there of one person, and somebody else. */
async function recordIn(folder: string): Promise<void> {
  const desk = await openDesk(folder, { now: monday });
  await takeQuick(desk, { ...letter("a"), sheets });
  await settleOrder(desk, { buyer: ines, number: "BW-2207" }, [{ kind: "yes", number: 1 }], rosa);
  while (await takeDue(desk));
  await takeQuick(desk, { ...mara.letter(1, monday), id: "m" });
  await desk.store.close();
}

const sourceOf = (file: string): string =>
  JSON.stringify(new URL(`../../src/store/${file}.ts`, import.meta.url).href);

/** Erases in a program of its own, which kills itself (SIGKILL) at a statement; gives how many there were. */
function killedAt(statement: number, folder: string): number {
  const program = `
    import { writeFileSync } from "node:fs";
    import { StatementSync } from "node:sqlite";
    import { openBlobs } from ${sourceOf("blobs")};
    import { openSqlite } from ${sourceOf("sqlite")};
    import { openStore } from ${sourceOf("store")};
    const store = await openStore(openSqlite(${JSON.stringify(join(folder, "record.sqlite"))}), openBlobs(${JSON.stringify(join(folder, "blobs"))}));
    let count = 0;
    for (const name of ["all", "run"]) {
      const does = StatementSync.prototype[name];
      StatementSync.prototype[name] = function (...given) {
        if (++count === ${statement}) process.kill(process.pid, "SIGKILL");
        return does.apply(this, given);
      };
    }
    await store.erasures.erase({ address: "${ines}", givesUp: true }, { name: "Rosa Imhoff", why: "asked" }, new Date(0));
    await store.erasures.finish(() => Promise.resolve(false));
    console.log(count);`;
  const ended = spawnSync(process.execPath, ["--input-type=module", "--eval", program], { encoding: "utf8" });
  expect([ended.status, ended.signal]).toEqual(statement === 0 ? [0, null] : [null, "SIGKILL"]);
  return Number(ended.stdout);
}

test("killed at any step, it is done whole by the next", async () => {
  const folder = temporaryFolder();
  await recordIn(folder);
  const copy = (name: string): string => {
    const to = join(temporaryFolder(), name);
    cpSync(folder, to, { recursive: true });
    return to;
  };
  const all = killedAt(0, copy("whole"));
  expect(all).toBeGreaterThan(60);
  // The last steps are those that delete.
  const steps = new Set([2, Math.round(all / 3), ...Array.from({ length: 9 }, (_, i) => all - i * 3)]);
  for (const step of steps) {
    const record = copy(`killed-${step}`);
    killedAt(step, record);
    const desk = await openDesk(record, { now: monday });
    expect([step, (await desk.store.verify()).broken]).toEqual([step, undefined]);
    const gone = { ...whom, givesUp: true };
    const { letters } = await planErasing(desk, gone);
    // All of it is there, or nothing.
    expect([step, letters.length === 0 ? 0 : 2]).toEqual([step, letters.length]);
    if (letters.length > 0) await erasePerson(desk, gone, rosa);
    expect((await finishErasing(desk)).isFree).toBe(true);
    const words = brightwire.filter((word) => word !== "brightwire");
    expect([step, foundIn(record, [...words, ines])]).toEqual([step, []]);
    expect(await desk.store.verify()).toMatchObject({ differ: [] });
    expect((await desk.store.orders.named("OM-9")).length).toBe(1);
    await desk.store.close();
  }
}, 120_000);

test("while somebody reads the record its log is not empty, and the next run empties it", async () => {
  const folder = temporaryFolder();
  await recordIn(folder);
  const desk = await openDesk(folder, { now: monday });
  const reader = new DatabaseSync(join(folder, "record.sqlite"), { readOnly: true });
  const rows = reader.prepare("SELECT id FROM letters").iterate();
  rows.next();
  expect((await erasePerson(desk, { ...whom, givesUp: true }, rosa)).deleted.isFree).toBe(false);
  rows.return?.();
  reader.close();
  expect((await finishErasing(desk)).isFree).toBe(true);
  expect(foundIn(folder, ["SALONA", "Calloway"])).toEqual([]);
  await desk.store.close();
}, 60_000);

test("an erasing that is changed afterwards breaks the chain", async () => {
  const folder = temporaryFolder();
  await recordIn(folder);
  const desk = await openDesk(folder, { now: monday });
  await erasePerson(desk, { ...whom, givesUp: true }, rosa);
  const { events, erased } = await desk.store.verify();
  expect(erased).toEqual([{ at: monday, by: "Rosa Imhoff", events: expect.any(Number) }]);
  const changes = [
    "UPDATE events SET content = replace(content, 'confirm', 'pass') WHERE erased_by IS NOT NULL",
    "UPDATE events SET salt = 'other' WHERE erased_by IS NOT NULL",
    "UPDATE events SET actor = 'somebody' WHERE subject = 'person'",
    "UPDATE events SET erased_by = NULL WHERE id = 1",
    `UPDATE events SET words = 'other', salt = NULL, erased_by = ${events} WHERE subject_id = 3`,
    "DELETE FROM events WHERE id = 2",
  ];
  for (const change of changes) {
    const copy = join(temporaryFolder(), "record");
    cpSync(folder, copy, { recursive: true });
    const database = new DatabaseSync(join(copy, "record.sqlite"));
    expect([change, Number(database.prepare(change).run().changes) > 0]).toEqual([change, true]);
    database.close();
    const changed = await openDesk(copy, { now: monday });
    expect([change, (await changed.store.verify()).broken !== undefined]).toEqual([change, true]);
    await changed.store.close();
  }
  await desk.store.close();
});

/** A record made when the chain was over all that events say. */
function oldRecord(changes = ""): string {
  const folder = temporaryFolder();
  const database = new DatabaseSync(join(folder, "record.sqlite"));
  database.exec(readFileSync("fixtures/raw/record-017.sql", "utf8"));
  database.exec(changes);
  database.close();
  return folder;
}

test("an older record is chained anew, whole, and what it was before is kept; people can be erased of it", async () => {
  const folder = oldRecord();
  const database = new DatabaseSync(join(folder, "record.sqlite"), { readOnly: true });
  const { hash } = database.prepare("SELECT hash FROM events ORDER BY id DESC LIMIT 1").get() as {
    hash: string;
  };
  database.close();
  const desk = await openDesk(folder, { now: monday });
  expect(await desk.store.verify()).toEqual({ events: 23, orders: 2, older: 0, differ: [], erased: [] });
  const db = openSqlite(join(folder, "record.sqlite"));
  const last = await db.selectFrom("events").select("words").orderBy("id", "desc").executeTakeFirst();
  await db.destroy();
  expect(last?.words).toBe(`the chain before ended with ${hash}`);
  const days = ["2026-11-09"];
  const before = await figuresOn(desk, days);
  expect(await erasePerson(desk, whom, rosa)).toMatchObject({ standIn: "erased-1", orders: ["BW-2207"] });
  const back = new Map([["erased-1", ines]]);
  expect(await figuresOn(desk, days, back)).toEqual(before);
  expect(foundIn(folder, [ines, "Calloway", "SALONA", "BW-2207"])).toEqual([]);
  expect((await desk.store.verify()).broken).toBeUndefined();
  expect((await desk.store.orders.named("OM-9"))[0]?.sheets[0]?.contact.name).toBe("Mara Ellis");
  await desk.store.close();
});

test("a chain that was broken before is no whole one after", async () => {
  const desk = await openDesk(oldRecord("UPDATE events SET words = 'other' WHERE id = 5"), { now: monday });
  expect((await desk.store.verify()).broken).toBe(5);
  await desk.store.close();
});

test("what an older record had freed without clearing it is gone once it is brought up to date and somebody is erased", async () => {
  const folder = oldRecord(
    "CREATE TABLE scratch (t); WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 2000) INSERT INTO scratch SELECT 'Calloway was here' || i FROM n; DROP TABLE scratch;",
  );
  expect(foundIn(folder, ["Calloway was here"])).not.toEqual([]);
  const desk = await openDesk(folder, { now: monday });
  await erasePerson(desk, whom, rosa);
  expect(foundIn(folder, ["Calloway was here"])).toEqual([]);
  expect(existsSync(join(folder, "record.sqlite"))).toBe(true);
  await desk.store.close();
});

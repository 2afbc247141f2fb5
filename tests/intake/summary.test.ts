import { simpleParser } from "mailparser";
import { expect, test } from "vitest";
import { takeNote } from "../../src/intake/check-note.ts";
import type { Desk } from "../../src/intake/desk.ts";
import { releaseOrder } from "../../src/intake/release.ts";
import { summariesDue } from "../../src/intake/summary.ts";
import { takeDue } from "../../src/intake/take.ts";
import { readPeople } from "../../src/intake/tell-people.ts";
import type { Managing } from "../../src/trade/manager.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";
import { post } from "../make/thread.ts";

const ana = { name: "Ana Reyes", address: "ana@quillgate.example" };
const weekly: Managing = {
  buyer: "fallowmere.example",
  manager: ana,
  waits: true,
  summary: { weekday: "monday", hour: 8 },
};
const device = (order: string, legend = "NORTH", mark = "T-1") => ({
  mark,
  legend: [legend],
  fill: { order },
});

/** A desk whose manager is told each Monday at eight; it begins on a Monday at nine. */
async function deskInTime(managing: readonly Managing[] = [weekly]) {
  const sender = keepingSender();
  let now = new Date("2026-11-09T15:00:00Z");
  const made = await temporaryDesk({ sender, clock: { now: () => now } });
  const desk: Desk = { ...made, rules: { ...made.rules, managing } };
  /** Lets days go by, and looks every hour. Gives the summaries that were sent. */
  const pass = async (days: number): Promise<{ at: string; subject: string; text: string }[]> => {
    const told: { at: string; subject: string; text: string }[] = [];
    for (let hour = 0; hour < days * 24; hour++) {
      now = new Date(now.getTime() + 3_600_000);
      const before = sender.kept.length;
      for (const note of await summariesDue(desk)) await takeNote(desk, note);
      while (await takeDue(desk));
      for (const { bytes, recipient } of sender.kept.slice(before)) {
        const { subject = "", text = "" } = await simpleParser(Buffer.from(bytes));
        expect(recipient).toBe(ana.address);
        told.push({ at: now.toISOString(), subject, text });
      }
    }
    return told;
  };
  return { desk, sender, pass };
}

test("a month: one summary for each week in which something happened, and none for others", async () => {
  const { desk, pass } = await deskInTime();
  const from = "Ana Reyes <ana@quillgate.example>";
  const first = await post(desk, { sheets: [device("FM-100")] });
  await post(desk, { from, text: "1 YES", to: first });
  await releaseOrder(desk, "FM-100", "Tom Aldous", () => Promise.resolve("here"));
  while (await takeDue(desk));
  await post(desk, { sheets: [device("QX-551", "SOUTH")] });
  await post(desk, { sheets: [device("FM-933", "HALFF", "T-1"), device("FM-933", "DOORR", "T-2")] });
  await post(desk, { from: "Jo <jo@oakmoor.example>", sheets: [device("OM-1")] });
  const [week, ...more] = await pass(8);
  expect(more).toEqual([]);
  expect(week?.at).toBe("2026-11-16T14:00:00.000Z");
  expect(week?.subject).toBe("Week to 2026-11-16: orders of fallowmere.example, 3 orders");
  expect(week?.text).toMatchInlineSnapshot(`
    "Ana Reyes, this is how things stand with orders of fallowmere.example, and what happened from 2026-11-09 to 2026-11-16.

    ORDERS
    - 1 released to engraving: FM-100
    - 2 with questions to answer: QX-551 and FM-933

    WAITS
    - QX-551: for its buyer, greta@fallowmere.example, since 2026-11-09: 1 question to answer
    - FM-933: for its buyer, greta@fallowmere.example, since 2026-11-09: 3 questions to answer

    RELEASED AND ENGRAVED
    - FM-100: released on 2026-11-09 by Tom Aldous; nothing of it is engraved yet

    SLIPS THAT WERE FOUND
    - 2 × An order number looks mistyped
    - 2 × A word looks misspelt

    Burin, the intake desk of Quillgate Stations
    Engraved push-button stations, cut to order
    orders@quillgate.example, 312-555-0140

    "
  `);
  // Nothing happens in the second week. In the third, one letter comes.
  expect(await pass(8)).toEqual([]);
  await post(desk, { sheets: [device("FM-933", "HALF", "T-1"), device("FM-933", "DOOR", "T-2")] });
  const later = await pass(14);
  expect(later.map(({ at }) => at)).toEqual(["2026-11-30T14:00:00.000Z"]);
  expect(later[0]?.text).not.toContain("OM-1");
  expect((await desk.store.verify()).differ).toEqual([]);
});

test("two workers, or one that begins again, tell of a week once", async () => {
  const { desk, sender, pass } = await deskInTime();
  await post(desk, { sheets: [device("FM-100")] });
  const before = sender.kept.length;
  const [note] = (await pass(7), await summariesDue(desk));
  expect(note).toBeUndefined();
  expect(sender.kept.length - before).toBe(1);
});

test("a summary is on nobody's list, and no letter of a day", async () => {
  const { desk, pass } = await deskInTime();
  await post(desk, { sheets: [device("FM-100")] });
  const before = await readPeople(desk.store, desk.clock.now());
  await pass(7);
  expect((await readPeople(desk.store, desk.clock.now())).length).toBe(before.length);
});

test("the manager of a project is told of an order that was withdrawn, and of words as of no slip", async () => {
  const { buyer: _, ...named } = weekly;
  const ofProject: Managing = { ...named, project: "Mill Race Baths", waits: false };
  const { desk, pass } = await deskInTime([ofProject, { ...ofProject, project: "Larkspur Library" }]);
  const first = await post(desk, { sheets: [device("FM-100")] });
  await post(desk, { text: "Please engrave it in red.", to: first });
  await post(desk, { sheets: [device("FM-100", "SOUTH", "T-2")] });
  const other = await post(desk, { sheets: [device("QX-551", "WEST")] });
  await post(desk, { text: "CANCEL order", to: other });
  const [week, ...more] = await pass(8);
  expect(more).toEqual([]);
  expect(week?.text).toContain("- 1 withdrawn: QX-551");
  expect(week?.text).toContain("FM-100: for one of us");
  expect(week?.text).not.toContain("Words of an earlier letter");
});

import { simpleParser } from "mailparser";
import { expect, test } from "vitest";
import { readPeriod } from "../../src/audit/period.ts";
import { periodText } from "../../src/audit/text.ts";
import { calendarOf } from "../../src/calendar/business-days.ts";
import { takeNote } from "../../src/intake/check-note.ts";
import { dayLettersDue } from "../../src/intake/day-letter.ts";
import type { Desk } from "../../src/intake/desk.ts";
import { takeDue } from "../../src/intake/take.ts";
import { readPeople } from "../../src/intake/tell-people.ts";
import type { Sending } from "../../src/ports/sender.ts";
import { runWorker } from "../../src/worker/worker.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";
import { post } from "../make/thread.ts";

const calendar = calendarOf({
  timeZone: "America/Chicago",
  place: { country: "US" },
  closed: [{ from: "2026-11-27", to: "2026-11-27" }],
});
const odile = { name: "Odile Marchand", address: "odile@quillgate.example" };
const bram = { name: "Bram Castle", address: "bram@quillgate.example" };
const friday = { sheets: [{ mark: "P-1", legend: ["SALONA"], fill: { order: "FM-80" } }] } as const;

interface Told {
  readonly at: string;
  readonly to: string;
  readonly subject: string;
  readonly text: string;
  readonly html: string;
}

/** A desk that tells two people of each day at seven, where it is six hours behind UTC. */
async function deskInTime(begin: string, says?: () => Sending) {
  const sender = keepingSender(says);
  let now = new Date(begin);
  const made = await temporaryDesk({ sender, clock: { now: () => now } });
  const dayLetter = { at: "07:00", to: [odile, bram], calendar };
  const desk: Desk = { ...made, rules: { ...made.rules, dayLetter } };
  /** Sets the clock, has the worker look, and gives what it told. */
  const workAt = async (moment: string): Promise<Told[]> => {
    now = new Date(moment);
    const before = sender.kept.length;
    await runWorker(desk, [], { once: true, signal: new AbortController().signal });
    const told: Told[] = [];
    for (const { bytes, recipient } of sender.kept.slice(before)) {
      const { subject = "", text = "", html } = await simpleParser(Buffer.from(bytes));
      told.push({ at: moment, to: recipient, subject, text, html: html || "" });
    }
    // Each goes its own way, so who is told first is not set.
    return told.toSorted((one, other) => one.to.localeCompare(other.to));
  };
  return { desk, sender, workAt, set: (moment: string) => (now = new Date(moment)) };
}

test("on a Monday at seven each is told of Friday and the weekend, once, as text and as a page with the same tables", async () => {
  const { desk, workAt, set } = await deskInTime("2026-11-06T15:00:00Z");
  await post(desk, friday);
  set("2026-11-07T20:00:00Z"); // a Saturday
  await post(desk, { ...friday, subject: "Once more", sheets: [{ mark: "P-2", legend: ["POOL"] }] });
  expect(await workAt("2026-11-09T12:59:00Z")).toEqual([]);
  const told = await workAt("2026-11-09T13:00:00Z");
  expect(told.map(({ to }) => to)).toEqual([bram.address, odile.address]);
  const [, { subject, text, html } = { subject: "", text: "", html: "" }] = told;
  expect(subject).toBe("2026-11-06 to 2026-11-08: 2 letters, 1 slip");
  const days = { first: "2026-11-06", last: "2026-11-08" };
  const period = await readPeriod(desk.store.audited, days, calendar);
  expect(period.figures).toMatchObject({ letters: 2, slips: 1 });
  expect(text).toContain(periodText(period));
  expect(text).toMatch(/^Odile Marchand, this is how 2026-11-06 to 2026-11-08 went\.\n/);
  // The page has each cell of each table.
  for (const cell of [
    "usual for a business day, by the 20 before",
    "distinct slips",
    "spelling",
    "withdrawn",
  ])
    expect([text.includes(cell), html.includes(`>${cell}</t`)]).toEqual([true, true]);
  expect(html).not.toContain("<svg");
  expect(await workAt("2026-11-09T13:01:00Z")).toEqual([]);
  expect(await workAt("2026-11-09T23:00:00Z")).toEqual([]);
  expect((await workAt("2026-11-10T13:00:00Z")).map((one) => one.subject)).toEqual(
    Array(2).fill("2026-11-09: 0 letters, 0 slips"),
  );
  expect((await desk.store.verify()).differ).toEqual([]);
});

test("nobody is told on weekends, holidays and closing days; the next letter tells of them too", async () => {
  const { workAt } = await deskInTime("2026-11-25T15:00:00Z");
  // Thanksgiving is the fourth Thursday of November: 5 U.S.C. § 6103(a), from memory.
  for (const day of ["26", "27", "28", "29"]) expect(await workAt(`2026-11-${day}T18:00:00Z`)).toEqual([]);
  const [monday] = await workAt("2026-11-30T13:00:00Z");
  expect(monday?.subject).toBe("2026-11-25 to 2026-11-29: 0 letters, 0 slips");
});

test("a desk that was off at the hour tells when it is back the same day, and on the next day no more", async () => {
  const { workAt } = await deskInTime("2026-11-16T15:00:00Z");
  expect((await workAt("2026-11-17T22:30:00Z")).map(({ to }) => to)).toEqual([bram.address, odile.address]);
  // All of Wednesday it is off. Thursday's letter tells of Wednesday alone.
  expect(await workAt("2026-11-19T12:00:00Z")).toEqual([]);
  expect((await workAt("2026-11-19T13:00:00Z")).map((one) => one.subject)).toEqual(
    Array(2).fill("2026-11-18: 0 letters, 0 slips"),
  );
});

test("the hour is that of the desk's clocks on either side of a change of them", async () => {
  // Energy Policy Act of 2005, §110: the first Sunday of November, here the 1st.
  const { workAt } = await deskInTime("2026-10-29T15:00:00Z");
  expect(await workAt("2026-10-30T11:59:00Z")).toEqual([]);
  expect(await workAt("2026-10-30T12:00:00Z")).toHaveLength(2);
  expect(await workAt("2026-11-02T12:59:00Z")).toEqual([]);
  expect(await workAt("2026-11-02T13:00:00Z")).toHaveLength(2);
});

test("a death between making the note and sending the letter loses none and sends none twice", async () => {
  const { desk, sender, workAt, set } = await deskInTime("2026-11-10T13:00:00Z");
  const dying: Desk = {
    ...desk,
    store: {
      ...desk.store,
      letters: { ...desk.store.letters, settle: () => Promise.reject(new Error("dead")) },
    },
  };
  const [note] = await dayLettersDue(desk);
  if (note === undefined) throw new Error("nothing is due");
  await expect(takeNote(dying, note)).rejects.toThrow("dead");
  expect(sender.kept).toEqual([]);
  // Another worker has the same note, and the lease of the dead one is not over.
  expect((await workAt("2026-11-10T13:00:30Z")).map(({ to }) => to)).toEqual([bram.address]);
  expect((await workAt("2026-11-10T13:30:00Z")).map(({ to }) => to)).toEqual([odile.address]);
  set("2026-11-10T14:00:00Z");
  await Promise.all([takeNote(desk, note), takeNote(desk, note)]);
  while (await takeDue(desk));
  expect(sender.kept).toHaveLength(2);
});

test("a letter of which nobody knows whether it went is looked for, and not sent twice", async () => {
  let isFirst = true;
  const { sender, workAt } = await deskInTime("2026-11-10T12:00:00Z", () => {
    const says: Sending = isFirst
      ? { kind: "unknown", words: "the line went dead" }
      : { kind: "sent", words: "250" };
    isFirst = false;
    return says;
  });
  // Either of the two may be the first.
  const first = await workAt("2026-11-10T13:00:00Z");
  expect(first).toHaveLength(1);
  // After the grace it is looked for, is not found, and is sent.
  const both = [...first, ...(await workAt("2026-11-10T13:10:00Z"))].map(({ to }) => to);
  expect(both.toSorted()).toEqual([bram.address, odile.address].toSorted());
  expect(await workAt("2026-11-10T15:00:00Z")).toEqual([]);
  expect(sender.kept).toHaveLength(2);
});

test("a letter about a day is on nobody's list, and no letter of a day", async () => {
  const { desk, workAt } = await deskInTime("2026-11-09T15:00:00Z");
  await post(desk, friday);
  const before = await readPeople(desk.store, desk.clock.now());
  expect(await workAt("2026-11-10T13:00:00Z")).toHaveLength(2);
  expect((await readPeople(desk.store, desk.clock.now())).length).toBe(before.length);
  const days = { first: "2026-11-10", last: "2026-11-10" };
  expect((await readPeriod(desk.store.audited, days, calendar)).figures.letters).toBe(0);
});

test("somebody whom the settings no longer name is not told", async () => {
  const { desk, sender } = await deskInTime("2026-11-10T13:00:00Z");
  const [note] = await dayLettersDue(desk);
  if (note === undefined || desk.rules.dayLetter === undefined) throw new Error("nothing is due");
  const rules = { ...desk.rules, dayLetter: { ...desk.rules.dayLetter, to: [bram] } };
  await takeNote({ ...desk, rules }, note);
  while (await takeDue({ ...desk, rules }));
  expect(sender.kept).toEqual([]);
});

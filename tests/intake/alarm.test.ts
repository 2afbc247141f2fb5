import { simpleParser } from "mailparser";
import { expect, test } from "vitest";
import { alarmOf, sendAlarms } from "../../src/intake/alarm.ts";
import type { Report } from "../../src/judging/report.ts";
import type { Sending } from "../../src/ports/sender.ts";
import type { Alarm } from "../../src/ports/store.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";
import { reportOn } from "../make/report.ts";
import { completeOrder, device } from "../make/sample.ts";

const room = "engraving@quillgate.example";
const released = { revision: 1, at: "2026-11-08T15:00:00Z", on: "2026-11-08", by: "Rosa", pieces: [] };
const asReleased = (report: Report): Report => ({
  ...report,
  orders: report.orders.map((order) => ({ ...order, released })),
});

test("the room is told of a released order that a letter leaves otherwise than passed, each reason once", () => {
  const long = [1, 2].map((n) =>
    device({ id: `1/${n}`, position: n, file: "a.pdf" }, { "1": ["RECEPTION", ""] }),
  );
  const report = reportOn(long);
  const says = alarmOf(asReleased(report))?.flatMap((one) => one.says) ?? [];
  // two sheets have the second fault
  expect(says).toEqual([
    "Is the plate sheet for S-104 still to come, or do its devices stand alone? 2 device sheets came for it: a.pdf and a.pdf.",
    "Row 1 of button 1 has 9 characters; 8 can be cut.",
  ]);
  expect(alarmOf(asReleased(report))).toMatchObject([{ order: "BW-2207", on: "2026-11-08" }]);
  expect(alarmOf(report)).toBeUndefined();
  expect(alarmOf(asReleased(reportOn(completeOrder())))).toBeUndefined();
});

const alarm: Alarm = [
  { order: `BW-${"2".repeat(60)}`, on: "2026-11-08", says: ["Row 1 is too long.", "x".repeat(400)] },
  { order: "GC-1", on: "2026-11-07", says: ["Its finish changed."] },
];

/** A desk that has an alarm to send: what it sends, and which alarms it puts back. */
async function alarmed(says: Sending["kind"] | "fails", letters: { letter: number; from?: string }[]) {
  const made = await temporaryDesk();
  const dropped: number[] = [];
  const keeping = keepingSender(() => ({ kind: says === "fails" ? "sent" : says, words: "451" }));
  const sender =
    says === "fails" ? { ...keeping, send: () => Promise.reject(new Error("no line")) } : keeping;
  const people = {
    ...made.store.people,
    takeAlarms: () => Promise.resolve(letters.map((one) => ({ ...one, alarm }))),
    dropAlarm: (letter: number) => Promise.resolve(void dropped.push(letter)),
  };
  const desk = {
    ...made,
    sender,
    store: { ...made.store, people },
    rules: { ...made.rules, room },
  };
  return { desk, dropped, kept: keeping.kept };
}

test("an alarm names the letter, its writer, the orders and what touches them, none of it at length", async () => {
  const { desk, kept } = await alarmed("sent", [
    { letter: 7, from: "ines@brightwire.example" },
    { letter: 8 },
  ]);
  expect(await sendAlarms(desk)).toBe(true);
  expect(kept.map(({ recipient }) => recipient)).toEqual([room, room]);
  const [first, second] = await Promise.all(kept.map(({ bytes }) => simpleParser(Buffer.from(bytes))));
  const text = first?.text?.replaceAll(/\s+/g, " ") ?? "";
  expect(text).toContain("Stop, please: letter 7 of ines@brightwire.example touches what was released.");
  expect(text).toMatch(
    /Order BW-2{23}…2{13}, released on 2026-11-08: - Row 1 is too long\. - x{199}…x{100} /,
  );
  expect(text).not.toContain("x".repeat(301));
  expect(text).toContain("Order GC-1, released on 2026-11-07: - Its finish changed.");
  expect(first?.subject).toMatch(/^STOP: order BW-2{23}…2{13}, GC-1 has changed$/);
  expect(first?.headers.get("auto-submitted")).toBe("auto-generated");
  expect(second?.text).toContain("letter 8 of no single sender touches");
});

test.each<[Sending["kind"] | "fails", boolean, number[]]>([
  ["sent", true, []],
  // it may have gone, and is not sent again
  ["unknown", true, []],
  ["later", false, [7]],
  ["refused", false, [7]],
  ["fails", false, [7]],
])("an alarm that is %s: told %j, put back %j", async (says, told, back) => {
  const { desk, dropped } = await alarmed(says, [{ letter: 7 }]);
  expect(await sendAlarms(desk)).toBe(told);
  expect(dropped).toEqual(back);
});

test("of several letters each that the room could not be told of is told later, and no other waits for it", async () => {
  const { desk, dropped } = await alarmed("later", [{ letter: 7 }, { letter: 8 }]);
  expect(await sendAlarms(desk)).toBe(false);
  expect(dropped).toEqual([7, 8]);
  const other = await alarmed("sent", [{ letter: 7 }, { letter: 8 }]);
  let tries = 0;
  const sender = keepingSender(() =>
    ++tries === 1 ? { kind: "refused", words: "550" } : { kind: "sent", words: "250" },
  );
  expect(await sendAlarms({ ...other.desk, sender })).toBe(false);
  expect(other.dropped).toEqual([7]);
  expect(sender.kept).toHaveLength(1);
});

test("nothing is sent where there is no room to tell, or nothing to tell it", async () => {
  const { desk, kept } = await alarmed("sent", [{ letter: 7 }]);
  const { room: _room, ...rules } = desk.rules;
  expect(await sendAlarms({ ...desk, rules })).toBe(false);
  expect(kept).toEqual([]);
  expect(await sendAlarms((await alarmed("sent", [])).desk)).toBe(false);
});

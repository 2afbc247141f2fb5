import { expect, test } from "vitest";
import { putAside } from "../../src/intake/settle.ts";
import { temporaryDesk } from "../make/desk.ts";
import { aloneAt, quickReader, takeQuick } from "../make/quick.ts";

const rosa = { name: "Rosa Imhoff", why: "called" };
const [monday, tuesday, wednesday, thursday] = [9, 10, 11, 12].map(
  (day) => new Date(`2026-11-${String(day).padStart(2, "0")}T06:00:00Z`),
) as [Date, Date, Date, Date];

/** A desk whose clock can be set, and what waited unread when some days had ended. */
async function deskInTime() {
  let now = monday;
  const desk = await temporaryDesk({ reader: quickReader, clock: { now: () => now } });
  let came = 0;
  return {
    desk,
    take: async (at: Date, text: string, ...marks: string[]): Promise<void> => {
      now = at;
      const sheets = marks.map((mark) => aloneAt(mark, "ENTRY"));
      await takeQuick(desk, { id: `${++came}`, dated: at, receivedAt: at, text, sheets });
    },
    aside: async (at: Date, letter: number): Promise<void> => {
      now = at;
      await putAside(desk, letter, rosa);
    },
    unreadAt: async (end: Date) => (await desk.store.audited(monday, end)).unread,
  };
}

test("words about an order wait unread since they came, whatever comes after them", async () => {
  const { take, unreadAt } = await deskInTime();
  await take(monday, "", "T-9");
  await take(tuesday, "Please engrave order BW-2207 in red.");
  await take(wednesday, "", "T-10");
  expect(await unreadAt(tuesday)).toEqual([]);
  expect(await unreadAt(wednesday)).toEqual([{ letter: 2, number: "BW-2207", since: tuesday }]);
  expect(await unreadAt(thursday)).toEqual([{ letter: 2, number: "BW-2207", since: tuesday }]);
});

test("words about no order wait unread since they came, until they are put aside", async () => {
  const { take, aside, unreadAt } = await deskInTime();
  await take(monday, "Do you cut brass?");
  await aside(wednesday, 1);
  expect(await unreadAt(monday)).toEqual([]);
  expect(await unreadAt(wednesday)).toEqual([{ letter: 1, since: monday }]);
  expect(await unreadAt(thursday)).toEqual([]);
});

import { expect, test } from "vitest";
import { readPeriod } from "../../src/audit/period.ts";
import { calendarOf } from "../../src/calendar/business-days.ts";
import { answerByLink } from "../../src/intake/by-link.ts";
import { takeNote } from "../../src/intake/check-note.ts";
import { takeDue, takeLetter } from "../../src/intake/take.ts";
import { temporaryDesk } from "../make/desk.ts";
import { letterOf, post } from "../make/thread.ts";

const calendar = calendarOf({ timeZone: "America/Chicago" });
const monday = { first: "2026-11-09", last: "2026-11-09" };
const unknownWord = { mark: "P-1", legend: ["SALONA"], fill: { order: "FM-80" } } as const;

test("a slip that two letters repeat counts once, and a day recounted after later letters is the same", async () => {
  let now = new Date("2026-11-09T15:00:00Z");
  const desk = { ...(await temporaryDesk()), clock: { now: () => now } };
  await post(desk, { sheets: [unknownWord] });
  now = new Date("2026-11-09T17:00:00Z");
  await post(desk, { subject: "Once more", sheets: [unknownWord] });
  const day = await readPeriod(desk.store.audited, monday, calendar);
  // By hand: one order, asked about one word, in two letters.
  expect(day.figures).toMatchObject({ letters: 2, opened: 1, rightAtFirst: 0, passed: 0, slips: 1 });
  expect(day.figures.questions).toMatchObject([{ asked: 1, yes: 0, corrected: 0, open: 1 }]);
  now = new Date("2026-11-10T17:00:00Z");
  await post(desk, { subject: "Mended", sheets: [{ ...unknownWord, legend: ["POOL"] }] });
  expect(await readPeriod(desk.store.audited, monday, calendar)).toEqual(day);
  // It is no slip of the day on which it was mended.
  const tuesday = await readPeriod(desk.store.audited, { first: "2026-11-10", last: "2026-11-10" }, calendar);
  expect(tuesday.audited.slips.map(({ problem }) => problem.check)).not.toContain("spelling");
  const both = await readPeriod(desk.store.audited, { first: "2026-11-09", last: "2026-11-10" }, calendar);
  expect(both.figures.questions).toMatchObject([{ asked: 1, corrected: 1, open: 0 }]);
});

test("a question whose sheet is withdrawn is told apart from one whose sheet is mended", async () => {
  let now = new Date("2026-11-09T15:00:00Z");
  const desk = { ...(await temporaryDesk()), clock: { now: () => now } };
  const asked = await post(desk, {
    sheets: [
      { mark: "P-1", legend: ["SALONA"], fill: { order: "FM-80" } },
      { mark: "P-2", legend: ["KICHEN"], fill: { order: "FM-80" } },
      { mark: "P-3", legend: ["PANTRYY"], fill: { order: "FM-80" } },
    ],
  });
  now = new Date("2026-11-09T16:00:00Z");
  await post(desk, { text: "CANCEL P-1", date: "2026-11-09T15:55:00Z", to: asked });
  now = new Date("2026-11-09T17:00:00Z");
  await post(desk, {
    date: "2026-11-09T16:55:00Z",
    sheets: [{ mark: "P-2", legend: ["KITCHEN"], fill: { order: "FM-80" } }],
  });
  const { figures } = await readPeriod(desk.store.audited, monday, calendar);
  expect(figures.questions).toEqual([
    { check: "spelling", asked: 3, yes: 0, decided: 0, corrected: 1, withdrawn: 1, open: 1 },
  ]);
});

test("a YES that a buyer clicks on the page is his, and what one of us says is ours", async () => {
  const desk = await temporaryDesk();
  const sheet = (mark: string, legend: string) => ({ mark, legend: [legend], fill: { order: "FM-80" } });
  await post(desk, { sheets: [sheet("P-1", "SALONA"), sheet("P-2", "KICHEN")] });
  const [order] = await desk.store.orders.named("FM-80");
  if (order === undefined) throw new Error("no order");
  const [first, second] = order.questions.map(({ number }) => number);
  const behind = { letter: 1, recipient: "greta@fallowmere.example", orders: [order] };
  await answerByLink(desk, behind, order, [{ kind: "yes", number: first ?? 0 }]);
  await takeNote(desk, {
    id: "1",
    buyer: order.buyer,
    order: order.number,
    by: "Rosa Imhoff",
    why: "she says so",
    acts: [{ kind: "yes", number: second ?? 0 }],
  });
  const { figures } = await readPeriod(desk.store.audited, monday, calendar);
  expect(figures.questions).toMatchObject([{ check: "spelling", asked: 2, yes: 1, decided: 1 }]);
});

test("a letter that is held has no verdict of its own, and one that is let in pairs with its order under its own number", async () => {
  const desk = await temporaryDesk();
  const sheets = [{ mark: "P-1", legend: ["POOL"], fill: { order: "FM-80" } }];
  await post(desk, { sheets });
  const stranger = await post(desk, { from: "Dale <dale@stranger.example>", sheets });
  const machine = await post(desk, { from: "Fallowmere <no-reply@fallowmere.example>", sheets });
  expect([stranger.state, machine.state]).toEqual(["sent", "held"]);
  const { audited, figures } = await readPeriod(desk.store.audited, monday, calendar);
  expect(audited.letters.map(({ became, verdict }) => [became, verdict])).toEqual([
    ["answered", "pass"],
    ["held", undefined],
    ["held", undefined],
  ]);
  expect(figures).toMatchObject({ letters: 3, held: 2, silent: 0 });
  expect(figures.forPerson.map(({ name }) => name)).toEqual(["letter 2: held", "letter 3: held"]);
  expect(audited.pairs).toMatchObject([{ letter: 1, number: "FM-80", revision: 1, verdict: "pass" }]);
  const by = { name: "Rosa Imhoff", why: "she works there" };
  await desk.store.letters.letIn(
    machine.letter,
    { sender: "greta@fallowmere.example" },
    by,
    desk.clock.now(),
  );
  while (await takeDue(desk));
  const later = await readPeriod(desk.store.audited, monday, calendar);
  expect(later.audited.pairs.map(({ letter }) => letter)).toEqual([1, 3]);
  expect(later.figures.forPerson.map(({ name }) => name)).toEqual(["letter 2: held"]);
});

test("a letter that came on one day and was judged on the next has no sheets and no verdict on the first", async () => {
  let now = new Date("2026-11-09T20:00:00Z");
  const desk = { ...(await temporaryDesk()), clock: { now: () => now } };
  const letter = await letterOf({ sheets: [unknownWord] });
  const came = now;
  now = new Date("2026-11-10T15:00:00Z");
  await takeLetter(desk, letter, came);
  const { audited } = await readPeriod(desk.store.audited, monday, calendar);
  expect(audited.letters).toEqual([
    { letter: 1, receivedAt: came, from: "greta@fallowmere.example", subject: "Stations", sheets: 0 },
  ]);
  const both = await readPeriod(desk.store.audited, { first: "2026-11-09", last: "2026-11-10" }, calendar);
  expect(both.audited.letters).toMatchObject([{ sheets: 1, became: "answered", verdict: "confirm" }]);
});

import { simpleParser } from "mailparser";
import { expect, test } from "vitest";
import { calendarOf } from "../../src/calendar/business-days.ts";
import { fillSheet } from "../../src/drawing/fill-sheet.ts";
import { takeNote } from "../../src/intake/check-note.ts";
import type { Desk } from "../../src/intake/desk.ts";
import { remindersOf } from "../../src/intake/remind.ts";
import { takeDue, takeLetter } from "../../src/intake/take.ts";
import { readPeople, sendNotice } from "../../src/intake/tell-people.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";
import { answerTo, post } from "../make/thread.ts";

const plate = {
  mark: "P-1",
  legend: ["SALON"],
  kind: "plate",
  fill: { order: "FM-80", gangs: "2" },
} as const;
const deviceIn = (position: string, legend = "NORTH") => ({
  mark: "P-1",
  legend: [legend],
  fill: { order: "FM-80", standing: "in-plate", gangs: "2", position, layout: "D2" },
});

async function deskInTime(begin: string) {
  const sender = keepingSender();
  let now = new Date(begin);
  const made = await temporaryDesk({ sender, clock: { now: () => now } });
  const calendar = calendarOf({
    timeZone: made.timeZone,
    closed: [{ from: "2026-11-26", to: "2026-11-27" }],
  });
  const desk: Desk = { ...made, rules: { ...made.rules, reminding: { ...calendar, remindAfter: [2, 5] } } };
  const look = async (): Promise<void> => {
    for (const note of await remindersOf(desk)) await takeNote(desk, note);
    while (await takeDue(desk));
  };
  /** Lets days go by, and looks every six hours. Gives the days on which something was sent, and its subjects. */
  const pass = async (days: number): Promise<string[]> => {
    const sent: string[] = [];
    for (let quarter = 0; quarter < days * 4; quarter++) {
      now = new Date(now.getTime() + 6 * 3_600_000);
      const before = sender.kept.length;
      await look();
      for (const { bytes } of sender.kept.slice(before))
        sent.push(`${now.toISOString().slice(0, 10)} ${(await simpleParser(Buffer.from(bytes))).subject}`);
    }
    return sent;
  };
  return {
    desk,
    sender,
    look,
    pass,
    forward: (hours: number) => (now = new Date(now.getTime() + hours * 3_600_000)),
  };
}

test("a month of an order whose sheets do not come: two reminders, then the people's list, then silence", async () => {
  const { desk, pass } = await deskInTime("2026-11-09T15:00:00Z");
  await post(desk, { sheets: [plate, deviceIn("1")] });
  expect(await pass(31)).toEqual([
    "2026-11-11 Reminder: order FM-80, 1 sheet to come",
    "2026-11-16 Last reminder: order FM-80, 1 sheet to come",
  ]);
  const [waiting] = await readPeople(desk.store, desk.clock.now());
  expect(waiting).toMatchObject({ what: "order", order: "FM-80" });
  expect(waiting?.points.map(({ says }) => says)).toEqual([
    "nobody answers, and the last reminder has gone; still to come: 1 of its sheets",
  ]);
  expect((await desk.store.verify()).differ).toEqual([]);
});

test("a letter of the order begins anew, a sheet that completes it ends all reminders and clears the list", async () => {
  const { desk, pass } = await deskInTime("2026-11-09T15:00:00Z");
  await post(desk, { sheets: [plate] });
  expect(await pass(3)).toHaveLength(1);
  await post(desk, { sheets: [deviceIn("1")] });
  expect(await pass(25)).toEqual([
    expect.stringMatching(/^2026-11-16 Reminder: /),
    expect.stringMatching(/^2026-11-19 Last reminder: /),
  ]);
  await post(desk, { sheets: [deviceIn("2", "SOUTH")] });
  expect(await pass(20)).toEqual([]);
  expect(await readPeople(desk.store, desk.clock.now())).toEqual([]);
});

test("nobody is reminded while the desk is closed", async () => {
  // Thursday and Friday are closed days of ours, and then comes the weekend.
  const { desk, pass } = await deskInTime("2026-11-24T15:00:00Z");
  await post(desk, { sheets: [plate] });
  expect(await pass(8)).toEqual([expect.stringMatching(/^2026-11-30 Reminder: /)]);
});

test("a death before the reminder is sent costs none and doubles none", async () => {
  const { desk, sender } = await deskInTime("2026-11-09T15:00:00Z");
  await post(desk, { sheets: [plate] });
  const later: Desk = { ...desk, clock: { now: () => new Date("2026-11-12T15:00:00Z") } };
  const before = sender.kept.length;
  const notes = await remindersOf(later);
  expect(notes).toHaveLength(1);
  // Two workers find the same at the same time, and one of them dies before it sends.
  for (const note of [...notes, ...notes]) await takeNote(later, note);
  expect(sender.kept).toHaveLength(before);
  while (await takeDue(later));
  expect(sender.kept).toHaveLength(before + 1);
  expect(await remindersOf(later)).toEqual([]);
});

test("an order that has moved on before its reminder was written is not reminded of", async () => {
  const { desk, sender } = await deskInTime("2026-11-09T15:00:00Z");
  await post(desk, { sheets: [plate] });
  const later: Desk = { ...desk, clock: { now: () => new Date("2026-11-12T15:00:00Z") } };
  const notes = await remindersOf(later);
  await post(later, { sheets: [deviceIn("1")] });
  const before = sender.kept.length;
  for (const note of notes) await takeNote(later, note);
  while (await takeDue(later));
  expect(sender.kept).toHaveLength(before);
});

test("an order that nobody answers is told of by the notice, once, until somebody puts it aside", async () => {
  const { desk: made, sender, pass, forward } = await deskInTime("2026-11-09T15:00:00Z");
  const desk: Desk = { ...made, rules: { ...made.rules, notice: "service@quillgate.example" } };
  await post(desk, { sheets: [plate, deviceIn("1")] });
  expect(await pass(8)).toHaveLength(2);
  expect(await sendNotice(desk)).toBe("nothing");
  await pass(7);
  expect(await sendNotice(desk)).toBe("told");
  const notice = await simpleParser(Buffer.from(sender.kept.at(-1)?.bytes ?? ""));
  expect(notice.subject).toBe("1 thing needs a person");
  expect(notice.text).toMatch(/NEW\s+1\. Order FM-80/);
  forward(2);
  expect(await sendNotice(desk)).toBe("nothing");

  const [waiting] = await readPeople(desk.store, desk.clock.now());
  const [letter = 0] = waiting?.letters ?? [];
  expect(waiting?.points).toEqual([{ letter, says: expect.stringContaining("nobody answers") }]);
  const by = { name: "Rosa Imhoff", why: "called: the sheets come in January" };
  await desk.store.letters.putAside(letter, by, desk.clock.now());
  expect(await readPeople(desk.store, desk.clock.now())).toEqual([]);
  expect(await pass(20)).toEqual([]);
  expect(await readPeople(desk.store, desk.clock.now())).toEqual([]);
});

test("a letter that comes before the notice takes the order off the list, and nobody is told", async () => {
  const { desk: made, pass } = await deskInTime("2026-11-09T15:00:00Z");
  const desk: Desk = { ...made, rules: { ...made.rules, notice: "service@quillgate.example" } };
  await post(desk, { sheets: [plate] });
  await pass(15);
  expect(await readPeople(desk.store, desk.clock.now())).toHaveLength(1);
  await post(desk, { sheets: [deviceIn("1")] });
  expect(await readPeople(desk.store, desk.clock.now())).toEqual([]);
  expect(await sendNotice(desk)).toBe("nothing");
});

test("a reply to a reminder answers what the order was asked", async () => {
  const { desk, forward } = await deskInTime("2026-11-09T15:00:00Z");
  await post(desk, { sheets: [{ mark: "B-1", legend: ["SALONA"] }] });
  forward(48);
  const [note] = await remindersOf(desk);
  if (note === undefined) throw new Error("no reminder is due");
  const { letter } = (await takeNote(desk, note)) as { readonly letter: number };
  while (await takeDue(desk));
  const reply = await post(desk, { to: await desk.store.letters.read(letter), text: "1 YES" });
  expect(reply).toMatchObject({ verdict: "pass", state: "sent", orders: ["FM-72"] });
  expect(await remindersOf(desk)).toEqual([]);
});

test("a reminder encloses the missing sheets as the answer did, and the order passes when one is sent back filled in", async () => {
  const { desk, sender, pass } = await deskInTime("2026-11-09T15:00:00Z");
  await post(desk, { sheets: [plate, deviceIn("1")] });
  const answer = await simpleParser(Buffer.from(sender.kept.at(-1)?.bytes ?? ""));
  expect(await pass(3)).toHaveLength(1);
  const reminder = await simpleParser(Buffer.from(sender.kept.at(-1)?.bytes ?? ""));
  expect(reminder.attachments.map(({ filename }) => filename)).toEqual(["P-1 position 2.pdf"]);
  const [missing] = reminder.attachments;
  const answered = answer.attachments.find(({ filename }) => filename === missing?.filename);
  expect(missing?.content.equals(answered?.content ?? Buffer.of())).toBe(true);
  expect(reminder.text).toContain(
    "\nEnclosed: P-1 position 2.pdf. It is the missing sheet, with what your other sheets say. Check that, fill in the rest on a computer, save, and send it to us.\n",
  );
  const values = { layout: "D2", button1_row1: "SOUTH", button2_row1: "OFF" };
  const bytes = await fillSheet(new Uint8Array(missing?.content ?? []), values);
  const done = await post(desk, { date: "2026-11-12T16:00:00Z", files: [{ file: "south.pdf", bytes }] });
  expect(done).toMatchObject({ verdict: "pass", orders: ["FM-80"] });
});

test("a buyer is not reminded of what a person looks at", async () => {
  const { desk, sender, pass } = await deskInTime("2026-11-09T15:00:00Z");
  const notes = "Please engrave button 2 in red and add one spare";
  const sent = await post(desk, { sheets: [{ mark: "B-1", legend: ["RECEPTION"], fill: { notes } }] });
  expect(sent.problems.map(({ check, verdict }) => [check, verdict])).toEqual([
    ["row-too-long", "fail"],
    ["notes-carry-orders", "person"],
  ]);
  expect(await answerTo(desk, sent)).toMatch(
    /^FAIL: 1 to fix, 1 point for a person before order FM-72 can be engraved\./,
  );
  expect(await pass(3)).toEqual(["2026-11-11 Reminder: order FM-72, 1 to fix"]);
  const { text } = await simpleParser(Buffer.from(sender.kept.at(-1)?.bytes ?? ""));
  expect(text).not.toContain("PLEASE CONFIRM");
  expect(text).not.toContain("red");
});

test("a reminder that waits for no sheet encloses none", async () => {
  const { desk, sender, pass } = await deskInTime("2026-11-09T15:00:00Z");
  await post(desk, { sheets: [{ mark: "B-1", legend: ["SALONA"] }] });
  expect(await pass(3)).toHaveLength(1);
  const { attachments } = await simpleParser(Buffer.from(sender.kept.at(-1)?.bytes ?? ""));
  expect(attachments).toEqual([]);
});

test("a death after the server has the reminder, and before the record knows, sends it once", async () => {
  const { desk, sender, look, forward } = await deskInTime("2026-11-09T15:00:00Z");
  await post(desk, { sheets: [plate] });
  forward(48);
  const before = sender.kept.length;
  const [note] = await remindersOf(desk);
  if (note === undefined) throw new Error("no reminder is due");
  await takeNote(desk, note);
  // From the moment on at which it is sent, this worker can write nothing any more.
  const { letters } = desk.store;
  const isGone = (): boolean => sender.kept.length > before;
  const dying: Desk = {
    ...desk,
    store: {
      ...desk.store,
      letters: {
        ...letters,
        mark: (...mark) => (isGone() ? Promise.reject(new Error("dead")) : letters.mark(...mark)),
        sent: (...sent) => (isGone() ? Promise.reject(new Error("dead")) : letters.sent(...sent)),
      },
    },
  };
  await expect(takeDue(dying)).rejects.toThrow("dead");
  expect(sender.kept).toHaveLength(before + 1);
  for (let hour = 0; hour < 6; hour++) {
    forward(1);
    await look();
  }
  expect(sender.kept).toHaveLength(before + 1);
  expect((await letters.states()).sent).toBe(2);
});

test("nobody is reminded at night", async () => {
  const { desk, sender, look, forward } = await deskInTime("2026-11-09T15:00:00Z");
  await post(desk, { sheets: [plate, deviceIn("1")] });
  await look();
  const before = sender.kept.length;
  // To the third day, hour by hour from its midnight in Chicago.
  forward(39);
  const hours: number[] = [];
  for (let hour = 0; hour < 24; hour++) {
    await look();
    if (sender.kept.length > before + hours.length) hours.push(hour);
    forward(1);
  }
  expect(hours).toEqual([8]);
});

test("of orders that have waited long before reminders are switched on, somebody is told, and no buyer", async () => {
  const { desk, sender, pass, forward } = await deskInTime("2026-08-03T15:00:00Z");
  await post(desk, { sheets: [plate, deviceIn("1")] });
  await post(desk, { sheets: [{ mark: "B-1", legend: ["SALONA"] }] });
  const before = sender.kept.length;
  forward(24 * 99);
  expect(await pass(40)).toEqual([]);
  expect(sender.kept).toHaveLength(before);
  const waiting = await readPeople(desk.store, desk.clock.now());
  expect(waiting.map(({ order, points }) => [order, points.map(({ says }) => says)])).toEqual([
    ["FM-80", ["nothing has come for long; it was too late for a reminder; still to come: 1 of its sheets"]],
    ["FM-72", ["nothing has come for long; it was too late for a reminder"]],
  ]);
});

test.each([
  ["07:59", 0],
  ["08:00", 1],
  ["17:59", 1],
  ["18:00", 0],
])("at %s where the desk is, %d reminders are due", async (time, due) => {
  const { desk } = await deskInTime("2026-11-09T15:00:00Z");
  await post(desk, { sheets: [plate] });
  // Chicago is six hours behind in November.
  const now = new Date(Date.parse(`2026-11-12T${time}:00Z`) + 6 * 3_600_000);
  expect(await remindersOf({ ...desk, clock: { now: () => now } })).toHaveLength(due);
});

test("the first reminder says when the last one comes, and each that a machine wrote it", async () => {
  const { desk, sender, pass } = await deskInTime("2026-11-09T15:00:00Z");
  await post(desk, { sheets: [plate, deviceIn("1")] });
  await pass(8);
  const [first, last] = await Promise.all(
    sender.kept.slice(-2).map(({ bytes }) => simpleParser(Buffer.from(bytes))),
  );
  expect(first?.text?.replaceAll(/\s+/g, " ")).toContain(
    "If we hear nothing, the last reminder comes on Monday, November 16.",
  );
  expect(last?.text?.replaceAll(/\s+/g, " ")).toContain("This is our last reminder.");
  // RFC 3834 §5: auto-generated for what answers no letter.
  expect([first, last].map((one) => one?.headers.get("auto-submitted"))).toEqual([
    "auto-generated",
    "auto-generated",
  ]);
});

test("of two buyers whose orders have one number each is reminded of his own", async () => {
  const { desk } = await deskInTime("2026-11-09T15:00:00Z");
  await post(desk, { sheets: [plate] });
  const [order] = await desk.store.orders.named("FM-80");
  if (order === undefined) throw new Error("no order");
  const named = () =>
    Promise.resolve([{ ...order, buyer: "omar@oakmoor.example", changedAt: new Date(0) }, order]);
  const later: Desk = {
    ...desk,
    clock: { now: () => new Date("2026-11-12T15:00:00Z") },
    store: { ...desk.store, orders: { ...desk.store.orders, named } },
  };
  const [note] = await remindersOf(later);
  if (note === undefined) throw new Error("no reminder is due");
  const { letter } = (await takeNote(later, note)) as { readonly letter: number };
  expect(await desk.store.letters.read(letter)).toMatchObject({ state: "ready" });
});

test("a reminder names the project, and counts what is to be fixed apart from what is to be answered", async () => {
  const { desk, sender, pass } = await deskInTime("2026-11-09T15:00:00Z");
  await post(desk, { sheets: [{ mark: "B-1", legend: ["SALONA"], fill: { "bill.city": "" } }] });
  expect(await pass(3)).toEqual(["2026-11-11 Reminder: order FM-72, 1 to fix, 1 question"]);
  const { text = "" } = await simpleParser(Buffer.from(sender.kept.at(-1)?.bytes ?? ""));
  expect(text.replaceAll(/\s+/g, " ")).toContain("Order FM-72, Mill Race Baths, waits for you");
});

test("a note of the calendar says whether it reminds or calls for somebody", async () => {
  const { desk } = await deskInTime("2026-11-09T15:00:00Z");
  await post(desk, { sheets: [plate] });
  const due = async (now: string) => {
    const [note] = await remindersOf({ ...desk, clock: { now: () => new Date(now) } });
    return [note?.by, note?.why, note?.acts.map((act) => act.kind === "remind" && act.what)];
  };
  expect(await due("2026-11-12T15:00:00Z")).toEqual(["burin", "a reminder", ["remind"]]);
  expect(await due("2026-12-28T15:00:00Z")).toEqual(["burin", "nobody answers", ["person"]]);
});

/** A mail system's report that a letter of ours did not reach its recipient. */
function bounced(messageId: string): Uint8Array {
  return Buffer.from(
    `From: MAILER-DAEMON@mx.example\r\nTo: orders@quillgate.example\r\nMessage-ID: <${messageId.slice(1, 20)}.dsn@mx.example>\r\nSubject: Undelivered\r\nAuto-Submitted: auto-replied\r\nContent-Type: multipart/report; report-type=delivery-status; boundary="r"\r\n\r\n--r\r\n\r\nNo.\r\n--r\r\nContent-Type: message/delivery-status\r\n\r\nReporting-MTA: dns; mx.example\r\n\r\nFinal-Recipient: rfc822; greta@fallowmere.example\r\nAction: failed\r\nDiagnostic-Code: smtp; 550 no\r\n\r\n--r\r\nContent-Type: text/rfc822-headers\r\n\r\nMessage-ID: ${messageId}\r\n\r\n--r--\r\n`,
  );
}

const pointsAbout = async ({ store, clock }: Desk) =>
  (await readPeople(store, clock.now())).flatMap(({ what, order, points }) =>
    points.map(({ says }) => `${what} ${order}: ${says}`),
  );

test("nobody is reminded at an address from which our answer came back, and the order is on the list", async () => {
  const { desk, pass } = await deskInTime("2026-11-09T15:00:00Z");
  const first = await post(desk, { sheets: [plate, deviceIn("1")] });
  await takeLetter(desk, bounced(first.answer?.messageId ?? ""), desk.clock.now());
  expect(await pass(30)).toEqual([]);
  expect(await pointsAbout(desk)).toEqual([
    "undelivered FM-80: “Stations”: the answer could not be delivered",
    "order FM-80: our last letter did not arrive, so nobody is reminded; still to come: 1 of its sheets",
  ]);

  // Whoever writes again is reached again.
  await post(desk, { date: "2026-12-09T15:00:00Z", sheets: [deviceIn("1", "SOUTH")] });
  expect(await pass(3)).toHaveLength(1);
});

test("no second reminder goes to an address from which the first came back", async () => {
  const { desk, sender, pass } = await deskInTime("2026-11-09T15:00:00Z");
  await post(desk, { sheets: [plate, deviceIn("1")] });
  expect(await pass(3)).toHaveLength(1);
  await takeLetter(desk, bounced(sender.kept.at(-1)?.messageId ?? ""), desk.clock.now());
  expect(await pass(30)).toEqual([]);
  expect(await pointsAbout(desk)).toContain(
    "order FM-80: our last letter did not arrive, so nobody is reminded; still to come: 1 of its sheets",
  );
});

import { expect, test } from "vitest";
import { takeNote } from "../../src/intake/check-note.ts";
import type { Desk } from "../../src/intake/desk.ts";
import { takeDue } from "../../src/intake/take.ts";
import { readPeople } from "../../src/intake/tell-people.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { ordersInWords, rebuildOrders } from "../../src/store/rebuild.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import type { Act, Note } from "../../src/trade/note.ts";
import type { OrderRecord } from "../../src/trade/record.ts";
import { temporaryDesk, temporaryFolder } from "../make/desk.ts";
import { answerTo, post } from "../make/thread.ts";

const greta = "greta@fallowmere.example";
let noted = 0;

const noteOf = (...acts: Act[]): Note => ({
  id: `n${++noted}`,
  buyer: greta,
  order: "FM-80",
  by: "Rosa Imhoff",
  why: "Greta said so on the telephone",
  acts,
});

async function orderIn(desk: Desk, number = "FM-80"): Promise<OrderRecord> {
  const [order] = await desk.store.orders.named(number);
  if (order === undefined) throw new Error(`no order ${number}`);
  return order;
}

async function listed(desk: Desk): Promise<string[]> {
  const people = await readPeople(desk.store, desk.clock.now());
  return people.map(({ what, order, letters, points }) =>
    [
      what,
      order ?? letters.join(" "),
      ...points.map(({ number, letter }) => number ?? `letter ${letter}`),
    ].join(" "),
  );
}

const unknownWord = { mark: "P-1", legend: ["SALONA"], fill: { order: "FM-80" } } as const;

test("a question that one of us settles makes the order pass, and its sender is answered once", async () => {
  const desk = await temporaryDesk();
  const letter = await post(desk, { sheets: [unknownWord] });
  expect(letter.verdict).toBe("confirm");
  const [question] = (await orderIn(desk)).questions;
  const taken = await takeNote(desk, noteOf({ kind: "yes", number: question?.number ?? 0 }));
  expect(taken.kind).toBe("judged");
  expect(await orderIn(desk)).toMatchObject({ verdict: "pass", questions: [], revision: 2 });
  // The worker sends it.
  while (await takeDue(desk));
  const note = await desk.store.letters.read(letter.letter + 1);
  expect(note).toMatchObject({ state: "sent", verdict: "pass", orders: ["FM-80"] });
  const answer = await answerTo(desk, note);
  expect(answer).toContain("PASS: order FM-80 is complete");
  expect(answer).toMatch(/Settled: number 1 \(by Rosa Imhoff: “Greta said so\s+on\s+the\s+telephone”\)\./);
});

test("what needs a person whatever its sender replies is settled by one of us", async () => {
  const desk = await temporaryDesk();
  const asked = await post(desk, { sheets: [{ ...unknownWord, legend: ["MAIN", "SW"] }] });
  expect(asked.verdict).toBe("confirm");
  const [question] = (await orderIn(desk)).questions;
  expect(question?.problem.check).toBe("safety-wording");
  expect(await listed(desk)).toEqual([`order FM-80 ${question?.number}`]);
  const number = question?.number ?? 0;
  const replied = await post(desk, { text: `${number} YES`, to: asked });
  expect(replied.verdict).toBe("person");
  await takeNote(desk, noteOf({ kind: "yes", number }));
  // The words of the reply are still to be read.
  expect(await orderIn(desk)).toMatchObject({ verdict: "person" });
  expect(await listed(desk)).toEqual([`order FM-80 letter ${replied.letter}`]);
  await takeNote(desk, noteOf({ kind: "read", letter: replied.letter }));
  expect(await orderIn(desk)).toMatchObject({ verdict: "pass", carried: [] });
  expect(await listed(desk)).toEqual([]);
});

test("what stops an order is let stand if it can be cut, and not otherwise", async () => {
  const desk = await temporaryDesk();
  const fill = { order: "FM-80", "contact.phone": "12" };
  await post(desk, { sheets: [{ mark: "P-1", legend: ["A VERY LONG LEGEND"], fill }] });
  const { questions, verdict } = await orderIn(desk);
  expect(verdict).toBe("fail");
  const numberOf = (check: string): number =>
    questions.find(({ problem }) => problem.check === check)?.number ?? 0;
  const waive = (check: string) => takeNote(desk, noteOf({ kind: "waive", number: numberOf(check) }));
  expect(await waive("row-too-long")).toEqual({
    kind: "wrong",
    why: `point ${numberOf("row-too-long")} cannot be let stand: it could not be cut`,
  });
  expect(await takeNote(desk, noteOf({ kind: "yes", number: numberOf("phone-malformed") }))).toMatchObject({
    kind: "wrong",
    why: expect.stringContaining("--waive") as string,
  });
  expect(await waive("phone-malformed")).toMatchObject({ kind: "judged" });
  const after = await orderIn(desk);
  expect(after.problems.map(({ check }) => check)).not.toContain("phone-malformed");
  expect(after.verdict).toBe("fail");
  expect(await waive("phone-malformed")).toMatchObject({ kind: "wrong" });
});

test("words and a NO of one of us reach the sender, and the point stays open", async () => {
  const desk = await temporaryDesk();
  const { letter } = await post(desk, { sheets: [unknownWord] });
  const number = (await orderIn(desk)).questions[0]?.number ?? 0;
  await takeNote(desk, noteOf({ kind: "say", number, words: "Do you mean SALON A?" }));
  await takeNote(desk, noteOf({ kind: "no", number }));
  const answers = [letter + 1, letter + 2].map((one) => desk.store.letters.read(one));
  const [said, no] = await Promise.all(answers.map(async (one) => answerTo(desk, await one)));
  expect(said).toMatch(/About 1, Rosa Imhoff writes: “Do you mean SALON A\?”/);
  expect(no).toMatch(/1 is not right as it stands, says Rosa Imhoff: please send a corrected\s+sheet\./);
  expect(no).toContain("Still open: number 1.");
  expect((await orderIn(desk)).questions.map((one) => one.number)).toEqual([number]);
});

test("a buyer's reply to an answer that a note got is read as any reply", async () => {
  const desk = await temporaryDesk();
  const { letter } = await post(desk, { sheets: [unknownWord] });
  const number = (await orderIn(desk)).questions[0]?.number ?? 0;
  await takeNote(desk, noteOf({ kind: "say", number, words: "Is that a name?" }));
  while (await takeDue(desk));
  const note = await desk.store.letters.read(letter + 1);
  const reply = await post(desk, { text: `${number} YES`, to: note });
  expect(reply.verdict).toBe("pass");
});

const scan = { file: "scan.pdf", bytes: new TextEncoder().encode("%PDF-1.7 nothing more") };
test.each([
  ["words", { text: "Please call me before you cut anything." }],
  ["a file", { files: [scan] }],
])("the same once more, %s that one of us has dealt with, is asked about anew", async (_, more) => {
  const desk = await temporaryDesk();
  const sheet = (mark: string) => ({ ...unknownWord, mark, legend: ["SALON"] });
  const settled = async (): Promise<void> => {
    const [question] = (await orderIn(desk)).questions;
    await takeNote(desk, noteOf({ kind: "yes", number: question?.number ?? 0 }));
    expect(await orderIn(desk)).toMatchObject({ verdict: "pass", carried: [], questions: [] });
  };
  await post(desk, { sheets: [sheet("P-1")], ...more });
  await post(desk, { sheets: [sheet("P-2")] });
  await settled();
  await post(desk, { sheets: [sheet("P-3")], ...more });
  await post(desk, { sheets: [sheet("P-4")] });
  expect((await orderIn(desk)).verdict).not.toBe("pass");
  await settled();
});

test("two points settled at the same moment are both settled", async () => {
  const desk = await temporaryDesk();
  const fill = { order: "FM-80", "contact.phone": "12", "contact.email": "greta@@fallowmere.example" };
  await post(desk, { sheets: [{ mark: "P-1", legend: ["SALON"], fill }] });
  const numbers = (await orderIn(desk)).questions.map(({ number }) => number);
  expect(numbers.length).toBeGreaterThan(1);
  const taken = await Promise.all(numbers.map((number) => takeNote(desk, noteOf({ kind: "waive", number }))));
  while (await takeDue(desk));
  expect(taken.map(({ kind }) => kind)).not.toContain("wrong");
  expect((await orderIn(desk)).questions).toEqual([]);
});

test("a letter that was held is let in once, and judged as its sender's", async () => {
  const desk = await temporaryDesk();
  await post(desk, { sheets: [{ ...unknownWord, legend: ["SALON"] }] });
  const stranger = "Eve <eve@stranger.example>";
  const sheets = [{ mark: "P-2", legend: ["LOUNGE"], fill: { order: "FM-80" } }];
  const held = await post(desk, { from: stranger, sheets });
  expect(held.why).toBe("it names an order number of another buyer");
  expect(await listed(desk)).toEqual([`held ${held.letter} letter ${held.letter}`]);
  const by = { name: "Rosa Imhoff", why: "Eve works for Greta" };
  const letIn = () =>
    desk.store.letters.letIn(held.letter, { sender: "eve@stranger.example" }, by, desk.clock.now());
  const copy = await letIn();
  expect(await letIn()).toBeUndefined();
  while (await takeDue(desk));
  const order = await orderIn(desk);
  expect((await desk.store.answers.of(copy ?? 0))?.recipient).toBe("eve@stranger.example");
  expect(order.sheets.map(({ mark }) => mark)).toEqual(["P-1", "P-2"]);
  expect(await desk.store.letters.read(copy ?? 0)).toMatchObject({ state: "sent", orders: ["FM-80"] });
  expect(await listed(desk)).toEqual([]);
});

test("a letter about no order leaves the list once it is put aside", async () => {
  const desk = await temporaryDesk();
  const { letter } = await post(desk, { text: "How long does engraving take?" });
  expect(await listed(desk)).toEqual([`letter ${letter} letter ${letter} letter ${letter}`]);
  await desk.store.letters.putAside(letter, { name: "Rosa Imhoff", why: "called" }, desk.clock.now());
  expect(await listed(desk)).toEqual([]);
});

test("the orders of a record come out the same when they are made again of its events", async () => {
  const database = openSqlite(":memory:");
  const store = await openStore(database, openBlobs(temporaryFolder()));
  const desk = await temporaryDesk({ store });
  const first = await post(desk, {
    sheets: [unknownWord, { ...unknownWord, mark: "P-2", legend: ["NORTH"] }],
  });
  await post(desk, { text: "1 YES", to: first });
  await post(desk, { sheets: [{ ...unknownWord, mark: "P-2", legend: ["MAIN", "SW"] }] });
  const { questions } = await orderIn(desk);
  await takeNote(desk, noteOf({ kind: "yes", number: questions[0]?.number ?? 0 }));
  const before = await ordersInWords(database);
  expect(before.size).toBe(1);
  expect(JSON.stringify([...before])).toContain("Rosa Imhoff");
  expect(await store.verify()).toEqual({
    events: expect.any(Number) as number,
    erased: [],
    orders: 1,
    older: 0,
    differ: [],
  });
  await rebuildOrders(database);
  expect(await ordersInWords(database)).toEqual(before);
  expect((await orderIn(desk)).verdict).toBe("pass");
  await database.destroy();
});

test("an event that somebody has changed breaks the chain, and a changed order comes out otherwise", async () => {
  const database = openSqlite(":memory:");
  const store = await openStore(database, openBlobs(temporaryFolder()));
  const desk = await temporaryDesk({ store });
  await post(desk, { sheets: [unknownWord] });
  await database.updateTable("revisions").set({ verdict: "pass" }).execute();
  expect(await store.verify()).toMatchObject({ differ: [`${greta} FM80`] });
  await database.updateTable("events").set({ words: "pass" }).where("id", "=", 2).execute();
  expect((await store.verify()).broken).toBe(2);
  await database.destroy();
});

test("an order that is older than the events which keep what letters changed is counted, not made again", async () => {
  const database = openSqlite(":memory:");
  const store = await openStore(database, openBlobs(temporaryFolder()));
  const desk = await temporaryDesk({ store });
  await post(desk, { sheets: [unknownWord] });
  expect(await store.verify()).toMatchObject({ orders: 1, older: 0, differ: [] });
  await database.updateTable("events").set({ content: null }).execute();
  expect(await store.verify()).toMatchObject({ orders: 0, older: 1, differ: [] });
  await database.destroy();
});

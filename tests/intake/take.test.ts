import { simpleParser } from "mailparser";
import { expect, test } from "vitest";
import type { Desk } from "../../src/intake/desk.ts";
import { takeDue, takeLetter } from "../../src/intake/take.ts";
import type { Sending } from "../../src/ports/sender.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";

const start = new Date("2026-11-09T15:00:00Z");

function letterBytes(headers: readonly string[] = [], n = 1): Uint8Array {
  const from = headers.some((line) => line.startsWith("From:"))
    ? []
    : ["From: Ines Calloway <ines@brightwire.example>"];
  const text = [
    ...headers,
    ...from,
    "To: orders@quillgate.example",
    `Message-ID: <${n}@brightwire.example>`,
    "Subject: Stations",
    "",
    `Hello ${n}`,
  ];
  return new TextEncoder().encode(text.join("\r\n"));
}

/** A desk whose clock can be put forward. */
async function deskAt(changes: Partial<Desk> = {}) {
  let now = start;
  const desk = await temporaryDesk({ ...changes, clock: { now: () => now } });
  return {
    desk,
    forward: (seconds: number) => {
      now = new Date(now.getTime() + seconds * 1000);
    },
  };
}

const take = (desk: Desk, bytes = letterBytes()) => takeLetter(desk, bytes, start);
const stateOf = async (desk: Desk, letter: number) => (await desk.store.letter(letter)).state;

test("a letter without a sheet is answered, and a person is to look", async () => {
  const sender = keepingSender();
  const { desk } = await deskAt({ sender });
  const { letter } = await take(desk);
  expect(await desk.store.letter(letter)).toMatchObject({ state: "sent", verdict: "person" });
  const answer = await simpleParser(Buffer.from(sender.kept[0]?.bytes ?? ""));
  expect(answer.inReplyTo).toBe("<1@brightwire.example>");
  expect(answer.references).toBe("<1@brightwire.example>");
  // RFC 3834 §5: an automatic response says that it is one.
  expect(answer.headers.get("auto-submitted")).toBe("auto-replied");
});

test("a letter that took another way here is still the same letter", async () => {
  const sender = keepingSender();
  const { desk } = await deskAt({ sender });
  await take(desk);
  const { again } = await take(desk, letterBytes(["Received: from elsewhere", "Return-Path: <x@y.example>"]));
  expect(again).toBe(true);
  expect(sender.kept).toHaveLength(1);
});

test("a letter from nobody, or from two, is held for a person and not answered", async () => {
  const sender = keepingSender();
  const { desk } = await deskAt({ sender });
  for (const headers of [["From: "], ["From: a@one.example", "From: b@two.example"]]) {
    const { letter } = await take(desk, letterBytes(headers));
    expect(await desk.store.letter(letter)).toMatchObject({
      state: "held",
      why: expect.stringContaining("sender"),
    });
  }
  expect(sender.kept).toHaveLength(0);
});

test("a machine's letter is filed in silence, with the reason", async () => {
  const sender = keepingSender();
  const { desk } = await deskAt({ sender });
  const { letter } = await take(desk, letterBytes(["Auto-Submitted: auto-replied"]));
  expect(await desk.store.letter(letter)).toMatchObject({
    state: "silent",
    why: expect.stringContaining("machine"),
  });
  expect(sender.kept).toHaveLength(0);
});

test("two desks that write to each other stop after one answer", async () => {
  const here = keepingSender();
  const there = keepingSender();
  const { desk } = await deskAt({ sender: here });
  const other = await temporaryDesk({
    sender: there,
    from: { name: "Other desk", address: "desk@other.example" },
    rules: { ...desk.rules, ours: ["desk@other.example"] },
  });
  await take(desk, letterBytes(["From: desk@other.example"]));
  await takeLetter(other, here.kept[0]?.bytes ?? new Uint8Array(), start);
  expect([here.kept.length, there.kept.length]).toEqual([1, 0]);
});

test("an answer that could not be sent for now is sent when it is due, not before", async () => {
  let says: Sending = { kind: "later", words: "451 try again" };
  const sender = keepingSender(() => says);
  const { desk, forward } = await deskAt({ sender });
  const { letter } = await take(desk);
  expect(await stateOf(desk, letter)).toBe("later");
  says = { kind: "sent", words: "250 ok" };
  expect(await takeDue(desk)).toBe(false);
  forward(90);
  expect(await takeDue(desk)).toBe(true);
  expect(await stateOf(desk, letter)).toBe("sent");
  expect(sender.kept).toHaveLength(1);
});

test("an answer that can never be sent for now is given up after days, and said so", async () => {
  const { desk, forward } = await deskAt({
    sender: keepingSender(() => ({ kind: "later", words: "452 full" })),
  });
  const { letter } = await take(desk);
  let days = 0;
  while ((await stateOf(desk, letter)) === "later" && days < 30) {
    forward(86_400 / 6);
    days += 1 / 6;
    await takeDue(desk);
  }
  expect(await stateOf(desk, letter)).toBe("refused");
  // RFC 5321 §4.5.4.1: at least 4 to 5 days.
  expect(days).toBeGreaterThan(4);
});

test("an answer of which nothing is known is looked for after the grace, and only then", async () => {
  const sender = keepingSender();
  let says: Sending = { kind: "unknown", words: "connection lost" };
  const { desk, forward } = await deskAt({
    sender: {
      ...sender,
      send: (answer) => (says.kind === "unknown" ? Promise.resolve(says) : sender.send(answer)),
    },
  });
  const { letter } = await take(desk);
  expect(await stateOf(desk, letter)).toBe("unknown");
  expect(await takeDue(desk)).toBe(false);
  forward(121);
  says = { kind: "sent", words: "250" };
  expect(await takeDue(desk)).toBe(true); // not found, so sent again
  expect(await stateOf(desk, letter)).toBe("sent");
  expect(sender.kept).toHaveLength(1);
});

test("one that went out although nothing was known is found and not sent again", async () => {
  const sender = keepingSender();
  const { desk, forward } = await deskAt({
    sender: {
      ...sender,
      send: async (answer) => {
        await sender.send(answer);
        return { kind: "unknown", words: "connection lost after the final dot" };
      },
    },
  });
  const { letter } = await take(desk);
  forward(121);
  await takeDue(desk);
  expect(await stateOf(desk, letter)).toBe("sent");
  expect(sender.kept).toHaveLength(1);
});

test("while it cannot be looked for, it is neither sent again nor given up", async () => {
  const sender = keepingSender();
  let reachable = false;
  const { desk, forward } = await deskAt({
    sender: {
      send: async (answer) => {
        await sender.send(answer);
        return { kind: "unknown", words: "connection lost after the final dot" };
      },
      find: (id) =>
        reachable ? sender.find(id) : Promise.reject(new Error("the witness cannot be reached")),
    },
  });
  const { letter } = await take(desk);
  for (let time = 0; time < 3; time++) {
    forward(121);
    expect(await takeDue(desk)).toBe(true);
    expect(await stateOf(desk, letter)).toBe("unknown");
  }
  reachable = true;
  forward(121);
  await takeDue(desk);
  expect(await stateOf(desk, letter)).toBe("sent");
  expect(sender.kept).toHaveLength(1);
});

test("where nobody can look, a person is asked and nothing is sent twice", async () => {
  const { desk, forward } = await deskAt({
    sender: {
      ...keepingSender(() => ({ kind: "unknown", words: "" })),
      find: () => Promise.resolve(undefined),
    },
  });
  const { letter } = await take(desk);
  forward(121);
  await takeDue(desk);
  expect(await stateOf(desk, letter)).toBe("held");
});

test("a letter that was being sent when the program died is looked for first", async () => {
  const sender = keepingSender();
  const { desk, forward } = await deskAt({ sender: { ...sender, send: () => new Promise(() => undefined) } });
  void take(desk); // never comes back: as if the program had died
  await expect.poll(() => desk.store.states()).toEqual({ sending: 1 });
  forward(601); // its lease has run out
  const next = { ...desk, sender };
  await takeDue(next);
  expect(await desk.store.states()).toEqual({ unknown: 1 });
  forward(121);
  await takeDue(next);
  expect(await desk.store.states()).toEqual({ sent: 1 });
  expect(sender.kept).toHaveLength(1);
});

test("a letter that ends the program three times is held", async () => {
  const { desk, forward } = await deskAt({
    reader: { ...(await temporaryDesk()).reader, letter: () => new Promise(() => undefined) },
  });
  void take(desk);
  for (let time = 0; time < 3; time++) {
    await expect.poll(() => desk.store.states()).toEqual({ received: 1 });
    forward(601);
    const taken = takeDue(desk);
    if (time < 2) void taken;
    else await taken;
  }
  expect(await desk.store.states()).toEqual({ held: 1 });
  expect(await desk.store.forPerson(start)).toMatchObject([
    {
      from: "ines@brightwire.example",
      subject: "Stations",
      why: "the program ended 3 times while it was open",
    },
  ]);
});

test("a letter on which the program fails three times is held, and whoever sent it is in the record", async () => {
  const { desk, forward } = await deskAt({
    reader: { ...(await temporaryDesk()).reader, letter: () => Promise.reject(new Error("out of order")) },
  });
  await take(desk);
  for (let time = 0; time < 2; time++) {
    expect(await desk.store.states()).toEqual({ received: 1 });
    forward(61);
    await takeDue(desk);
  }
  expect(await desk.store.forPerson(start)).toMatchObject([
    { state: "held", from: "ines@brightwire.example", why: "the program failed on it: out of order" },
  ]);
});

test("a sender who writes without end gets a last answer, and then none", async () => {
  const sender = keepingSender();
  const { desk } = await deskAt({ sender });
  const few = { ...desk, rules: { ...desk.rules, mostAnswers: { toOne: 3, toAll: 100 } } };
  for (let n = 1; n <= 5; n++) await take(few, letterBytes([], n));
  expect(sender.kept).toHaveLength(3);
  const last = await simpleParser(Buffer.from(sender.kept[2]?.bytes ?? ""));
  expect(last.text).toContain("A person at Quillgate Stations reads your letter");
  expect(await few.store.states()).toEqual({ sent: 3, held: 2 });
});

test("a letter received but not checked when the program died is answered by the next run", async () => {
  const sender = keepingSender();
  const { desk } = await deskAt({ sender });
  await desk.store.receive("key", letterBytes(), start);
  expect(await takeDue(desk)).toBe(true);
  expect(await desk.store.states()).toEqual({ sent: 1 });
});

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
const stateOf = async (desk: Desk, letter: number) => (await desk.store.letters.read(letter)).state;

test("a letter without a sheet is answered, and a person is to look", async () => {
  const sender = keepingSender();
  const { desk } = await deskAt({ sender });
  const { letter } = await take(desk);
  expect(await desk.store.letters.read(letter)).toMatchObject({ state: "sent", verdict: "person" });
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
    expect(await desk.store.letters.read(letter)).toMatchObject({
      state: "held",
      why: expect.stringContaining("sender"),
    });
  }
  expect(sender.kept).toHaveLength(0);
});

test("a sender whom the name servers cannot prove just now is asked about three times, then a person looks", async () => {
  let asked = 0;
  const { reader, rules } = await temporaryDesk();
  const sender = keepingSender();
  const { desk, forward } = await deskAt({
    sender,
    reader: {
      ...reader,
      sender: () => {
        asked += 1;
        return Promise.resolve({ ok: true, value: "temporary" });
      },
    },
    rules: { ...rules, nameServers: [] },
  });
  const { letter } = await take(desk);
  for (const times of [1, 2, 3]) {
    const state = await stateOf(desk, letter);
    expect([asked, state === "received"]).toEqual([times, times < 3]);
    if (times === 3) break;
    forward(599);
    expect(await takeDue(desk)).toBe(false);
    forward(1);
    expect(await takeDue(desk)).toBe(true);
  }
  expect(await takeDue(desk)).toBe(false);
  expect(await desk.store.letters.read(letter)).toMatchObject({ verdict: "person" });
});

test("what our own mail server found of a sender never changes, so nobody asks again", async () => {
  const { rules } = await temporaryDesk();
  const { desk } = await deskAt({ rules: { ...rules, authority: "mx.quillgate.example" } });
  const found =
    "Authentication-Results: mx.quillgate.example; dmarc=temperror header.from=brightwire.example";
  const { letter } = await take(
    desk,
    letterBytes([found, "Received: from elsewhere by mx.quillgate.example"]),
  );
  expect(await stateOf(desk, letter)).not.toBe("received");
});

test("a machine's report is filed in silence, with the reason", async () => {
  const sender = keepingSender();
  const { desk } = await deskAt({ sender });
  const { letter } = await take(desk, letterBytes(["Auto-Submitted: auto-replied"]));
  expect(await desk.store.letters.read(letter)).toMatchObject({
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
  await expect.poll(() => desk.store.letters.states()).toEqual({ sending: 1 });
  forward(661); // its lease has run out
  const next = { ...desk, sender };
  await takeDue(next);
  expect(await desk.store.letters.states()).toEqual({ unknown: 1 });
  forward(121);
  await takeDue(next);
  expect(await desk.store.letters.states()).toEqual({ sent: 1 });
  expect(sender.kept).toHaveLength(1);
});

/** A desk over which a letter ends the program whenever it is opened: `takeDue` never comes back. */
async function deskThatDies() {
  const sender = keepingSender();
  let opened = 0;
  const { reader } = await temporaryDesk();
  let dies = true;
  const letter: Desk["reader"]["letter"] = (bytes) => {
    opened++;
    return dies ? new Promise(() => undefined) : reader.letter(bytes);
  };
  const { desk, forward } = await deskAt({ sender, reader: { ...reader, letter } });
  void take(desk);
  await expect.poll(() => opened).toBe(1);
  for (let time = 2; time <= 3; time++) {
    forward(601);
    void takeDue(desk);
    await expect.poll(() => opened).toBe(time);
  }
  forward(601);
  await takeDue(desk);
  return { desk, forward, sender, opened: () => opened, mend: () => void (dies = false) };
}

/** Sends an answer, and fails before it can say so. */
function failingBehind(sender: Desk["sender"]): Desk["sender"] {
  return {
    ...sender,
    send: async (answer) => {
      await sender.send(answer);
      throw new Error("out of order");
    },
  };
}

test("an answer over which the program fails is looked for before it is sent again", async () => {
  const sender = keepingSender();
  const { desk, forward } = await deskAt({ sender });
  const { letter } = await take({ ...desk, sender: failingBehind(sender) });
  expect(await stateOf(desk, letter)).toBe("unknown");
  forward(121);
  await takeDue(desk);
  expect([await stateOf(desk, letter), sender.kept.length]).toEqual(["sent", 1]);
});

test("so is that to a letter which was opened a last time", async () => {
  const { desk, forward, sender, mend } = await deskThatDies();
  mend();
  forward(901);
  await takeDue({ ...desk, sender: failingBehind(sender) });
  expect(await desk.store.letters.states()).toEqual({ unknown: 1 });
  forward(121);
  await takeDue(desk);
  expect([await desk.store.letters.states(), sender.kept.length]).toEqual([{ sent: 1 }, 1]);
});

test("a letter that ended the program three times by chance is opened once more after a rest", async () => {
  const { desk, forward, sender, opened, mend } = await deskThatDies();
  expect([await desk.store.letters.states(), opened()]).toEqual([{ received: 1 }, 3]);
  expect(await takeDue(desk)).toBe(false);
  mend();
  forward(901);
  await takeDue(desk);
  expect(await desk.store.letters.states()).toEqual({ sent: 1 });
  expect(sender.kept).toHaveLength(1);
});

test("one that ends it then too is for a person, and its sender is told so", async () => {
  const { desk, forward, sender, opened } = await deskThatDies();
  forward(901);
  void takeDue(desk);
  await expect.poll(opened).toBe(4);
  forward(601);
  await takeDue(desk);
  expect(opened()).toBe(4);
  const why = "the program ended 4 times while it was open";
  expect(await desk.store.people.waiting(start)).toMatchObject([
    { state: "sent", verdict: "person", from: "ines@brightwire.example", subject: "Stations", why },
  ]);
  const told = await simpleParser(Buffer.from(sender.kept[0]?.bytes ?? ""));
  expect(told.text).toContain("reads your letter and writes to you");
});

test("a letter on which the program fails whenever it is opened is for a person, and its sender is told so", async () => {
  const sender = keepingSender();
  const { desk, forward } = await deskAt({
    sender,
    reader: { ...(await temporaryDesk()).reader, letter: () => Promise.reject(new Error("out of order")) },
  });
  const aside: number[] = [];
  await takeLetter(desk, letterBytes(), start, (letter) => aside.push(letter));
  for (const wait of [61, 61, 61, 901]) {
    expect(await desk.store.letters.states()).toEqual({ received: 1 });
    forward(wait);
    await takeDue(desk, (letter) => aside.push(letter));
  }
  expect(await desk.store.people.waiting(start)).toMatchObject([
    { verdict: "person", from: "ines@brightwire.example", why: "the program failed on it: out of order" },
  ]);
  expect(sender.kept).toHaveLength(1);
  expect(aside).toHaveLength(4);
});

/** A desk with limits of a test's own. */
async function deskWithin(most: Partial<Desk["rules"]["mostAnswers"]>) {
  const sender = keepingSender();
  const { desk, forward } = await deskAt({ sender });
  const mostAnswers = { ...desk.rules.mostAnswers, ...most };
  const limited: Desk = { ...desk, rules: { ...desk.rules, mostAnswers } };
  const answerDue = async (): Promise<number> => {
    while (await takeDue(limited));
    return sender.kept.length;
  };
  return { desk: limited, forward, sender, answerDue };
}

test("a burst of 26 letters of one sender is answered, those over the limit an hour later", async () => {
  const { desk, forward, answerDue } = await deskWithin({});
  for (let n = 1; n <= 26; n++) await take(desk, letterBytes([], n));
  expect(await desk.store.letters.states()).toEqual({ sent: 20, received: 6 });
  forward(3599);
  expect(await answerDue()).toBe(20);
  forward(2);
  expect(await answerDue()).toBe(26);
});

test("everybody together waits where the desk gives no more answers", async () => {
  const { desk, forward, answerDue } = await deskWithin({ toAll: 2 });
  for (const n of [1, 2, 3]) await take(desk, letterBytes([`From: a${n}@brightwire.example`], n));
  expect(await desk.store.letters.states()).toEqual({ sent: 2, received: 1 });
  forward(3601);
  expect(await answerDue()).toBe(3);
});

test("what one sender gets in a day is limited too", async () => {
  const { desk, forward, answerDue } = await deskWithin({ toOneADay: 3 });
  for (let n = 1; n <= 4; n++) await take(desk, letterBytes([], n));
  forward(7200);
  expect(await answerDue()).toBe(3);
  forward(86_400);
  expect(await answerDue()).toBe(4);
});

test("a thread that goes round and round waits, whoever writes in it, and other letters do not", async () => {
  const { desk, sender } = await deskWithin({ inThreadADay: 2 });
  let last = "";
  for (const n of [1, 2, 3]) {
    const from = `From: a${n}@brightwire.example`;
    await take(desk, letterBytes(last === "" ? [from] : [from, `In-Reply-To: ${last}`], n));
    last = sender.kept.at(-1)?.messageId ?? "";
  }
  expect(await desk.store.letters.states()).toEqual({ sent: 2, received: 1 });
  await take(desk, letterBytes([], 4));
  expect(await desk.store.letters.states()).toEqual({ sent: 3, received: 1 });
});

test("where as many letters wait as a day allows, more are for a person, who sees whose they are", async () => {
  const { desk } = await deskWithin({ toOne: 1, toOneADay: 2 });
  for (let n = 1; n <= 5; n++) await take(desk, letterBytes([], n));
  expect(await desk.store.letters.states()).toEqual({ sent: 1, received: 2, held: 2 });
  expect(await desk.store.people.waiting(start)).toContainEqual(
    expect.objectContaining({ state: "held", from: "ines@brightwire.example", subject: "Stations" }),
  );
});

test("machines' letters and letters from nobody do not wait: they get no answer", async () => {
  const { desk } = await deskWithin({ toOne: 1 });
  await take(desk);
  await take(desk, letterBytes(["Auto-Submitted: auto-replied"], 2));
  expect(await desk.store.letters.states()).toEqual({ sent: 1, silent: 1 });
});

test("an answer that is never found is sent three times in all, and then a person looks", async () => {
  const kept: string[] = [];
  const { desk, forward } = await deskAt({
    sender: {
      send: (answer) => {
        kept.push(answer.messageId);
        return Promise.resolve({ kind: "unknown", words: "the connection was lost" });
      },
      find: () => Promise.resolve(false),
    },
  });
  const { letter } = await take(desk);
  for (let time = 0; time < 6; time++) {
    forward(121);
    await takeDue(desk);
  }
  expect(kept).toHaveLength(3);
  expect(new Set(kept).size).toBe(1);
  expect(await desk.store.letters.read(letter)).toMatchObject({
    state: "held",
    why: expect.stringContaining("sent 3 times"),
  });
});

test("while the server may yet take the answer, no other worker takes the letter up", async () => {
  const sender = keepingSender();
  const { desk, forward } = await deskAt({ sender: { ...sender, send: () => new Promise(() => undefined) } });
  const quick = { ...desk, rules: { ...desk.rules, lease: 30 } };
  void take(quick);
  await expect.poll(() => desk.store.letters.states()).toEqual({ sending: 1 });
  forward(600);
  expect(await takeDue(quick)).toBe(false);
  forward(61);
  expect(await takeDue(quick)).toBe(true);
});

test("an answer's Message-ID is always the same for a letter, and nobody can work it out", async () => {
  const id = async (secret: string) => {
    const sender = keepingSender();
    const { desk } = await deskAt({ sender });
    await take({ ...desk, secret });
    return sender.kept[0]?.messageId;
  };
  expect(await id("one")).toBe(await id("one"));
  expect(await id("one")).not.toBe(await id("two"));
});

test("a letter received but not checked when the program died is answered by the next run", async () => {
  const sender = keepingSender();
  const { desk } = await deskAt({ sender });
  await desk.store.letters.receive("key", letterBytes(), start);
  expect(await takeDue(desk)).toBe(true);
  expect(await desk.store.letters.states()).toEqual({ sent: 1 });
});

test("where our own server could not find out who sent it, asking again is no use, and a person looks", async () => {
  const made = await temporaryDesk();
  const desk = { ...made, rules: { ...made.rules, authority: "mx.quillgate.example" } };
  const found =
    "Authentication-Results: mx.quillgate.example; dmarc=temperror header.from=brightwire.example";
  const { letter } = await take(desk, letterBytes([found]));
  expect(await stateOf(desk, letter)).toBe("held");
});

test("a letter from nobody, and one that came before, have no other letters taken up", async () => {
  const { desk } = await deskAt();
  await take(desk);
  const { letter } = await desk.store.letters.receive(
    "waiting",
    letterBytes([], 2),
    start,
    "brightwire.example",
  );
  await take(desk, new TextEncoder().encode("Subject: from nobody\r\n\r\nHello"));
  expect(await take(desk)).toMatchObject({ again: true });
  expect(await stateOf(desk, letter)).toBe("received");
  expect(await takeDue(desk)).toBe(true);
  expect(await stateOf(desk, letter)).toBe("sent");
});

import { simpleParser } from "mailparser";
import { expect, test } from "vitest";
import { refusalOf } from "../../src/intake/etiquette.ts";
import { takeDue, takeLetter } from "../../src/intake/take.ts";
import { sendNotice } from "../../src/intake/tell-people.ts";
import type { Sending } from "../../src/ports/sender.ts";
import { headerLines } from "../../src/reading/letter/header-lines.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";

const service = "service@quillgate.example";

/** A letter that no machine answers, since it has two senders. */
function fromTwo(n: number): Uint8Array {
  const lines = [
    "From: ines@brightwire.example, omar@brightwire.example",
    "To: orders@quillgate.example",
    `Message-ID: <${n}@brightwire.example>`,
    `Subject: Stations ${n}\u001b[31m`,
  ];
  return new TextEncoder().encode([...lines, "", `Hello ${n}`].join("\r\n"));
}

async function deskWith(says: () => Sending = () => ({ kind: "sent", words: "250" })) {
  const sender = keepingSender(says);
  let now = new Date("2026-11-09T15:00:00Z");
  const made = await temporaryDesk({ sender, clock: { now: () => now } });
  const desk = { ...made, rules: { ...made.rules, notice: service } };
  return {
    desk,
    sender,
    take: (n: number) => takeLetter(desk, fromTwo(n), now),
    forward: (minutes: number) => {
      now = new Date(now.getTime() + minutes * 60_000);
    },
  };
}

test("customer service is told of what waits for a person, once an hour at most, of each letter once", async () => {
  const { desk, sender, take, forward } = await deskWith();
  expect(await sendNotice(desk)).toBe("nothing");
  await take(1);
  expect(await sendNotice(desk)).toBe("told");
  await take(2);
  forward(59);
  expect(await sendNotice(desk)).toBe("nothing");
  forward(2);
  await take(3);
  expect(await sendNotice(desk)).toBe("told");
  forward(120);
  expect(await sendNotice(desk)).toBe("nothing");

  const [first, second] = await Promise.all(sender.kept.map(({ bytes }) => simpleParser(Buffer.from(bytes))));
  expect(sender.kept.map(({ recipient }) => recipient)).toEqual([service, service]);
  expect(first?.subject).toBe("1 thing needs a person");
  expect(first?.text).toContain("What waits for a person on 2026-11-09 at 09:00.");
  expect(first?.text).toContain("Letter 1: not taken, and nothing of it is checked (waits 0 min)");
  expect(first?.text).toMatch(/letter 1: “Stations 1.*”: it has no single sender to answer/);
  expect(first?.text).not.toContain("\u001b");
  expect(second?.subject).toBe("2 things need a person");
  // What is new stands before what was told of earlier.
  expect(second?.text).toMatch(/NEW[^]*Stations 2[^]*Stations 3[^]*WAITING SINCE EARLIER[^]*Stations 1/);
});

test("a notice that could not be sent is sent later, with what has come since", async () => {
  let says: Sending = { kind: "later", words: "451" };
  const { desk, sender, take } = await deskWith(() => says);
  await take(1);
  await sendNotice(desk);
  says = { kind: "sent", words: "250" };
  await take(2);
  await sendNotice(desk);
  const told = await Promise.all(sender.kept.map(({ bytes }) => simpleParser(Buffer.from(bytes))));
  expect(told.map(({ subject }) => subject)).toEqual(["2 things need a person"]);
});

test("a notice over which the sender fails is sent later", async () => {
  const { desk, sender, take } = await deskWith();
  await take(1);
  const broken = { ...sender, send: () => Promise.reject(new Error("out of order")) };
  expect(await sendNotice({ ...desk, sender: broken })).toBe("failed");
  expect(await sendNotice(desk)).toBe("told");
});

test("a letter is told of when its answer has gone, and again when that is refused", async () => {
  let says: Sending = { kind: "later", words: "451" };
  const { desk, sender, forward } = await deskWith(() => says);
  const plain =
    "From: ines@brightwire.example\r\nTo: orders@quillgate.example\r\nMessage-ID: <7@b.example>\r\nSubject: Hello\r\n\r\nHi";
  await takeLetter(desk, Buffer.from(plain), desk.clock.now());
  expect(await sendNotice(desk)).toBe("nothing");
  forward(5);
  says = { kind: "sent", words: "250" };
  await takeDue(desk);
  expect(await sendNotice(desk)).toBe("told");
  const [letter] = await desk.store.people.waiting(desk.clock.now());
  expect(letter).toMatchObject({ verdict: "person", state: "sent" });
  expect((await simpleParser(Buffer.from(sender.kept.at(-1)?.bytes ?? ""))).text).toContain(
    "Letter 1, about no order",
  );
});

test("a letter told of as held is not told of again, one whose answer is refused later is", async () => {
  const { desk, take, forward } = await deskWith();
  const { letter } = await take(1);
  await sendNotice(desk);
  forward(61);
  expect(await sendNotice(desk)).toBe("nothing");
  const claim = { letter, fence: 1 } as const;
  await desk.store.letters.mark(claim, "refused", "550", desk.clock.now());
  expect(await sendNotice(desk)).toBe("told");
});

test("an answer told of as lost and then given up is told of anew, an hour later at the earliest", async () => {
  const { desk, forward } = await deskWith();
  const { letter } = await desk.store.letters.receive("k", fromTwo(1), desk.clock.now());
  const claim = { letter, fence: 0 } as const;
  await desk.store.letters.mark(claim, "unknown", "connection lost", desk.clock.now());
  forward(61);
  expect(await sendNotice(desk)).toBe("told");
  forward(3);
  await desk.store.letters.mark(claim, "held", "nobody can see", desk.clock.now());
  expect(await sendNotice(desk)).toBe("nothing");
  forward(58);
  expect(await sendNotice(desk)).toBe("told");
});

test("a flood of letters is told of in parts", async () => {
  const { desk, sender, forward } = await deskWith();
  for (let n = 0; n < 620; n++) await desk.store.letters.receive(`k${n}`, fromTwo(n), desk.clock.now());
  for (let n = 1; n <= 620; n++)
    await desk.store.letters.mark({ letter: n, fence: 0 }, "held", "x", desk.clock.now());
  expect(await sendNotice(desk)).toBe("told");
  forward(61);
  expect(await sendNotice(desk)).toBe("told");
  forward(61);
  expect(await sendNotice(desk)).toBe("nothing");
  const told = await Promise.all(sender.kept.map(({ bytes }) => simpleParser(Buffer.from(bytes))));
  expect(told.map(({ subject }) => subject)).toEqual([
    "500 things need a person",
    "120 things need a person",
  ]);
  expect(told[0]?.text).toContain("… and 460 more.");
  expect(await desk.store.people.waiting(desk.clock.now())).toHaveLength(620);
});

test("customer service is not told of what it sends itself, and its replies to notices are not answered", async () => {
  const { desk, sender, take, forward } = await deskWith();
  await take(1);
  await sendNotice(desk);
  forward(61);
  const ticket = `From: ${service}\r\nTo: orders@quillgate.example\r\nMessage-ID: <t@b.example>\r\nSubject: Ticket 7 opened\r\n\r\nWe have your letter.`;
  await takeLetter(desk, Buffer.from(ticket), desk.clock.now());
  expect(await sendNotice(desk)).toBe("nothing");
  const reply = ticket
    .replace("<t@", "<u@")
    .replace("Subject", `In-Reply-To: ${sender.kept[0]?.messageId}\r\nSubject`);
  const { letter } = await takeLetter(desk, Buffer.from(reply), desk.clock.now());
  expect(await desk.store.letters.read(letter)).toMatchObject({
    state: "held",
    why: "it replies to a notice of this desk",
  });
  forward(61);
  expect(await sendNotice(desk)).toBe("nothing");
});

test("nothing that a stranger writes into a header stands in a notice at length", async () => {
  const { desk, sender } = await deskWith();
  const odd = `List-${"Pay this bill ".repeat(50)}\u001b[31m: y\r\nList-Help: <x>\r\nFrom: eve@stranger.example\r\nTo: orders@quillgate.example\r\n\r\nHi`;
  await takeLetter(desk, Buffer.from(odd), desk.clock.now());
  await sendNotice(desk);
  const { text = "" } = await simpleParser(Buffer.from(sender.kept[0]?.bytes ?? ""));
  expect(text).toContain("it came through a mailing list (list-help)");
  expect(text).not.toContain("Pay this bill");
});

test("no machine answers a notice, this desk neither", async () => {
  const { desk, sender, take } = await deskWith();
  await take(1);
  await sendNotice(desk);
  const headers = headerLines(sender.kept[0]?.bytes ?? new Uint8Array());
  expect(headers).toContainEqual({ name: "auto-submitted", value: "auto-generated" });
  expect(
    refusalOf({ headers, from: desk.from.address, ours: [service], returnPathWritten: false }),
  ).toMatchObject({ why: "a machine sent it (Auto-Submitted)" });
});

test("without an address nobody is told", async () => {
  const { desk, sender, take } = await deskWith();
  await take(1);
  const { notice: _, ...rules } = desk.rules;
  expect(await sendNotice({ ...desk, rules })).toBe("nothing");
  expect(sender.kept).toEqual([]);
});

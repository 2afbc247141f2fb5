import { simpleParser } from "mailparser";
import { expect, test } from "vitest";
import { refusalOf } from "../../src/intake/etiquette.ts";
import { sendNotice } from "../../src/intake/notice.ts";
import { takeLetter } from "../../src/intake/take.ts";
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
  expect(await sendNotice(desk)).toBe(false);
  await take(1);
  expect(await sendNotice(desk)).toBe(true);
  await take(2);
  forward(59);
  expect(await sendNotice(desk)).toBe(false);
  forward(2);
  await take(3);
  expect(await sendNotice(desk)).toBe(true);
  forward(120);
  expect(await sendNotice(desk)).toBe(false);

  const [first, second] = await Promise.all(sender.kept.map(({ bytes }) => simpleParser(Buffer.from(bytes))));
  expect(sender.kept.map(({ recipient }) => recipient)).toEqual([service, service]);
  expect(first?.subject).toBe("1 letter needs a person");
  expect(first?.text).toContain(
    "Letter 1: not answered, it has no single sender to answer\n  no single sender, “Stations 1",
  );
  expect(first?.text).not.toContain("\u001b");
  expect(second?.subject).toBe("2 letters need a person");
  expect(second?.text).toContain("Altogether 3 letters wait for a person.");
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
  expect(told.map(({ subject }) => subject)).toEqual(["2 letters need a person"]);
});

test("no machine answers a notice, this desk neither", async () => {
  const { desk, sender, take } = await deskWith();
  await take(1);
  await sendNotice(desk);
  const headers = headerLines(sender.kept[0]?.bytes ?? new Uint8Array());
  expect(headers).toContainEqual({ name: "auto-submitted", value: "auto-generated" });
  expect(
    refusalOf({ headers, from: desk.from.address, ours: [service], returnPathWritten: false }),
  ).toMatchObject({
    drop: true,
  });
});

test("without an address nobody is told", async () => {
  const { desk, sender, take } = await deskWith();
  await take(1);
  const { notice: _, ...rules } = desk.rules;
  expect(await sendNotice({ ...desk, rules })).toBe(false);
  expect(sender.kept).toEqual([]);
});

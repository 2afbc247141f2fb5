import { simpleParser } from "mailparser";
import { expect, test } from "vitest";
import { finishOpen, takeLetter } from "../../src/intake/take.ts";
import type { Mail } from "../../src/ports/mailbox.ts";
import type { Sending } from "../../src/ports/sender.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";

function mail(headers: readonly string[] = ["From: Ines Calloway <ines@brightwire.example>"]): Mail {
  const text = [...headers, "Message-ID: <one@brightwire.example>", "Subject: Stations", "", "Hello"].join(
    "\r\n",
  );
  return { name: "one", bytes: new TextEncoder().encode(text), receivedAt: new Date("2026-11-09T14:00:00Z") };
}

test("a letter without a sheet is answered, and a person is to look", async () => {
  const sender = keepingSender();
  const desk = await temporaryDesk({ sender });
  const { letter } = await takeLetter(desk, mail());
  expect(await desk.store.letter(letter)).toMatchObject({ state: "sent", verdict: "person" });
  const answer = await simpleParser(Buffer.from(sender.kept[0]?.bytes ?? ""));
  expect(answer.inReplyTo).toBe("<one@brightwire.example>");
  expect(answer.references).toBe("<one@brightwire.example>");
  // RFC 3834 §5: an automatic response says that it is one.
  expect(answer.headers.get("auto-submitted")).toBe("auto-replied");
});

test("a letter that took another way here is still the same letter", async () => {
  const sender = keepingSender();
  const desk = await temporaryDesk({ sender });
  await takeLetter(desk, mail());
  const { again } = await takeLetter(
    desk,
    mail([
      "Received: from elsewhere",
      "Return-Path: <x@y.example>",
      "From: Ines Calloway <ines@brightwire.example>",
    ]),
  );
  expect(again).toBe(true);
  expect(sender.kept).toHaveLength(1);
});

test("a letter from nobody, or from two, is held for a person and not answered", async () => {
  const sender = keepingSender();
  const desk = await temporaryDesk({ sender });
  for (const headers of [[], ["From: a@one.example", "From: b@two.example"]]) {
    const { letter } = await takeLetter(desk, mail(headers));
    expect((await desk.store.letter(letter)).state).toBe("held");
  }
  expect(sender.kept).toHaveLength(0);
});

test("an answer that could not be sent for now is sent by the next run", async () => {
  let says: Sending = { kind: "later", words: "451 try again" };
  const sender = keepingSender(() => says);
  const desk = await temporaryDesk({ sender });
  const { letter } = await takeLetter(desk, mail());
  expect((await desk.store.letter(letter)).state).toBe("later");
  says = { kind: "sent", words: "250 ok" };
  await finishOpen(desk);
  expect((await desk.store.letter(letter)).state).toBe("sent");
  expect(sender.kept).toHaveLength(1);
});

test("an answer of which nothing is known is looked for before it is sent again", async () => {
  const sender = keepingSender();
  const desk = await temporaryDesk({ sender });
  const { letter } = await takeLetter(desk, mail());
  await desk.store.mark(letter, "sending", "", new Date(0)); // as if the program had died just after
  await finishOpen(desk);
  expect((await desk.store.letter(letter)).state).toBe("sent");
  expect(sender.kept).toHaveLength(1);

  sender.kept.length = 0; // and now it died just before
  await desk.store.mark(letter, "sending", "", new Date(0));
  await finishOpen(desk);
  expect(sender.kept).toHaveLength(1);
});

test("where nobody can look, a person is asked and nothing is sent twice", async () => {
  const blind = { ...keepingSender(), find: () => Promise.resolve(undefined) };
  const desk = await temporaryDesk({ sender: blind });
  const { letter } = await takeLetter(desk, mail());
  await desk.store.mark(letter, "sending", "", new Date(0));
  await finishOpen(desk);
  expect((await desk.store.letter(letter)).state).toBe("held");
  expect(blind.kept).toHaveLength(1);
});

test("a letter received but not checked when the program died is answered by the next run", async () => {
  const sender = keepingSender();
  const desk = await temporaryDesk({ sender });
  const { bytes, receivedAt } = mail();
  const { letter } = await desk.store.receive("key", bytes, receivedAt);
  await finishOpen(desk);
  expect((await desk.store.letter(letter)).state).toBe("sent");
});

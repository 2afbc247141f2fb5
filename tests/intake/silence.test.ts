import { describe, expect, test } from "vitest";
import type { Desk } from "../../src/intake/desk.ts";
import { takeLetter } from "../../src/intake/take.ts";
import type { LetterRecord } from "../../src/trade/record.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";

const start = new Date("2026-11-09T15:00:00Z");
const absence = "Auto-Submitted: auto-replied";

/** A letter as bytes: header lines, then the body. */
function letterOf(headers: readonly string[], body = "I am away until Monday."): Uint8Array {
  const has = (name: string): boolean => headers.some((line) => line.startsWith(`${name}:`));
  const usual = [
    ["From", "Ines <ines@brightwire.example>"],
    ["To", "orders@quillgate.example"],
    ["Message-ID", `<${headers.join("").length}.${body.length}@brightwire.example>`],
    ["Subject", "Away"],
  ];
  const lines = usual.filter(([name = ""]) => !has(name)).map(([name, value]) => `${name}: ${value}`);
  return new TextEncoder().encode([...headers, ...lines, "", body].join("\r\n"));
}

const parts = (...some: string[]): string =>
  [...some.map((part) => `--b\r\n${part}`), "--b--", ""].join("\r\n");

async function take(desk: Desk, headers: readonly string[], body?: string): Promise<LetterRecord> {
  const { letter } = await takeLetter(desk, letterOf(headers, body), start);
  return desk.store.letters.read(letter);
}

const mixed = 'Content-Type: multipart/mixed; boundary="b"';
const words = "Content-Type: text/plain\r\n\r\nAway.";
const file = (name: string, type: string, content = "x"): string =>
  `Content-Type: ${type}; name="${name}"\r\nContent-Disposition: attachment; filename="${name}"\r\n\r\n${content}`;

const ours = "From: orders@quillgate.example";
const daemon = [
  "From: mailer-daemon@brightwire.example",
  'Content-Type: multipart/report; report-type=delivery-status; boundary="b"',
];
const repeated = (subject: string, body: string, field = "X-A: b"): string =>
  `Content-Type: message/rfc822\r\n\r\nFrom: x@y.example\r\nTo: z@y.example\r\n${field}\r\nSubject: ${subject}\r\n\r\n${body}`;

describe("a machine's report that brings nothing is filed in silence", () => {
  test.each<[string, string[], string?]>([
    ["an absence note", [absence]],
    ["one by its subject", ["Subject: Out of office", "Return-Path: <>"]],
    ["one with a telephone number", [absence], "Call 312-555-0140 in my absence."],
    ["a letter of a list", ["List-Id: <news.brightwire.example>"], "News of the week."],
    ["a read receipt by its subject", ["Subject: Read: Stations"], "Your message was read on Monday."],
    ["a read receipt without a word", ["Subject: Read: Stations"], ""],
    [
      "one that speaks of a border, not of an order",
      [absence],
      "Beyond the border 12 of us are away; in order.",
    ],
    ["one that speaks of what was ordered", [absence], "We ordered 12 chairs. Sort order Norwegian 5 days."],
    ["one with too much between the word and the figure", [absence], "job#:.. 12, order no#:.. 12"],
    ["one whose word before the figure is long", [absence], "in the order mentioned 12"],
    [
      "a delivery report of a letter with such a field",
      daemon,
      parts(words, repeated("Hello", "A letter.", "X-Subject: PO 4711")),
    ],
    ["our own notice, sent back", [ours, "Message-ID: <burin.notice.0a@quillgate.example>"]],
    ["our own test message", [ours, "Message-ID: <burin.test.0a@quillgate.example>"]],
    ["a delivery report with the letter as a file", daemon, parts(words, file("letter.eml", "text/plain"))],
    ["a delivery report about our test message", ...reportOn("<burin.test.0a@quillgate.example>", "failed")],
    // RFC 5546 §3.2.3
    [
      "a calendar reply",
      ["Subject: Site meeting", absence, 'Content-Type: multipart/alternative; boundary="b"'],
      parts(
        words,
        "Content-Type: text/calendar; method=REPLY\r\n\r\nBEGIN:VCALENDAR\r\nMETHOD:REPLY\r\nEND:VCALENDAR",
      ),
    ],
    [
      "a calendar reply with its file",
      ["Subject: Accepted: Site meeting", mixed],
      parts(words, file("invite.ics", "text/calendar", "BEGIN:VCALENDAR\r\nMETHOD:REPLY\r\nEND:VCALENDAR")),
    ],
    [
      "a delivery report that repeats a letter of words",
      [
        "From: mailer-daemon@brightwire.example",
        'Content-Type: multipart/report; report-type=delivery-status; boundary="b"',
      ],
      parts(
        words,
        "Content-Description: Undelivered Message\r\nContent-Type: message/rfc822\r\n\r\nFrom: orders@quillgate.example\r\nTo: x@y.example\r\nSubject: Hello\r\n\r\nA letter.",
      ),
    ],
    [
      "a delivery report about a letter of somebody else's",
      ["From: mailer-daemon@brightwire.example", "Subject: failure notice"],
      "Sorry, I could not deliver your message to x@y.example.",
    ],
  ])("%s", async (_, headers, body) => {
    expect(await take(await temporaryDesk(), headers, body)).toMatchObject({ state: "silent" });
  });
});

describe("everything else waits for a person", () => {
  test.each<[string, string[], string?]>([
    [
      "an absence note with a file",
      [absence, mixed],
      parts(words, file("list.xlsx", "application/vnd.ms-excel")),
    ],
    ["one with a scan", [absence, mixed], parts(words, file("scan.jpg", "image/jpeg"))],
    ["one that speaks of an order", [absence], "CANCEL order KF-1001"],
    ["one that does so in its subject", [absence, "Subject: PO 4711"], "Away."],
    ["one that announces a number", [absence], "re purchase order no. 12"],
    ["one with marks before the figure", [absence], "job#:. 12"],
    ["one with marks behind the announced number", [absence], "order no#:. 12"],
    ["one with eight letters before the figure", [absence], "order abcdefgh-1"],
    ["one that quotes an order of nobody's", [absence], "> order KF-1001"],
    ["a delivery report of a letter with an order", daemon, parts(words, repeated("Hello", "order KF-1001"))],
    ["one of a letter that has it in its subject", daemon, parts(words, repeated("PO 4711", "A letter."))],
    ["one with a file of its own", daemon, parts(words, file("letter.txt", "text/plain"))],
    [
      "one with a file whose name only has .eml in it",
      daemon,
      parts(words, file("letter.eml.txt", "text/plain")),
    ],
    [
      "a receipt with such a file",
      ["Subject: Read: x", mixed],
      parts("Content-Type: text/plain\r\n\r\nIt was read.", file("letter.eml.txt", "text/plain")),
    ],
    [
      "a calendar reply with a file whose name only has .ics in it",
      ["Subject: Accepted: Site meeting", absence, mixed],
      parts(
        words,
        "Content-Type: text/calendar; method=REPLY\r\n\r\nBEGIN:VCALENDAR\r\nMETHOD:REPLY\r\nEND:VCALENDAR",
        file("a.ics.txt", "text/plain"),
      ),
    ],
    ["a receipt with an invitation", ["Subject: Read: x", mixed], parts(words, file("a.ics", "text/plain"))],
    ["a notice of ours that came back", ...reportOn("<burin.notice.0a@quillgate.example>", "failed")],
    ["one with a link to files", [absence], "https://share.brightwire.example/f/8c1b2d90a7"],
    ["an empty return path alone", ["Return-Path: <>"]],
    ["no-reply@", ["From: no-reply@brightwire.example"]],
    ["noreply-orders@", ["From: noreply-orders@brightwire.example"]],
    ["a wish for no answers", ["X-Auto-Response-Suppress: All"]],
    ["bulk mail", ["Precedence: bulk"]],
    ["what a program sent by itself", ["Auto-Submitted: auto-generated"]],
    ["our own address, by whomever", ["From: orders@quillgate.example"]],
    [
      "our own address with a made-up Message-ID",
      [
        "From: orders@quillgate.example",
        "Message-ID: <burin.00000000000000000000000000000000@quillgate.example>",
      ],
    ],
    ["a receipt of nothing", ["Subject: Read: the new drawing"], "Please change the lobby station."],
    ["a receipt that says already", ["Subject: Read: the new drawing"], "It is already spread for lunch."],
    ["an invitation", ["Content-Type: text/calendar; method=REQUEST"], "BEGIN:VCALENDAR"],
  ])("%s", async (_, headers, body) => {
    expect(await take(await temporaryDesk(), headers, body)).toMatchObject({ state: "held" });
  });

  test("a number of an order in the record, however it is written", async () => {
    const made = await temporaryDesk();
    const numbersKnown = (keys: readonly string[]): Promise<boolean> =>
      Promise.resolve(keys.includes("KF1001"));
    const buyers = { ...made.store.buyers, numbersKnown };
    const desk = { ...made, store: { ...made.store, buyers } };
    for (const [n, body] of ["Stop kf 1001 please", "re KF-1001", "nothing of yours"].entries())
      expect((await take(desk, [absence, `Message-ID: <${n}@b.example>`], body)).state).toBe(
        n < 2 ? "held" : "silent",
      );
  });

  test("a list's letter from somebody who was answered before", async () => {
    const desk = await temporaryDesk();
    await take(desk, ["Message-ID: <1@b.example>"], "Hello");
    expect(await take(desk, ["List-Id: <sites.brightwire.example>"])).toMatchObject({ state: "held" });
  });
});

/** A delivery report as RFC 3464 has it, about a message with this Message-ID. */
function reportOn(messageId: string, action = "failed"): [string[], string] {
  const status = `Content-Type: message/delivery-status\r\n\r\nReporting-MTA: dns; mx.brightwire.example\r\n\r\nFinal-Recipient: rfc822; ines@brightwire.example\r\nAction: ${action}\r\nStatus: 5.1.1\r\nDiagnostic-Code: smtp; 550 5.1.1 no such\r\n user here`;
  const original = `Content-Type: text/rfc822-headers\r\n\r\nFrom: orders@quillgate.example\r\nMessage-ID: ${messageId}\r\nSubject: PASS: order KF-1001`;
  return [
    [
      "From: mailer-daemon@brightwire.example",
      "Return-Path: <>",
      "Auto-Submitted: auto-replied",
      'Content-Type: multipart/report; report-type=delivery-status; boundary="b"',
    ],
    parts(words, status, original),
  ];
}

describe("a delivery report about an answer of ours", () => {
  async function answered() {
    const sender = keepingSender();
    const desk = await temporaryDesk({ sender });
    const { letter } = await take(desk, ["Subject: Stations"], "Hello");
    return { desk, letter, messageId: sender.kept[0]?.messageId ?? "", bytes: sender.kept[0]?.bytes };
  }

  test("is filed, and the letter that was answered needs a person", async () => {
    const { desk, letter, messageId } = await answered();
    expect(await take(desk, ...reportOn(messageId))).toMatchObject({ state: "silent" });
    expect(await desk.store.letters.read(letter)).toMatchObject({
      state: "refused",
      why: "your answer to ines@brightwire.example came back: 550 5.1.1 no such user here",
    });
  });

  test("says nothing more while the answer is only late", async () => {
    const { desk, letter, messageId } = await answered();
    expect(await take(desk, ...reportOn(messageId, "delayed"))).toMatchObject({ state: "silent" });
    expect(await desk.store.letters.read(letter)).toMatchObject({ state: "sent" });
  });

  test("is seen too where it repeats the answer with all its files, in words of its own", async () => {
    const { desk, letter, bytes } = await answered();
    const body = `Hi. This is the mail program. I could not deliver it.\r\n\r\n--- Below this line is a copy.\r\n\r\n${Buffer.from(bytes ?? "").toString("latin1")}`;
    const headers = ["From: mailer-daemon@brightwire.example", "Subject: failure notice", "Return-Path: <>"];
    expect(await take(desk, headers, body)).toMatchObject({ state: "silent" });
    expect(await desk.store.letters.read(letter)).toMatchObject({ state: "refused" });
  });

  test("that is made up is for a person, and changes nothing", async () => {
    const { desk, letter } = await answered();
    const forged = "<burin.00000000000000000000000000000000@quillgate.example>";
    expect(await take(desk, ...reportOn(forged))).toMatchObject({ state: "held" });
    expect(await desk.store.letters.read(letter)).toMatchObject({ state: "sent" });
  });

  test("and the answer itself, sent back, is filed", async () => {
    const { desk, bytes } = await answered();
    const { letter } = await takeLetter(desk, bytes ?? new Uint8Array(), start);
    expect(await desk.store.letters.read(letter)).toMatchObject({ state: "silent" });
  });

  test("an absence note that repeats our own subject speaks of no order", async () => {
    const { desk, messageId } = await answered();
    const answer = await desk.store.answers.of(1);
    const subject = /^Subject: (.+)$/m.exec(Buffer.from(answer?.bytes ?? "").toString("latin1"))?.[1] ?? "";
    const headers = [absence, `In-Reply-To: ${messageId}`, `Subject: Automatic reply: ${subject}`];
    expect(await take(desk, headers, "Away.\r\n> order KF-1001 has passed")).toMatchObject({
      state: "silent",
    });
  });

  test("an absence note that speaks of one in words of its own is for a person", async () => {
    const { desk, messageId } = await answered();
    const headers = [absence, `In-Reply-To: ${messageId}`];
    expect(await take(desk, headers, "Away. Stop order KF-1001!\r\n> Hello")).toMatchObject({
      state: "held",
    });
  });
});

import { simpleParser } from "mailparser";
import { expect, test } from "vitest";
import { managersToAsk } from "../../src/intake/ask-manager.ts";
import { takeNote } from "../../src/intake/check-note.ts";
import type { Desk } from "../../src/intake/desk.ts";
import { answeredForManager } from "../../src/intake/managers.ts";
import { prepareRelease, releaseOrder } from "../../src/intake/release.ts";
import { putAside, settleOrder } from "../../src/intake/settle.ts";
import { takeDue, takeLetter } from "../../src/intake/take.ts";
import { readPeople } from "../../src/intake/tell-people.ts";
import type { Sending } from "../../src/ports/sender.ts";
import type { Answered } from "../../src/ports/store.ts";
import type { Managing } from "../../src/trade/manager.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";
import { answerTo, letterOf, post, type Sent } from "../make/thread.ts";

const ana = { name: "Ana Reyes", address: "ana@quillgate.example" };
const greta = "greta@fallowmere.example";
const ofAna: Managing = { buyer: "fallowmere.example", manager: ana, waits: false };
const waiting: Managing = { ...ofAna, waits: true };

const device = (mark: string, legend = "NORTH", order = "FM-90"): Sent => ({
  mark,
  legend: [legend],
  fill: { order },
});

async function deskOf(managing: readonly Managing[], says?: () => Sending) {
  const sender = keepingSender(says);
  const made = await temporaryDesk({ sender });
  const desk: Desk = { ...made, rules: { ...made.rules, managing } };
  return { desk, sender };
}

const verdictOf = async ({ store }: Desk, number = "FM-90") => (await store.orders.named(number))[0]?.verdict;

const pointsOf = async (desk: Desk): Promise<string[]> =>
  (await readPeople(desk.store, desk.clock.now())).flatMap(({ points }) => points.map(({ says }) => says));

test("the manager has a copy of the answer, and the answer says so", async () => {
  const { desk, sender } = await deskOf([ofAna]);
  const letter = await post(desk, { sheets: [device("T-1")] });
  expect(letter.verdict).toBe("pass");
  expect(sender.kept[0]).toMatchObject({ recipient: greta, copies: [ana.address] });
  const sent = await simpleParser(Buffer.from(sender.kept[0]?.bytes ?? ""));
  expect([sent.to, sent.cc].flat().map((one) => one?.text)).toEqual([greta, ana.address]);
  expect((await answerTo(desk, letter)).replaceAll(/\s+/g, " ")).toContain(
    "- Ana Reyes, who manages this order, has a copy of this letter.",
  );
});

test.each([
  ["another buyer", { buyer: "brightwire.example" }],
  ["another project", { project: "Larkspur Library" }],
  ["larger orders", { stationsAbove: 2 }],
])("orders that do not fit are not managed: %s", async (_, named) => {
  const { desk, sender } = await deskOf([{ ...named, manager: ana, waits: true }]);
  const letter = await post(desk, { sheets: [device("T-1"), device("T-2", "SOUTH")] });
  expect(letter.verdict).toBe("pass");
  expect(sender.kept[0]?.copies).toEqual([]);
});

test("more stations than named make an order its manager's", async () => {
  const { desk, sender } = await deskOf([{ stationsAbove: 1, manager: ana, waits: false }]);
  await post(desk, { sheets: [device("T-1")] });
  await post(desk, { sheets: [device("T-2", "SOUTH")] });
  expect(sender.kept.map(({ copies }) => copies)).toEqual([[], [ana.address]]);
});

test("a manager is not told of another order in the same letter that is not his", async () => {
  const { desk, sender } = await deskOf([{ stationsAbove: 1, manager: ana, waits: false }]);
  await post(desk, { sheets: [device("T-1"), device("T-2", "SOUTH"), device("T-1", "WEST", "FM-91")] });
  expect(sender.kept[0]?.copies).toEqual([]);
});

test("of an order that came with others the manager is asked apart, once", async () => {
  const { desk, sender } = await deskOf([{ stationsAbove: 1, manager: ana, waits: true }]);
  await post(desk, { sheets: [device("T-1"), device("T-2", "SOUTH"), device("T-1", "WEST", "QX-551")] });
  const ask = async (): Promise<void> => {
    for (const note of await managersToAsk(desk)) await takeNote(desk, note);
    while (await takeDue(desk));
  };
  await ask();
  expect(sender.kept).toHaveLength(2);
  expect(sender.kept[1]).toMatchObject({ recipient: greta, copies: [ana.address] });
  const { text = "" } = await simpleParser(Buffer.from(sender.kept[1]?.bytes ?? ""));
  expect(text).toContain("waits for the word of Ana Reyes");
  expect(text).not.toContain("QX-551");
  await ask();
  expect(sender.kept).toHaveLength(2);
  const from = "Ana Reyes <ana@quillgate.example>";
  const number = (await desk.store.orders.named("FM-90"))[0]?.questions[0]?.number;
  await post(desk, { from, text: `${number} YES`, to: await desk.store.letters.read(2) });
  expect(await verdictOf(desk)).toBe("pass");
});

test("the manager of an order that is withdrawn whole has a copy, and none of another's", async () => {
  const ofProject = { project: "Mill Race Baths", manager: ana, waits: false };
  const { desk, sender } = await deskOf([ofProject]);
  const first = await post(desk, { sheets: [device("T-1")] });
  await post(desk, { text: "CANCEL order", to: first });
  expect(sender.kept[1]).toMatchObject({ recipient: greta, copies: [ana.address] });

  const fill = { order: "QX-551", project: "Larkspur Library" };
  const both = await post(desk, { sheets: [device("T-1", "WEST"), { ...device("T-2", "SOUTH"), fill }] });
  expect(sender.kept[2]?.copies).toEqual([]);
  await post(desk, { text: "CANCEL T-2", to: both });
  expect(await verdictOf(desk, "QX-551")).toBeUndefined();
  expect(sender.kept[3]?.copies).toEqual([]);
});

test("a copy that is refused: the answer is sent once, and the people's list has who had none", async () => {
  const unreached = "ana@quillgate.example: 550 no such mailbox";
  const { desk, sender } = await deskOf([ofAna], () => ({ kind: "sent", words: "250", unreached }));
  const letter = await post(desk, { sheets: [device("T-1")] });
  expect(letter.state).toBe("sent");
  while (await takeDue(desk));
  expect(sender.kept).toHaveLength(1);
  expect(await pointsOf(desk)).toEqual([`the copy of its answer was not delivered: ${unreached}`]);
  await desk.store.letters.putAside(letter.letter, { name: "Rosa", why: "told her" }, desk.clock.now());
  expect(await pointsOf(desk)).toEqual([]);
});

test("a copy that comes back leaves the buyer's answer as sent, and tells a person", async () => {
  const { desk } = await deskOf([ofAna]);
  const letter = await post(desk, { sheets: [device("T-1")] });
  const report = (to: string): Uint8Array =>
    Buffer.from(
      `From: MAILER-DAEMON@mx.example\r\nTo: orders@quillgate.example\r\nMessage-ID: <${to}.dsn@mx.example>\r\nSubject: Undelivered\r\nAuto-Submitted: auto-replied\r\nContent-Type: multipart/report; report-type=delivery-status; boundary="r"\r\n\r\n--r\r\n\r\nNo.\r\n--r\r\nContent-Type: message/delivery-status\r\n\r\nReporting-MTA: dns; mx.example\r\n\r\nFinal-Recipient: rfc822; ${to}\r\nAction: failed\r\nDiagnostic-Code: smtp; 550 no\r\n\r\n--r\r\nContent-Type: text/rfc822-headers\r\n\r\nMessage-ID: ${letter.answer?.messageId}\r\n\r\n--r--\r\n`,
    );
  await takeLetter(desk, report(ana.address), desk.clock.now());
  expect((await desk.store.letters.read(letter.letter)).state).toBe("sent");
  expect(await pointsOf(desk)).toEqual([
    "the copy of its answer was not delivered: ana@quillgate.example: it came back: 550 no",
  ]);
  await takeLetter(desk, report(greta), desk.clock.now());
  expect((await desk.store.letters.read(letter.letter)).state).toBe("refused");
});

test("a death before the server's words were kept: sent once, and somebody looks whether the copy arrived", async () => {
  let is: Sending["kind"] = "unknown";
  const { desk } = await deskOf([ofAna]);
  let now = desk.clock.now();
  let times = 0;
  const dying: Desk = {
    ...desk,
    clock: { now: () => now },
    sender: {
      send: () => {
        times++;
        return Promise.resolve(
          is === "sent" ? { kind: "sent", words: "" } : { kind: "unknown", words: "lost" },
        );
      },
      find: () => Promise.resolve(true),
    },
  };
  const letter = await post(dying, { sheets: [device("T-1")] });
  expect(letter.state).toBe("unknown");
  is = "sent";
  now = new Date(now.getTime() + 3_600_000);
  while (await takeDue(dying));
  expect((await desk.store.letters.read(letter.letter)).state).toBe("sent");
  expect(times).toBe(1);
  expect(await pointsOf(desk)).toEqual([
    "the copy of its answer was not delivered: nobody knows whether its copy reached ana@quillgate.example",
  ]);
});

test("an order that would pass waits for its manager's word, and passes with it", async () => {
  const { desk, sender } = await deskOf([waiting]);
  const letter = await post(desk, { sheets: [device("T-1")] });
  expect(letter.verdict).toBe("person");
  // He has a copy of the answer that asks him.
  expect(await managersToAsk(desk)).toEqual([]);
  const text = (await answerTo(desk, letter)).replaceAll(/\s+/g, " ");
  expect(text).toContain("1. This order waits for the word of Ana Reyes, who manages it.");
  expect(text).toContain(" Ana Reyes has to agree before the order passes. You need do nothing for it.");
  expect(text).not.toContain("looks at this letter and writes to you");
  expect(await pointsOf(desk)).toContain("This order waits for the word of Ana Reyes, who manages it.");
  expect((await prepareRelease("FM-90", { by: "Tom" }, desk)).ok).toBe(false);

  const word = await post(desk, { from: "Ana Reyes <ana@quillgate.example>", text: "1 YES", to: letter });
  expect(word.verdict).toBe("pass");
  expect(await verdictOf(desk)).toBe("pass");
  expect(sender.kept.at(-1)).toMatchObject({ recipient: greta, copies: [ana.address] });
  expect((await answerTo(desk, word)).replaceAll(/\s+/g, " ")).toContain(
    "- Settled: number 1 (by Ana Reyes).",
  );
  expect(await pointsOf(desk)).toEqual([]);
  expect(await desk.store.orders.confirmed(greta, "FM-90")).toMatchObject([{ by: "Ana Reyes" }]);
  expect((await prepareRelease("FM-90", { by: "Tom" }, desk)).ok).toBe(true);
  expect((await desk.store.verify()).differ).toEqual([]);
});

test("what is wrong comes first: nobody asks the manager of an order that cannot pass", async () => {
  const { desk } = await deskOf([waiting]);
  const letter = await post(desk, { sheets: [device("T-1", "HALFF")] });
  expect(letter.problems.map(({ check }) => check)).not.toContain("manager-word");
  const settled = await post(desk, { text: "1 YES", to: letter });
  expect(settled.problems.map(({ check }) => check)).toContain("manager-word");
  expect(settled.verdict).toBe("person");
});

test("the buyer's own YES is not the manager's word", async () => {
  const { desk } = await deskOf([waiting]);
  const letter = await post(desk, { sheets: [device("T-1")] });
  const said = await post(desk, { text: "1 YES", to: letter });
  expect(said.verdict).toBe("person");
  expect(await verdictOf(desk)).toBe("person");
});

test.each(["fail", "none", "temporary"] as const)(
  "a letter under the manager's address that proves %s is not his word",
  async (proof) => {
    const { desk } = await deskOf([waiting]);
    const letter = await post(desk, { sheets: [device("T-1")] });
    const forged: Desk = {
      ...desk,
      rules: { ...desk.rules, nameServers: [] },
      reader: { ...desk.reader, sender: () => Promise.resolve({ ok: true, value: proof }) },
    };
    await post(forged, { from: "Ana Reyes <ana@quillgate.example>", text: "1 YES", to: letter });
    expect(await verdictOf(desk)).toBe("person");
  },
);

test("a stranger who replies to the answer gives no word", async () => {
  const { desk } = await deskOf([waiting]);
  const letter = await post(desk, { sheets: [device("T-1")] });
  const said = await post(desk, { from: "Eve <eve@stranger.example>", text: "1 YES", to: letter });
  expect(await verdictOf(desk)).toBe("person");
  expect(await answerTo(desk, said)).not.toContain("FM-90");
});

test("the sender of a held letter that names the project learns of no manager", async () => {
  const { desk, sender } = await deskOf([{ project: "Fallowmere Baths", manager: ana, waits: true }]);
  const fill = { order: "FM-90", project: "Fallowmere Baths" };
  await post(desk, { sheets: [{ ...device("T-1"), fill }] });
  const held = await post(desk, { from: "Eve <eve@stranger.example>", sheets: [{ ...device("T-2"), fill }] });
  expect(held.why).toBe("it names an order number of another buyer");
  expect(await answerTo(desk, held)).not.toMatch(/Ana|FM-90/);
  expect(sender.kept.at(-1)).toMatchObject({ recipient: "eve@stranger.example", copies: [] });
});

test("the manager of another project gives no word, and learns nothing", async () => {
  const other: Managing = {
    ...ofAna,
    buyer: "oakmoor.example",
    manager: { name: "Lou", address: "lou@quillgate.example" },
  };
  const { desk } = await deskOf([waiting, other]);
  const letter = await post(desk, { sheets: [device("T-1")] });
  const said = await post(desk, { from: "Lou <lou@quillgate.example>", text: "1 YES", to: letter });
  expect(await verdictOf(desk)).toBe("person");
  expect(await answerTo(desk, said)).not.toContain("FM-90");
});

test("a manager's NO stops the order, and goes to a person", async () => {
  const { desk } = await deskOf([waiting]);
  const letter = await post(desk, { sheets: [device("T-1")] });
  const no = await post(desk, { from: "Ana Reyes <ana@quillgate.example>", text: "1 NO", to: letter });
  expect(no.verdict).toBe("person");
  expect(await verdictOf(desk)).toBe("person");
  expect((await pointsOf(desk)).join("\n")).toContain("“1 NO”");
});

test("what a manager writes is told as his, without his words, and the buyer cannot say that it asks for nothing", async () => {
  const { desk } = await deskOf([waiting]);
  const from = "Ana Reyes <ana@quillgate.example>";
  const first = await post(desk, { sheets: [device("T-1")] });
  await post(desk, { from, text: "1 YES", to: first });
  for (const text of ["1 NO", "Please hold this order."]) {
    const said = await post(desk, { from, text, to: first });
    const answer = (await answerTo(desk, said)).replaceAll(/\s+/g, " ");
    expect(answer).toContain("Ana Reyes, who manages this order, has written to us about it.");
    expect(answer).not.toContain(`“${text}”`);
    expect(answer).not.toContain("NOTHING");
    expect(answer).not.toContain("your letter");
  }
  const [order] = await desk.store.orders.named("FM-90");
  const numbers = order?.questions.map(({ number }) => number).join(", ");
  await post(desk, { text: `${numbers}: nothing`, to: await desk.store.letters.read(4) });
  expect(await verdictOf(desk)).toBe("person");
  expect(await pointsOf(desk)).toEqual(
    expect.arrayContaining(["Ana Reyes writes “1 NO”", "Ana Reyes writes “Please hold this order.”"]),
  );
  for (const letter of [3, 4, 5])
    expect((await putAside(desk, letter, { name: "Rosa Imhoff", why: "Ana agrees" })).done).toBe(true);
  expect(await verdictOf(desk)).toBe("pass");
  expect((await desk.store.verify()).differ).toEqual([]);
});

test("the same words of a buyer and of the manager are two: the buyer takes back his own", async () => {
  const { desk } = await deskOf([waiting]);
  const first = await post(desk, { sheets: [device("T-1")] });
  await post(desk, { from: "Ana Reyes <ana@quillgate.example>", text: "1 YES", to: first });
  const text = "Please hold this order.";
  await post(desk, { from: "Ana Reyes <ana@quillgate.example>", text, to: first });
  const own = await post(desk, { text, to: first });
  const { number } =
    (await desk.store.orders.named("FM-90"))[0]?.questions.find(
      ({ problem }) => problem.facts["by"] === undefined,
    ) ?? {};
  await post(desk, { text: `${number} NOTHING`, to: own });
  expect((await desk.store.orders.named("FM-90"))[0]?.carried).toMatchObject([
    { letter: "3", by: "Ana Reyes" },
  ]);
  expect(await verdictOf(desk)).toBe("person");
});

test("a manager answers none of the buyer's questions, and withdraws nothing", async () => {
  const { desk } = await deskOf([waiting]);
  const letter = await post(desk, { sheets: [device("T-1", "HALFF")] });
  const said = await post(desk, { from: "Ana Reyes <ana@quillgate.example>", text: "1 YES", to: letter });
  expect(said.verdict).toBe("person");
  await post(desk, { from: "Ana Reyes <ana@quillgate.example>", text: "CANCEL T-1", to: letter });
  const [order] = await desk.store.orders.named("FM-90");
  expect(order?.sheets).toHaveLength(1);
  expect(order?.verdict).toBe("person");
});

test("an order that changes after the word needs it anew", async () => {
  const { desk } = await deskOf([waiting]);
  const first = await post(desk, { sheets: [device("T-1")] });
  const from = "Ana Reyes <ana@quillgate.example>";
  await post(desk, { from, text: "1 YES", to: first });
  const changed = await post(desk, { sheets: [device("T-2", "SOUTH")] });
  expect(changed.verdict).toBe("person");
  expect(changed.problems.map(({ check }) => check)).toEqual(["manager-word"]);
  await post(desk, { from, text: "1 YES", to: first });
  expect(await verdictOf(desk)).toBe("person");
});

test("one of our own people can give the word, with a name and a reason", async () => {
  const { desk } = await deskOf([waiting]);
  await post(desk, { sheets: [device("T-1")] });
  const [order] = await desk.store.orders.named("FM-90");
  const by = { name: "Rosa Imhoff", why: "Ana says so on the telephone" };
  const said = await settleOrder(desk, order ?? { buyer: "", number: "" }, [{ kind: "yes", number: 1 }], by);
  expect(said.done).toBe(true);
  expect(await verdictOf(desk)).toBe("pass");
});

test("an order released as it stands asks for no word; one that passed before the setting is not released", async () => {
  const { desk } = await deskOf([]);
  await post(desk, { sheets: [device("T-1")] });
  const strict: Desk = { ...desk, rules: { ...desk.rules, managing: [waiting] } };
  expect((await releaseOrder(strict, "FM-90", "Tom", () => Promise.resolve("here"))).ok).toBe(false);
  expect((await releaseOrder(desk, "FM-90", "Tom", () => Promise.resolve("here"))).ok).toBe(true);
  const thanks = await post(strict, { text: "Thank you.", to: await desk.store.letters.read(1) });
  expect(thanks.problems.map(({ check }) => check)).not.toContain("manager-word");
  expect(await verdictOf(desk)).toBe("pass");
});

/** A letter of the manager with another attached whole. */
async function forwarding(
  inner: Uint8Array,
  from = "Ana Reyes <ana@quillgate.example>",
  text = "",
): Promise<Uint8Array> {
  const head = `From: ${from}\r\nTo: orders@quillgate.example\r\nMessage-ID: <${Math.random()}@quillgate.example>\r\nSubject: Fwd: Stations\r\nContent-Type: multipart/mixed; boundary="outer"\r\n\r\n--outer\r\n\r\n${text}\r\n--outer\r\nContent-Type: message/rfc822\r\n\r\n`;
  return Buffer.concat([Buffer.from(head), inner, Buffer.from("\r\n--outer--\r\n")]);
}

async function take(desk: Desk, bytes: Uint8Array) {
  const { letter } = await takeLetter(desk, bytes, desk.clock.now());
  return desk.store.letters.read(letter);
}

test("a contractor's letter that the manager forwards is the contractor's, and both are answered", async () => {
  const { desk, sender } = await deskOf([waiting]);
  const letter = await take(desk, await forwarding(await letterOf({ sheets: [device("T-1")] })));
  expect(letter.orders).toEqual(["FM-90"]);
  const [order] = await desk.store.orders.named("FM-90");
  expect(order?.buyer).toBe(greta);
  expect(sender.kept[0]).toMatchObject({ recipient: greta, copies: [ana.address] });
  expect(await answerTo(desk, letter)).toContain("Ana Reyes forwarded your letter to us.");
  // To forward is not to agree.
  expect(order?.verdict).toBe("person");
});

test("one forwarded in the text, its sheets beside it, counts too", async () => {
  const { desk, sender } = await deskOf([ofAna]);
  const text =
    "---------- Forwarded message ---------\nFrom: Greta Sorley <greta@fallowmere.example>\nDate: Mon, Nov 9, 2026 at 8:00 AM\nSubject: Stations\nTo: <ana@quillgate.example>\n\nHello,\n\nattached.\n\nGreta Sorley\n";
  const letter = await post(desk, {
    from: "Ana Reyes <ana@quillgate.example>",
    text,
    sheets: [device("T-1")],
  });
  expect(letter.verdict).toBe("pass");
  expect((await desk.store.orders.named("FM-90"))[0]?.buyer).toBe(greta);
  expect(sender.kept[0]).toMatchObject({ recipient: greta, copies: [ana.address] });
});

const outlook = [
  "________________________________",
  "From: Greta Sorley <greta@fallowmere.example>",
  "Sent: Monday, November 9, 2026 8:00 AM",
  "To: Ana Reyes <ana@quillgate.example>",
  "Subject: Stations",
  "",
  "Hello,",
  "",
  "attached.",
  "",
  "Greta Sorley",
];
const ofAnas = { from: "Ana Reyes <ana@quillgate.example>", subject: "FW: Stations" };

test("one forwarded as Outlook does, under a header alone, is the buyer's", async () => {
  const { desk, sender } = await deskOf([ofAna]);
  const letter = await post(desk, { ...ofAnas, text: outlook.join("\n"), sheets: [device("T-1")] });
  expect(letter.verdict).toBe("pass");
  expect((await desk.store.orders.named("FM-90"))[0]?.buyer).toBe(greta);
  expect(sender.kept[0]).toMatchObject({ recipient: greta, copies: [ana.address] });
});

test("sheets under a header that names no address are nobody's, not the manager's own", async () => {
  const { desk } = await deskOf([ofAna]);
  const text = outlook.join("\n").replace(" <greta@fallowmere.example>", "");
  const letter = await post(desk, { ...ofAnas, text, sheets: [device("T-1")] });
  expect(letter.why).toMatch(/not clear whose letter/);
  expect(await desk.store.orders.named("FM-90")).toEqual([]);
});

test("our answer, forwarded under a header alone, takes the manager's word above it", async () => {
  const { desk, sender } = await deskOf([waiting]);
  const letter = await post(desk, { sheets: [device("T-1")] });
  const answer = await answerTo(desk, letter);
  const header = ["From: Order desk <orders@quillgate.example>", ...outlook.slice(2, 4)];
  const { subject = "" } = await simpleParser(Buffer.from(sender.kept[0]?.bytes ?? ""));
  const text = ["1 YES", "", ...header, `Subject: ${subject}`, "", answer].join("\n");
  await post(desk, { ...ofAnas, subject: `FW: ${subject}`, text, to: letter });
  expect(await verdictOf(desk)).toBe("pass");
});

test("the words above what a manager forwards are the manager's: the buyer reads none of them and takes none back", async () => {
  const { desk, sender } = await deskOf([ofAna]);
  const above = "Please hold this one until Friday. They have not paid us yet.";
  const inline = { ...ofAnas, text: `${above}\n\n${outlook.join("\n")}`, sheets: [device("T-1")] };
  const letter = await post(desk, inline);
  const told = "Ana Reyes, who manages this order, has written to us about it.";
  expect((await answerTo(desk, letter)).replaceAll(/\s+/g, " ").split(told)).toHaveLength(2);
  await post(desk, { text: "1 NOTHING", to: letter });
  expect(await verdictOf(desk)).toBe("person");
  expect(await pointsOf(desk)).toEqual(
    expect.arrayContaining([
      "Ana Reyes writes “Please hold this one until Friday.”",
      "Ana Reyes writes “They have not paid us yet.”",
    ]),
  );

  const inner = await letterOf({ text: "I want T-9 in red.", sheets: [device("T-9", "WEST", "QX-551")] });
  const whole = await take(desk, await forwarding(inner, undefined, above));
  const answer = (await answerTo(desk, whole)).replaceAll(/\s+/g, " ");
  expect(answer).toContain(told);
  expect(answer).toContain("“I want T-9 in red.” stands in your letter.");

  const next = await post(desk, { sheets: [device("T-2", "SOUTH")] });
  expect((await answerTo(desk, next)).replaceAll(/\s+/g, " ")).toContain(
    "Ana Reyes, who manages this order, has written to us about it before.",
  );
  expect(sender.kept).toHaveLength(4);
  for (const { bytes } of sender.kept) {
    const { text = "", html } = await simpleParser(Buffer.from(bytes));
    expect(`${text}${html}`).not.toMatch(/until\s+Friday|not\s+paid/);
  }
});

test("what a manager says will come is not the buyer's promise", async () => {
  const { desk } = await deskOf([ofAna]);
  const text = `A corrected sheet will follow.\n\n${outlook.join("\n")}`;
  const letter = await post(desk, { ...ofAnas, text, sheets: [device("T-1")] });
  expect(await answerTo(desk, letter)).not.toMatch(/will\s+follow/);
  expect(await pointsOf(desk)).toContain("Ana Reyes writes “A corrected sheet will follow.”");

  const own = outlook.join("\n").replace("attached.", "A corrected sheet will follow.");
  const buyers = await post(desk, { ...ofAnas, text: own, sheets: [device("T-3", "WEST", "QX-551")] });
  expect((await answerTo(desk, buyers)).replaceAll(/\s+/g, " ")).toContain(
    "“A corrected sheet will follow.”",
  );
});

test("what a manager counts is not told as the buyer's count", async () => {
  const { desk } = await deskOf([ofAna]);
  const text = `5 devices in all.\n\n${outlook.join("\n")}`;
  const letter = await post(desk, { ...ofAnas, text, sheets: [device("T-1")] });
  expect(letter.problems.map(({ check }) => check)).toContain("count-differs");
  const answer = (await answerTo(desk, letter)).replaceAll(/\s+/g, " ");
  expect(answer).toContain("Ana Reyes, who manages this order, says 5 devices; 1 came.");
  expect(answer).not.toContain("Your letter says 5");
});

test("a letter within the buyer's that a manager forwards in the text is not the buyer's own", async () => {
  const { desk } = await deskOf([ofAna, { ...ofAna, buyer: "oakmoor.example" }]);
  const inner = await letterOf({ from: "Bo <bo@oakmoor.example>", sheets: [device("T-1")] });
  const text = `---------- Forwarded message ---------\n${outlook.slice(1).join("\n")}`;
  const letter = await take(desk, await forwarding(inner, undefined, text));
  expect(letter.why).toMatch(/not clear whose letter/);
});

test("whoever forwards an old letter in the text makes its sheets no newer", async () => {
  const { desk } = await deskOf([ofAna]);
  let now = desk.clock.now().getTime();
  const later: Desk = { ...desk, clock: { now: () => new Date((now += 60_000)) } };
  const text = outlook.join("\n").replace("November 9", "November 2");
  const date = "2026-11-09T14:30:00Z";
  await post(later, { date: "2026-11-06T14:00:00Z", sheets: [device("T-1", "SOUTH")] });
  const ofManager = await post(later, { ...ofAnas, date, text, sheets: [device("T-1", "NORTH")] });
  expect(ofManager.problems.map(({ check }) => check)).toEqual(["which-sheet-counts"]);
  await post(later, { date: "2026-11-06T14:00:00Z", sheets: [device("T-1", "SOUTH", "QX-551")] });
  const own = { subject: "FW: Stations", date, text, sheets: [device("T-1", "NORTH", "QX-551")] };
  expect((await post(later, own)).problems.map(({ check }) => check)).toContain("which-sheet-counts");
});

test("the desk writes to no stranger whom a manager names: the answer goes to the manager, and says so", async () => {
  const { desk, sender } = await deskOf([{ project: "Fallowmere Baths", manager: ana, waits: false }]);
  const sheet = { ...device("T-1"), fill: { order: "FM-90", project: "Fallowmere Baths" } };
  const inner = (): Promise<Uint8Array> => letterOf({ from: "Sid <sid@victim.example>", sheets: [sheet] });
  const letter = await take(desk, await forwarding(await inner()));
  expect(sender.kept[0]).toMatchObject({ recipient: ana.address, copies: [] });
  expect((await answerTo(desk, letter)).replaceAll(/\s+/g, " ")).toContain(
    "This answer goes to you alone: sid@victim.example has not written to this desk about this project.",
  );
  // Nor does it the second time, when he has an order by the first.
  await take(
    desk,
    await forwarding(
      await letterOf({
        from: "Sid <sid@victim.example>",
        subject: "More",
        sheets: [{ ...sheet, mark: "T-2" }],
      }),
    ),
  );
  expect(sender.kept.map(({ recipient }) => recipient)).toEqual([ana.address, ana.address]);
  const [order] = await desk.store.orders.named("FM-90");
  expect(order).toMatchObject({ buyer: "sid@victim.example" });
});

test.each([
  ["orders of nobody", [{ ...ofAna, project: "Larkspur Library" }]],
  [
    "orders of another manager",
    [
      { ...ofAna, manager: { name: "Lou", address: "lou@quillgate.example" } },
      { project: "Larkspur Library", manager: ana, waits: false },
    ],
  ],
])("a manager who forwards %s touches none", async (_, managing: readonly Managing[]) => {
  const { desk } = await deskOf(managing);
  await post(desk, { sheets: [device("T-1")] });
  const letter = await take(desk, await forwarding(await letterOf({ sheets: [device("T-1", "SOUTH")] })));
  expect(letter.why).toMatch(/another manages, or nobody/);
  expect((await desk.store.orders.named("FM-90"))[0]?.revision).toBe(1);
});

test("a manager who forwards a letter touches no order of another buyer", async () => {
  const { desk } = await deskOf([{ stationsAbove: 0, manager: ana, waits: false }]);
  await post(desk, { sheets: [device("T-1")] });
  const inner = await letterOf({ from: "Eve <eve@stranger.example>", sheets: [device("T-1", "SOUTH")] });
  const letter = await take(desk, await forwarding(inner));
  expect(letter.why).toBe("it names an order number of another buyer");
  expect(await answerTo(desk, letter)).not.toContain("FM-90");
});

test("letters of two that are forwarded together are nobody's", async () => {
  const { desk } = await deskOf([ofAna]);
  const text =
    "Begin forwarded message:\n\nFrom: Greta <greta@fallowmere.example>\nTo: a@b.example\n\nOne.\n\nBegin forwarded message:\n\nFrom: Bo <bo@fallowmere.example>\nTo: a@b.example\n\nTwo.\n";
  const letter = await post(desk, {
    from: "Ana Reyes <ana@quillgate.example>",
    text,
    sheets: [device("T-1")],
  });
  expect(letter.why).toMatch(/not clear whose letter/);
});

test("a word is for answers to one buyer about orders that are all the manager's, and to no held letter", async () => {
  const { desk } = await deskOf([waiting]);
  const { letter } = await post(desk, { sheets: [device("T-1"), device("T-1", "WEST", "FM-91")] });
  const { messageId = "" } = (await desk.store.answers.of(letter)) ?? {};
  const [answered] = await desk.store.answers.answered([messageId]);
  if (answered === undefined) throw new Error("no answer");
  const about = async (...all: readonly Answered[]) =>
    (await answeredForManager(all, [waiting], desk))?.goesOn;
  expect(await about(answered)).toEqual([answered]);
  expect(await about(answered, answered)).toEqual([answered, answered]);
  expect(await about(answered, { ...answered, buyer: "otto@fallowmere.example" })).toBeUndefined();
  expect(await about(answered, { ...answered, why: "it was held" })).toBeUndefined();
  expect(await about({ ...answered, orders: ["FM-92"] })).toBeUndefined();
  expect(await about()).toBeUndefined();
  expect(await answeredForManager([answered], [], desk)).toBeUndefined();
});

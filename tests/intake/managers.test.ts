import { simpleParser } from "mailparser";
import MailComposer from "nodemailer/lib/mail-composer";
import { expect, test } from "vitest";
import type { Desk } from "../../src/intake/desk.ts";
import { releaseOrder } from "../../src/intake/release.ts";
import { settleOrder } from "../../src/intake/settle.ts";
import { sendSummaries } from "../../src/intake/summary.ts";
import { takeDue, takeLetter } from "../../src/intake/take.ts";
import { readPeople } from "../../src/intake/tell-people.ts";
import type { Managed } from "../../src/trade/managed.ts";
import type { LetterRecord, OrderRecord } from "../../src/trade/record.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";
import { letterOf, post } from "../make/thread.ts";

const joan = { name: "Joan Mercer", address: "joan@quillgate.example" };
const greta = "greta@fallowmere.example";
const sheet = {
  mark: "P-1",
  legend: ["POOL"],
  fill: { order: "FM-80", project: "Larkspur Library" },
} as const;

async function managedDesk(
  ...managed: Managed[]
): Promise<Desk & { readonly kept: ReturnType<typeof keepingSender>["kept"] }> {
  const sender = keepingSender();
  const desk = await temporaryDesk({ sender });
  return {
    ...desk,
    catalogue: { ...desk.catalogue, managed },
    rules: { ...desk.rules, staff: managed.map(({ manager }) => manager.address) },
    kept: sender.kept,
  };
}

const ofProject: Managed = { project: "larkspur  library", manager: joan, waits: true };

/** A letter that holds another one, attached whole. */
function composeForwarded(original: Uint8Array, from: string): Promise<Uint8Array> {
  return new MailComposer({
    from,
    to: "orders@quillgate.example",
    date: new Date("2026-11-09T14:30:00Z"),
    subject: "Fwd: for you",
    text: "",
    attachments: [{ filename: "fwd.eml", content: Buffer.from(original), contentType: "message/rfc822" }],
  })
    .compile()
    .build();
}

async function orderIn(desk: Desk): Promise<OrderRecord> {
  const [order] = await desk.store.orders.named("FM-80");
  if (order === undefined) throw new Error("no order");
  return order;
}

async function wordsOf(desk: Desk, { letter }: Pick<LetterRecord, "letter">): Promise<string> {
  const answer = await desk.store.answers.of(letter);
  return (await simpleParser(Buffer.from(answer?.bytes ?? []))).text?.replaceAll(/\s+/g, " ") ?? "";
}

const fromJoan = (text: string, to: LetterRecord) => ({ from: `Joan Mercer <${joan.address}>`, text, to });

test("an order of a managed project waits for the manager's word, and both are told", async () => {
  const desk = await managedDesk(ofProject);
  const letter = await post(desk, { sheets: [sheet] });
  expect(letter.verdict).toBe("person");
  const words = await wordsOf(desk, letter);
  expect(words).toContain("waits for the word of Joan Mercer, who manages it for us.");
  expect(words).toContain("Joan Mercer, who manages this order for us, gets a copy of this letter.");
  expect(await desk.store.answers.of(letter.letter)).toMatchObject({
    recipient: greta,
    copies: [joan.address],
  });
  const { headers } = await simpleParser(
    Buffer.from((await desk.store.answers.of(letter.letter))?.bytes ?? []),
  );
  expect(headers.get("cc")).toMatchObject({ text: joan.address });
  while (await takeDue(desk));
  expect((await readPeople(desk.store, desk.clock.now())).map(({ order }) => order)).toEqual(["FM-80"]);
  const released = await releaseOrder(desk, "FM-80", "Rosa", () =>
    Promise.reject(new Error("nothing is written")),
  );
  expect(released).toMatchObject({ ok: false });
});

test("the manager's YES in a reply lets it pass, and its buyer is told", async () => {
  const desk = await managedDesk(ofProject);
  const letter = await post(desk, { sheets: [sheet] });
  const reply = await post(desk, fromJoan("1 YES", letter));
  expect(reply.verdict).toBe("pass");
  expect(await orderIn(desk)).toMatchObject({ verdict: "pass", questions: [] });
  expect(await desk.store.answers.of(reply.letter)).toMatchObject({
    recipient: greta,
    copies: [joan.address],
  });
  expect(await wordsOf(desk, reply)).toContain("PASS: order FM-80 is complete");
  const [confirmed] = await desk.store.orders.confirmed(greta, "FM-80");
  expect(confirmed).toMatchObject({ number: 1, by: "Joan Mercer" });
  const words = await wordsOf(desk, reply);
  expect(words).toContain("Settled: 1 (by Joan Mercer).");
  expect(words).not.toContain("You answered");
});

test("neither the buyer, nor a stranger, nor another manager gives the word", async () => {
  const other = { name: "Sam Oster", address: "sam@quillgate.example" };
  const desk = await managedDesk(ofProject, { project: "Quarry Street School", manager: other, waits: true });
  const letter = await post(desk, { sheets: [sheet] });
  for (const from of [
    `Greta Sorley <${greta}>`,
    "Mallory <mallory@oakmoor.example>",
    `Sam Oster <${other.address}>`,
  ]) {
    await post(desk, { from, text: "1 YES", to: letter });
    expect((await orderIn(desk)).verdict, from).toBe("person");
  }
});

test("a forged manager changes nothing", async () => {
  const desk = await managedDesk(ofProject);
  const letter = await post(desk, { sheets: [sheet] });
  for (const proof of ["fail", "none", "temporary"] as const) {
    const forged = {
      ...desk,
      rules: { ...desk.rules, nameServers: [] },
      reader: { ...desk.reader, sender: () => Promise.resolve({ ok: true, value: proof } as const) },
    };
    await post(forged, fromJoan("1 YES", letter));
    expect((await orderIn(desk)).verdict, proof).toBe("person");
  }
});

test("a changed order needs the word anew, and the word for what it was holds for that", async () => {
  const desk = await managedDesk(ofProject);
  const letter = await post(desk, { sheets: [sheet] });
  await post(desk, fromJoan("1 YES", letter));
  const changed = await post(desk, { sheets: [{ ...sheet, legend: ["LOBBY"] }], to: letter });
  expect(changed.verdict).toBe("person");
  const [question] = (await orderIn(desk)).questions;
  expect(question?.number).toBe(2);
  const again = await post(desk, fromJoan("2 YES", changed));
  expect(again.verdict).toBe("pass");
});

test("a NO, and anything else the manager writes, waits for a person", async () => {
  const desk = await managedDesk(ofProject);
  const letter = await post(desk, { sheets: [sheet] });
  for (const text of ["1 NO", "1 YES but change the finish to green", "Who ordered this?"]) {
    await post(desk, fromJoan(text, letter));
    expect((await orderIn(desk)).verdict, text).toBe("person");
  }
  while (await takeDue(desk));
  const [waiting] = await readPeople(desk.store, desk.clock.now());
  expect(waiting?.points.map(({ says }) => says).join("\n")).toContain("1 NO");
});

test("a manager is asked only about an order in which all else is right", async () => {
  const desk = await managedDesk(ofProject);
  const letter = await post(desk, { sheets: [{ ...sheet, legend: ["SALONA"] }] });
  expect(letter.verdict).toBe("confirm");
  expect((await orderIn(desk)).questions.map(({ problem }) => problem.check)).not.toContain("manager-word");
  const settled = await post(desk, { text: "1 YES", to: letter });
  expect(settled.verdict).toBe("person");
  expect(await wordsOf(desk, settled)).toContain("waits for the word of Joan Mercer");
});

test("one of us gives the word for the manager", async () => {
  const desk = await managedDesk(ofProject);
  await post(desk, { sheets: [sheet] });
  const said = await settleOrder(desk, { buyer: greta, number: "FM-80" }, [{ kind: "yes", number: 1 }], {
    name: "Rosa Imhoff",
    why: "Joan said so on the telephone",
  });
  expect(said).toMatchObject({ done: true });
  expect((await orderIn(desk)).verdict).toBe("pass");
});

test.each<[string, Managed, boolean]>([
  ["of the project", { project: "Larkspur Library", manager: joan, waits: false }, true],
  ["of another project", { project: "Quarry Street School", manager: joan, waits: false }, false],
  ["of the buyer", { buyer: greta, manager: joan, waits: false }, true],
  ["of the buyer's domain", { buyer: "fallowmere.example", manager: joan, waits: false }, true],
  ["of another domain that ends alike", { buyer: "mere.example", manager: joan, waits: false }, false],
  ["of more stations", { stationsAbove: 1, manager: joan, waits: false }, true],
  ["of no more stations", { stationsAbove: 2, manager: joan, waits: false }, false],
])("copies go to the manager of an order %s: %#", async (_, managed, isCopied) => {
  const desk = await managedDesk(managed);
  const letter = await post(desk, { sheets: [sheet, { ...sheet, mark: "P-2" }] });
  expect(letter.verdict).toBe("pass");
  const answer = await desk.store.answers.of(letter.letter);
  expect(answer?.copies).toEqual(isCopied ? [joan.address] : undefined);
  expect((await wordsOf(desk, letter)).includes("gets a copy of this letter")).toBe(isCopied);
});

test("what a held letter says is copied to nobody", async () => {
  const desk = await managedDesk(ofProject);
  await post(desk, { sheets: [sheet] });
  const stranger = await post(desk, { from: "Mallory <mallory@oakmoor.example>", sheets: [sheet] });
  const answer = await desk.store.answers.of(stranger.letter);
  expect(answer?.copies).toBeUndefined();
});

test("what a manager forwards counts as its writer's, and both are answered", async () => {
  const desk = await managedDesk(ofProject);
  await post(desk, { sheets: [{ ...sheet, fill: { order: "FM-1", project: "Quarry Street School" } }] });
  const original = await letterOf({ sheets: [sheet], subject: "Stations for the library" });
  const forwarded = await composeForwarded(original, joan.address);
  const { letter } = await takeLetter(desk, forwarded, desk.clock.now());
  expect(await orderIn(desk)).toMatchObject({ buyer: greta, verdict: "person" });
  expect(await desk.store.answers.of(letter)).toMatchObject({ recipient: joan.address, copies: [greta] });
});

test("a stranger whose letter a manager forwards is not written to", async () => {
  const desk = await managedDesk(ofProject);
  const original = await letterOf({ sheets: [sheet], from: "New Buyer <new@oakmoor.example>" });
  const { letter } = await takeLetter(desk, await composeForwarded(original, joan.address), desk.clock.now());
  expect(await orderIn(desk)).toMatchObject({ buyer: "new@oakmoor.example" });
  const answer = await desk.store.answers.of(letter);
  expect(answer?.recipient).toBe(joan.address);
  expect(answer?.copies).toBeUndefined();
});

test("a manager is told once a week how the orders stand, and not where there is nothing to tell", async () => {
  const plain = await managedDesk(ofProject);
  let now = new Date("2026-11-09T15:00:00Z");
  const [managed = ofProject] = plain.catalogue.managed ?? [];
  const desk = {
    ...plain,
    clock: { now: () => now },
    rules: { ...plain.rules, summaries: [{ managed, on: "monday" }] },
  };
  const summaries = () => desk.kept.filter(({ messageId }) => messageId.includes("summary"));
  await sendSummaries(desk);
  expect(summaries()).toHaveLength(0);
  await post(desk, { sheets: [sheet] });
  await post(desk, { sheets: [{ ...sheet, fill: { order: "FM-9", project: "Quarry Street School" } }] });
  // A month, hour by hour: from the next Monday on one each week, while the order is open.
  for (let hours = 0; hours < 28 * 24; hours++) {
    now = new Date(now.getTime() + 3_600_000);
    await sendSummaries(desk);
  }
  expect(summaries()).toHaveLength(4);
  const [first] = summaries();
  expect(first?.recipient).toBe(joan.address);
  const { subject, text = "", date } = await simpleParser(Buffer.from(first?.bytes ?? []));
  expect(subject?.replaceAll(/\s+/g, " ")).toBe("Orders of larkspur library: the week to 2026-11-16");
  expect(date?.toISOString()).toBe("2026-11-16T13:00:00.000Z");
  expect(text).toContain("- FM-80, greta@fallowmere.example: person; 1 point open (changed 2026-11-09)");
  expect(text).not.toContain("FM-9");
});

test("a summary that could not be sent is sent later, and only once by two workers", async () => {
  let isDown = true;
  const sender = keepingSender(() =>
    isDown ? { kind: "later", words: "421 down" } : { kind: "sent", words: "250 kept" },
  );
  const plain = await managedDesk(ofProject);
  const [managed = ofProject] = plain.catalogue.managed ?? [];
  const desk = { ...plain, sender, rules: { ...plain.rules, summaries: [{ managed, on: "monday" }] } };
  await post(desk, { sheets: [sheet] });
  // The tests' clock stands on a Monday morning.
  await sendSummaries(desk);
  isDown = false;
  await Promise.all([sendSummaries(desk), sendSummaries(desk)]);
  await sendSummaries(desk);
  expect(sender.kept.filter(({ messageId }) => messageId.includes("summary"))).toHaveLength(1);
});

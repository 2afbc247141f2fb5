import { simpleParser } from "mailparser";
import { expect, test } from "vitest";
import type { Desk } from "../../src/intake/desk.ts";
import { releaseOrder } from "../../src/intake/release.ts";
import { settleOrder } from "../../src/intake/settle.ts";
import { takeDue } from "../../src/intake/take.ts";
import { readPeople } from "../../src/intake/tell-people.ts";
import type { Managed } from "../../src/trade/managed.ts";
import type { LetterRecord, OrderRecord } from "../../src/trade/record.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";
import { post } from "../make/thread.ts";

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

import { expect, test } from "vitest";
import type { Store } from "../../src/ports/store.ts";
import { temporaryDesk, temporaryStore } from "../make/desk.ts";
import { aloneAt, quickReader, takeQuick } from "../make/quick.ts";
import { completeOrder } from "../make/sample.ts";
import { settled } from "./contract.ts";

const monday = new Date("2026-11-09T14:00:00Z");
const later = new Date("2026-11-09T14:00:03Z");
const leaseEnd = new Date("2026-11-09T14:10:00Z");
const rosa = { name: "Rosa Imhoff", why: "she has a new address" };

const history = async ({ letters }: Store, letter: number) =>
  (await letters.history(letter)).map(({ actor, what, words }) => [actor, what, words].join(" ").trim());

/** A letter whose answer was sent at the second try, after one of which nothing is known. */
async function sentLetter() {
  const store = await temporaryStore();
  const letter = await settled(store, "k1", completeOrder());
  const claim = async (at: Date) => {
    const taken = await store.letters.claim(letter, at, new Date(at.getTime() + 600_000));
    if (taken === undefined) throw new Error("the letter cannot be had");
    return taken;
  };
  const first = await claim(monday);
  await store.letters.mark(first, "sending", "", monday);
  await store.letters.mark(first, "unknown", "connection lost", monday, later);
  const second = await claim(later);
  await store.letters.mark(second, "sending", "", later);
  await store.letters.sent(second, "250 kept", undefined, later);
  await store.letters.release(second);
  return { store, letter, claim };
}

test("what happened to a letter is told from the first on, with who did it", async () => {
  const { store, letter } = await sentLetter();
  await store.letters.returned(letter, "550 no such person", later);
  await store.letters.returned(letter, "550 no such person", later);
  await store.letters.putAside(letter, rosa, later);
  expect(await history(store, letter)).toEqual([
    "burin received",
    "burin ready pass",
    "burin ready",
    "burin sending",
    "burin unknown connection lost",
    "burin sending",
    "burin sent 250 kept",
    "burin refused 550 no such person",
    "Rosa Imhoff put aside she has a new address",
  ]);
  const { events, broken, differ } = await store.verify();
  expect({ events, broken, differ }).toEqual({ events: 9, broken: undefined, differ: [] });
});

test("an answer that is sent again begins anew: at once, with no try counted, and the refusal forgotten", async () => {
  const { store, letter, claim } = await sentLetter();
  await store.letters.returned(letter, "550 no such person", later);
  expect(await store.letters.read(letter)).toMatchObject({ state: "refused", why: "550 no such person" });
  expect(await store.letters.sendAgain(letter, rosa, later)).toBe(true);
  expect((await history(store, letter)).at(-1)).toBe("Rosa Imhoff sent again she has a new address");
  expect(await claim(later)).toMatchObject({ state: "ready", tries: 0, unsure: 0 });
  expect((await store.letters.read(letter)).why).toBeUndefined();
});

test("an answer on its way is not sent again, nor where there is none", async () => {
  const { store, letter } = await sentLetter();
  expect(await store.letters.sendAgain(letter, rosa, later)).toBe(true);
  expect(await store.letters.sendAgain(letter, rosa, later)).toBe(false);
  const held = await settled(store, "k2", [], monday, { state: "held" });
  expect(await store.letters.sendAgain(held, rosa, later)).toBe(false);
  expect(await store.letters.returned(held, "550", later)).toBe(false);
  expect((await history(store, held)).slice(-1)).toEqual(["burin held person"]);
});

test("a copy that comes back leaves the answer as sent, and says who has none", async () => {
  const { store, letter } = await sentLetter();
  await store.letters.copyReturned(letter, "ana@quillgate.example: 550 no", later);
  expect(await store.letters.read(letter)).toMatchObject({
    state: "sent",
    answer: { unreached: "ana@quillgate.example: 550 no" },
  });
  expect((await history(store, letter)).at(-1)).toBe(
    "burin copy not delivered ana@quillgate.example: 550 no",
  );
});

test("a held letter is let in once, as a copy that is its new sender's and came when it came", async () => {
  const store = await temporaryStore();
  const held = await settled(store, "k1", [], monday, { state: "held" });
  const copy = await store.letters.letIn(held, { sender: "omar@oakmoor.example", lane: "l" }, rosa, later);
  if (copy === undefined) throw new Error("it is not let in");
  expect(await store.letters.letIn(held, { sender: "omar@oakmoor.example" }, rosa, later)).toBeUndefined();
  expect(await store.letters.claimDue(leaseEnd, new Date(leaseEnd.getTime() + 1), "l")).toMatchObject({
    letter: copy,
    letInAs: "omar@oakmoor.example",
    receivedAt: monday,
    state: "received",
  });
  expect(await store.letters.bytesOf(copy)).toEqual(await store.letters.bytesOf(held));
  expect((await history(store, held)).at(-1)).toBe(`Rosa Imhoff let in as letter ${copy} ${rosa.why}`);
  expect(await history(store, copy)).toEqual([`Rosa Imhoff received ${rosa.why}`]);
  expect(await store.people.waiting(later)).toEqual([]);
});

test("letters are listed page by page, the latest first, notes left out", async () => {
  const store = await temporaryStore();
  for (const [key, kind] of [
    ["k1", "letter"],
    ["k2", "letter"],
    ["n", "note"],
    ["k3", "letter"],
  ] as const)
    await store.letters.receive(key, new TextEncoder().encode(key), monday, undefined, kind);
  const numbers = async (most: number, before?: number) =>
    (await store.letters.list(most, before)).map(({ letter }) => letter);
  expect(await numbers(10)).toEqual([4, 2, 1]);
  expect(await numbers(2)).toEqual([4, 2]);
  expect(await numbers(2, 2)).toEqual([1]);
  expect((await store.letters.between(monday, later)).map(({ letter }) => letter)).toEqual([1, 2, 4]);
  expect(await store.letters.between(later, leaseEnd)).toEqual([]);
  expect(await store.letters.isKnown("n")).toBe(true);
  expect(await store.letters.isKnown("m")).toBe(false);
  const received = await store.letters.read(1);
  for (const unknown of ["verdict", "why", "from", "answer"]) expect(received).not.toHaveProperty(unknown);
  expect(received).toMatchObject({ subject: "", orders: [], sheets: 0, problems: [], attachments: [] });
  await expect(store.letters.read(9)).rejects.toThrow("no letter 9 in the record");
});

test("letters of a buyer about no order that wait for a person are told, the oldest first", async () => {
  const desk = await temporaryDesk({ reader: quickReader });
  const texts = ["Do you cut brass?", "", "Do you cut steel?"];
  for (const [i, text] of texts.entries()) {
    const sheets = text === "" ? [aloneAt("T-9", "ENTRY")] : [];
    await takeQuick(desk, { id: `${i}`, dated: monday, receivedAt: monday, text, sheets });
  }
  expect(await desk.store.buyers.lettersOfNoOrder("ines@brightwire.example")).toEqual([1, 3]);
  expect(await desk.store.buyers.lettersOfNoOrder("mara@oakmoor.example")).toEqual([]);
});

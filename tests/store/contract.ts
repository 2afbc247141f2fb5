import { expect, test } from "vitest";
import { numbersIn } from "../../src/answer/numbered.ts";
import { without } from "../../src/checks/sample.ts";
import { changesOf } from "../../src/judging/changes.ts";
import { makeReport } from "../../src/judging/report.ts";
import type { BuyerState } from "../../src/judging/state.ts";
import { type Claim, ClaimLost, type Outcome, StateMoved, type Store } from "../../src/ports/store.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { completeOrder, device, deviceAt, plate } from "../make/sample.ts";

const monday = new Date("2026-11-09T14:00:00Z");
const later = new Date("2026-11-09T14:00:03Z");
/** When a claim of these tests runs out. */
const leaseEnd = new Date("2026-11-09T14:10:00Z");
const ines = "ines@brightwire.example";
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

/** What every record must do, whatever database is below it. */
export function storeContract(open: () => Promise<Store>): void {
  test("a letter is kept byte for byte", async () => {
    const store = await open();
    const { letter } = await store.letters.receive("k1", bytes("From: a\n\nb"), monday);
    expect(await store.letters.bytesOf(letter)).toEqual(bytes("From: a\n\nb"));
    expect(await store.letters.states()).toEqual({ received: 1 });
  });

  test("the same letter twice is one row", async () => {
    const store = await open();
    const first = await store.letters.receive("k1", bytes("x"), monday);
    expect(await store.letters.receive("k1", bytes("x"), later)).toEqual({ ...first, again: true });
    const both = await Promise.all([
      store.letters.receive("k2", bytes("y"), monday),
      store.letters.receive("k2", bytes("y"), monday),
    ]);
    expect(new Set(both.map(({ letter }) => letter)).size).toBe(1);
  });

  test("an outcome comes back as it went in", async () => {
    const store = await open();
    const letter = await settled(store, "k1", [
      plate(),
      deviceAt(1),
      device({ id: "1/3" }, { "1": ["RECEPTION", ""] }),
    ]);
    const record = await store.letters.read(letter);
    expect(record).toMatchObject({
      verdict: "fail",
      state: "ready",
      from: "ines@brightwire.example",
      orders: ["BW-2207"],
      sheets: 3,
    });
    expect(record.problems.map(({ check }) => check)).toContain("row-too-long");
    expect((await store.answers.of(letter))?.bytes).toEqual(bytes("answer to k1"));
  });

  test("the bytes of a sheet come back as they came", async () => {
    const store = await open();
    await settled(store, "k1", [plate(), deviceAt(1)]);
    const originals = await store.orders.originals(["1/2", "1/1"]);
    expect([...originals]).toEqual([
      ["1/2", bytes("1/2")],
      ["1/1", bytes("1/1")],
    ]);
    expect(await store.orders.originals([])).toEqual(new Map());
    await expect(store.orders.originals(["1/1", "9/9"])).rejects.toThrow("9/9");
  });

  test("sheets stand, a stopped one among them, and the order says why it has not passed", async () => {
    const store = await open();
    await settled(store, "k1", [plate(), deviceAt(1), device({ id: "1/3" }, { "1": ["RECEPTION", ""] })]);
    const standing = await sheetsOf(store);
    expect(standing.map(({ id }) => id)).toEqual(["1/1", "1/2", "1/3"]);
    expect(standing[0]).toEqual(plate());
    const [order] = await store.orders.named("BW-2207");
    expect(order).toMatchObject({ verdict: "fail", revision: 1 });
    expect(order?.problems.map(({ check }) => check)).toContain("row-too-long");
  });

  test("a report made from a state that has moved meanwhile is refused, and nothing of it is stored", async () => {
    const store = await open();
    const state = await store.buyers.stateOf(ines, ["BW-2207"]);
    await settled(store, "k1", [plate(), deviceAt(1)]);
    await expect(settled(store, "k2", [deviceAt(2, { id: "2/1" })], later, {}, state)).rejects.toThrow(
      StateMoved,
    );
    expect((await sheetsOf(store)).map(({ id }) => id)).toEqual(["1/1", "1/2"]);
    expect(await store.letters.states()).toEqual({ ready: 1, received: 1 });
  });

  test("a number that somebody else has named meanwhile is refused", async () => {
    const store = await open();
    await settled(store, "k1", completeOrder());
    const eve = settled(store, "k2", [plate({ id: "2/1" })], later, { buyer: "eve@stranger.example" });
    await expect(eve).rejects.toThrow(StateMoved);
  });

  test("sheets without an order number are nobody else's", async () => {
    const store = await open();
    await settled(store, "k1", [without(plate(), "order")]);
    await settled(store, "k2", [without(plate({ id: "2/1" }), "order")], later, {
      buyer: "eve@stranger.example",
    });
    expect(await store.letters.states()).toEqual({ ready: 2 });
    expect(await store.buyers.ownerOf("")).toBeUndefined();
  });

  test("questions outlive the letter that opened them, and are closed by the revision that asks no more", async () => {
    const store = await open();
    const slate = deviceAt(2, { id: "1/3", finish: "SLT", lettering: "MLK" });
    await settled(store, "k1", [plate(), deviceAt(1), slate]);
    const asked = async () => (await store.orders.named("BW-2207"))[0]?.questions ?? [];
    const [first] = await asked();
    expect(first).toMatchObject({ station: "S-104", position: 2, openedAt: monday });
    await settled(store, "k2", [{ ...slate, id: "2/1", file: "again.pdf" }], later);
    expect((await asked())[0]).toMatchObject({ key: first?.key, openedAt: monday });
    await settled(store, "k3", [deviceAt(2, { id: "3/1" })], later);
    expect(await asked()).toEqual([]);
    const [order] = await store.orders.named("BW-2207");
    const { number } = first ?? {};
    expect(order?.revisions.map(({ opened, closed }) => [opened, closed])).toEqual([
      [[number], []],
      [[], []],
      [[], [number]],
    ]);
  });

  test("a question stands as it stood last, and a settled one stays settled", async () => {
    const store = await open();
    const slate = deviceAt(2, { id: "1/3", finish: "SLT", lettering: "MLK" });
    const asking = await settled(store, "k1", [plate(), deviceAt(1), slate]);
    const known = async () =>
      (await store.buyers.stateOf(ines, [])).orders.flatMap(({ questions }) =>
        questions.map(({ key, state, letter }) => ({ key, state, letter })),
      );
    const [{ key } = { key: "" }] = await known();
    expect(await known()).toEqual([{ key, state: "open", letter: asking }]);
    await settled(store, "k2", [deviceAt(2, { id: "2/1" })], later);
    expect(await known()).toEqual([{ key, state: "gone", letter: asking }]);
    await settled(store, "k3", [{ ...slate, id: "3/1" }], later);
    expect(await known()).toEqual([{ key, state: "open", letter: asking }]);
    const again = [deviceAt(1, { id: "4/1" })];
    await settled(store, "k4", again, later, { settles: [{ order: "BW-9", key }] });
    expect(await known()).toEqual([{ key, state: "open", letter: asking }]);
    await settled(store, "k5", [{ ...slate, id: "5/1" }], later, { settles: [{ order: "bw 2207", key }] });
    expect(await known()).toEqual([{ key, state: "settled", letter: asking }]);
    await settled(store, "k6", [deviceAt(2, { id: "6/1" })], later);
    await settled(store, "k7", [{ ...slate, id: "7/1" }], later);
    expect(await known()).toEqual([{ key, state: "settled", letter: asking }]);
  });

  test("how often an answer was sent without knowing is counted, and nothing else", async () => {
    const store = await open();
    const letter = await settled(store, "k1", completeOrder());
    const first = await claimed(store, letter, monday);
    await store.letters.mark(first, "sending", "", monday);
    await store.letters.mark(first, "later", "451", monday, later);
    const second = await claimed(store, letter, later);
    expect(second).toMatchObject({ tries: 1, unsure: 0 });
    await store.letters.mark(second, "sending", "", later);
    await store.letters.mark(second, "unknown", "connection lost", later);
    // It is the same sending, however often it cannot be looked for.
    await store.letters.mark(second, "unknown", "could not be looked for", later);
    await store.letters.mark(second, "unknown", "could not be looked for", later, leaseEnd);
    expect(await claimed(store, letter, leaseEnd)).toMatchObject({ tries: 2, unsure: 1 });
  });

  test("lines are known again by any name of their senders, each once", async () => {
    const store = await open();
    const lines = { senders: [ines, "brightwire.example"], keys: ["l1", "l2"] };
    await settled(store, "k1", completeOrder(), monday, { lines });
    await settled(store, "k2", [], later, { lines });
    await settled(store, "k3", [], later, { lines: { senders: [], keys: ["l3"] } });
    const seen = async (...senders: string[]) => [
      ...(await store.buyers.linesSeen(senders, ["l1", "l3", "l2"])),
    ];
    expect((await seen("brightwire.example")).toSorted()).toEqual(["l1", "l2"]);
    expect(await seen("stranger.example")).toEqual([]);
    expect(await seen()).toEqual([]);
    expect(await store.buyers.linesSeen([ines], [])).toEqual(new Set());
  });

  test("of a letter's lines four hundred are remembered, and as many looked for", async () => {
    const store = await open();
    const keys = Array.from({ length: 401 }, (_, i) => `l${i}`);
    await settled(store, "k1", [], monday, { lines: { senders: [ines], keys } });
    expect(await store.buyers.linesSeen([ines], ["l399", "l400"])).toEqual(new Set(["l399"]));
    await settled(store, "k2", [], later, { lines: { senders: [ines], keys: ["l400"] } });
    expect((await store.buyers.linesSeen([ines], ["l400"])).size).toBe(1);
    expect((await store.buyers.linesSeen([ines], keys)).size).toBe(400);
  });

  test("people are told of letters in the order in which they came, five hundred at once, once an hour", async () => {
    const store = await open();
    const letters: number[] = [];
    for (let n = 0; n < 502; n++) {
      const { letter } = await store.letters.receive(`k${n}`, bytes("x"), n === 0 ? later : monday);
      await store.letters.mark(await claimed(store, letter, later), "held", "for this test", later);
      letters.push(letter);
    }
    const [latest, ...others] = letters;
    const told = async (at: Date) =>
      (await store.people.takeNotice(at, "sam@quillgate.example")).map(({ letter }) => letter);
    const minutes = (n: number): Date => new Date(later.getTime() + n * 60_000);
    expect((await store.people.waiting(later)).map(({ letter }) => letter)).toEqual([...others, latest]);
    expect(await told(later)).toEqual(others.slice(0, 500));
    expect(await told(minutes(59))).toEqual([]);
    expect(await told(minutes(61))).toEqual([...others.slice(500), latest]);
  });

  test("a letter that changes no order moves nobody's state", async () => {
    const store = await open();
    await settled(store, "k1", completeOrder());
    const before = await store.buyers.stateOf(ines, []);
    await settled(store, "k2", [], later, { about: ["BW-2207"] });
    expect((await store.buyers.stateOf(ines, [])).version).toBe(before.version);
    await settled(store, "k3", [deviceAt(2, { id: "3/1", finish: "CHK" })], later);
    expect((await store.buyers.stateOf(ines, [])).version).toBe(before.version + 1);
    expect((await store.buyers.stateOf("eve@stranger.example", [])).version).toBe(0);
  });

  test("letters of one lane are taken up oldest first, those of another beside them", async () => {
    const store = await open();
    const second = await store.letters.receive("k2", bytes("y"), later, "brightwire.example");
    const first = await store.letters.receive("k1", bytes("x"), monday, "brightwire.example");
    const other = await store.letters.receive("k3", bytes("z"), later, "stranger.example");
    expect(await store.letters.claim(second.letter, later, leaseEnd)).toBeUndefined();
    const claim = await claimed(store, first.letter, later);
    expect(await store.letters.claim(second.letter, later, leaseEnd)).toBeUndefined();
    expect(await store.letters.claimDue(later, leaseEnd)).toMatchObject({ letter: other.letter });
    await store.letters.mark(claim, "held", "for this test", later);
    expect(await store.letters.claimDue(later, leaseEnd)).toMatchObject({ letter: second.letter });
  });

  test("a letter over which workers have died again and again holds up none of its lane while it rests", async () => {
    const store = await open();
    const first = await store.letters.receive("k1", bytes("x"), monday, "brightwire.example");
    const second = await store.letters.receive("k2", bytes("y"), later, "brightwire.example");
    for (let opened = 1; opened <= 4; opened++) {
      expect(await store.letters.claim(second.letter, later, leaseEnd)).toBeUndefined();
      const claim = await store.letters.opening(await claimed(store, first.letter, later));
      await store.letters.mark(claim, "received", "for this test", later, opened < 4 ? later : leaseEnd);
    }
    expect(await store.letters.claimDue(later, leaseEnd)).toMatchObject({ letter: second.letter });
  });

  test("a new sheet for the same place takes the place of the old one", async () => {
    const store = await open();
    await settled(store, "k1", completeOrder());
    await settled(store, "k2", [{ ...deviceAt(2), id: "2/1", finish: "CHK" }]);
    const counting = await sheetsOf(store);
    expect(counting).toHaveLength(5);
    expect(counting.find((sheet) => sheet.kind === "device" && sheet.position === 2)?.finish).toBe("CHK");
  });

  test("another buyer's order of the same number is another order", async () => {
    const store = await open();
    await settled(store, "k1", completeOrder());
    expect(await store.buyers.ownerOf("bw 2207")).toEqual({ buyer: ines });
    expect(await store.buyers.ownerOf("BW-9")).toBeUndefined();
    expect((await store.buyers.stateOf("eve@stranger.example", ["BW-2207"])).orders).toEqual([]);
  });

  test("a past moment is counted as it stood then", async () => {
    const store = await open();
    await settled(store, "k1", [plate(), deviceAt(1)], monday);
    await settled(
      store,
      "k2",
      [2, 3, 4].map((position) => ({ ...deviceAt(position), id: `2/${position}` })),
      new Date("2026-11-10T14:00:00Z"),
    );
    const [open1] = await store.orders.openAt(new Date("2026-11-10T06:00:00Z"));
    expect(open1).toMatchObject({ number: "BW-2207", verdict: "waiting" });
    expect(open1?.missing.map(({ position }) => position)).toEqual([2, 3, 4]);
    expect(await store.orders.openAt(new Date("2026-11-11T06:00:00Z"))).toEqual([]);
    expect(await store.letters.between(monday, new Date("2026-11-10T00:00:00Z"))).toHaveLength(1);
  });

  test("a letter that is not answered changes no order", async () => {
    const store = await open();
    await settled(store, "k1", [plate(), deviceAt(1)]);
    for (const [i, state] of (["held", "silent"] as const).entries())
      await settled(store, state, [deviceAt(1, { id: `${i + 2}/1`, finish: "CHK" })], monday, { state });
    expect((await sheetsOf(store)).map(({ id, finish }) => `${id} ${finish}`)).toEqual([
      "1/1 OAT",
      "1/2 OAT",
    ]);
    expect((await store.people.waiting(later)).map(({ state }) => state)).toEqual(["held"]);
  });

  test("an order keeps how its legends are cut, and how often it was changed", async () => {
    const store = await open();
    await settled(store, "k1", [plate(), deviceAt(1)]);
    await settled(store, "k2", [{ ...deviceAt(2), id: "2/1" }]);
    const [order] = await store.orders.named("BW-2207");
    expect(order?.revision).toBe(2);
    expect(Object.keys(order?.cut ?? {})).toEqual(["1/1", "1/2", "2/1"]);
    const [legend] = order?.cut["1/2"] ?? [];
    const [row] = deviceAt(1).legends[0]?.rows ?? [];
    expect(legend).toMatchObject({ face: "1", font: "RS", fits: true, rows: [{ row: 1, text: row }] });
    expect(legend?.cap).toBeGreaterThan(2);
    const latest = await store.orders.revisionsOf(ines, ["bw 2207", "BW-9"]);
    expect([...latest]).toEqual([
      ["bw 2207", 2],
      ["BW-9", 0],
    ]);
    expect((await store.orders.revisionsOf("eve@stranger.example", ["BW-2207"])).get("BW-2207")).toBe(0);
  });

  test("a letter that replies about an order stands with it and does not change it", async () => {
    const store = await open();
    const first = await settled(store, "k1", [plate(), deviceAt(1)]);
    const reply = await settled(store, "k2", [], later, { about: ["bw 2207", "BW-9"] });
    expect((await store.letters.read(reply)).orders).toEqual(["BW-2207"]);
    const [order] = await store.orders.named("BW-2207");
    expect(order).toMatchObject({ verdict: "waiting", revision: 1 });
    expect([order?.letters, order?.replies].map((some) => some?.map(({ letter }) => letter))).toEqual([
      [first],
      [reply],
    ]);
    expect(await store.orders.openAt(new Date("2026-11-10T06:00:00Z"))).toMatchObject([
      { verdict: "waiting" },
    ]);
    // and another buyer's reply does not
    expect(await store.buyers.ownerOf("BW-9")).toBeUndefined();
  });

  test("a sent answer keeps its time and the server's words", async () => {
    const store = await open();
    const letter = await settled(store, "k1", completeOrder());
    const claim = await claimed(store, letter, monday);
    await store.letters.mark(claim, "sending", "", monday);
    expect(await store.letters.states()).toEqual({ sending: 1 });
    expect(await store.letters.unfinished()).toEqual({ sending: 1 });
    expect(await store.buyers.knows("ines@brightwire.example")).toBe(false);
    await store.letters.sent(claim, "250 queued", undefined, later);
    expect(await store.letters.unfinished()).toEqual({});
    expect((await store.letters.read(letter)).answer?.sentAt).toEqual(later);
    expect(await store.buyers.knows("ines@brightwire.example")).toBe(true);
  });

  test("of two workers that ask at once, one gets the letter", async () => {
    const store = await open();
    const { letter } = await store.letters.receive("k1", bytes("x"), monday);
    const both = await Promise.all([
      store.letters.claim(letter, monday, leaseEnd),
      store.letters.claim(letter, monday, leaseEnd),
    ]);
    expect(both.filter((claim) => claim !== undefined)).toHaveLength(1);
    expect(await store.letters.claimDue(monday, leaseEnd)).toBeUndefined();
  });

  test("a claim that has run out can write nothing more", async () => {
    const store = await open();
    const { letter } = await store.letters.receive("k1", bytes("x"), monday);
    const first = await claimed(store, letter, monday);
    const second = await claimed(store, letter, leaseEnd);
    expect(second.fence).toBe(first.fence + 1);
    await expect(store.letters.mark(first, "held", "late", leaseEnd)).rejects.toThrow(ClaimLost);
    await store.letters.mark(second, "held", "in time", leaseEnd);
    expect(await store.letters.read(letter)).toMatchObject({ state: "held", why: "in time" });
    expect((await store.people.waiting(later)).map((record) => record.letter)).toEqual([letter]);
  });

  test("a claim is kept by signs of life, until somebody else has it", async () => {
    const store = await open();
    const { letter } = await store.letters.receive("k1", bytes("x"), monday);
    const first = await claimed(store, letter, monday);
    const longer = new Date("2026-11-09T14:15:00Z");
    await store.letters.renew(first, longer);
    await store.letters.renew(first, later); // never for less
    expect(await store.letters.claimDue(leaseEnd, longer)).toBeUndefined();
    await claimed(store, letter, longer);
    await expect(store.letters.renew(first, leaseEnd)).rejects.toThrow(ClaimLost);
  });

  test("a letter that was begun before comes behind those that were not", async () => {
    const store = await open();
    const first = await store.letters.receive("k1", bytes("x"), monday);
    const second = await store.letters.receive("k2", bytes("y"), monday);
    await store.letters.opening(await claimed(store, first.letter, monday));
    const afterwards = new Date("2026-11-09T15:00:00Z");
    expect(await store.letters.claimDue(leaseEnd, afterwards)).toMatchObject({ letter: second.letter });
    expect(await store.letters.claimDue(leaseEnd, afterwards)).toMatchObject({ letter: first.letter });
  });

  test("an answer that was refused is for a person", async () => {
    const store = await open();
    const letter = await settled(store, "k1", completeOrder());
    await store.letters.mark(await claimed(store, letter, monday), "refused", "550 no such person", monday);
    expect((await store.people.waiting(later)).map((record) => record.letter)).toEqual([letter]);
    expect(await store.room()).toBeGreaterThan(0);
  });

  test("an answer that is not found within an hour is for a person", async () => {
    const store = await open();
    const letter = await settled(store, "k1", completeOrder());
    await store.letters.mark(
      await claimed(store, letter, monday),
      "unknown",
      "connection lost",
      monday,
      leaseEnd,
    );
    const minutes = (n: number): Date => new Date(monday.getTime() + n * 60_000);
    expect(await store.people.waiting(minutes(59))).toEqual([]);
    expect((await store.people.waiting(minutes(61))).map((record) => record.letter)).toEqual([letter]);
  });

  test("a letter put off is taken up when it is due, not before", async () => {
    const store = await open();
    const letter = await settled(store, "k1", completeOrder());
    await store.letters.mark(await claimed(store, letter, monday), "later", "451", monday, leaseEnd);
    expect(await store.letters.claimDue(later, leaseEnd)).toBeUndefined();
    expect(await store.letters.claimDue(leaseEnd, new Date("2026-11-09T15:00:00Z"))).toMatchObject({
      letter,
      state: "later",
    });
  });

  test("a mailbox's mark is kept, the latest", async () => {
    const store = await open();
    expect(await store.mailboxes.markOf("INBOX")).toBeUndefined();
    await store.mailboxes.setMark("INBOX", { validity: "7", uid: 3 });
    await store.mailboxes.setMark("INBOX", { validity: "8", uid: 1 });
    expect(await store.mailboxes.markOf("INBOX")).toEqual({ validity: "8", uid: 1 });
  });

  test("a lease is one holder's until it ends or is dropped", async () => {
    const { leases } = await open();
    const nextDay = new Date("2026-11-10T14:00:00Z");
    const take = (holder: string, now: Date, until: Date) =>
      leases.take("mailbox orders", holder, now, until);
    expect(await Promise.all([take("a", monday, later), take("b", monday, later)])).toEqual([true, false]);
    expect(await leases.take("mailbox other", "b", monday, later)).toBe(true);
    expect(await take("a", monday, leaseEnd)).toBe(true);
    expect(await take("b", later, leaseEnd)).toBe(false);
    expect(await take("b", leaseEnd, nextDay)).toBe(true);
    await leases.drop("mailbox orders", "a");
    expect(await take("a", leaseEnd, nextDay)).toBe(false);
    await leases.drop("mailbox orders", "b");
    expect(await take("a", leaseEnd, nextDay)).toBe(true);
  });

  test("an answered letter is found by its answer, with what was asked and of whom", async () => {
    const store = await open();
    const asking = device({ id: "1/1" }, { "1": ["KITCHN", ""] });
    const letter = await settled(store, "k1", [asking, deviceAt(1, { id: "1/2" })]);
    const ids = ["<0@elsewhere.example>", "<k1@quillgate.example>"];
    const [found, ...more] = await store.answers.answered(ids);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ letter, buyer: "ines@brightwire.example", orders: ["BW-2207"] });
    expect(found?.problems.map(({ check }) => check)).toContain("spelling");
    expect((await store.answers.answered(ids.slice(1))).map((one) => one.letter)).toEqual([letter]);
    expect(await store.answers.answered([])).toEqual([]);
    expect(await store.answers.answered(["<k2@quillgate.example>"])).toEqual([]);
  });

  test("sheets are had by their ids, whether they count or not", async () => {
    const store = await open();
    const stopped = device({ id: "1/3" }, { "1": ["RECEPTION", ""] });
    await settled(store, "k1", [plate(), stopped]);
    expect(await store.orders.sheets(["1/3", "1/7"])).toEqual([stopped]);
    expect(await store.orders.sheets(["1/3"])).toEqual([stopped]);
    expect(await store.orders.sheets([])).toEqual([]);
  });

  test("words are kept for one buyer and project, once, with the letter that is answered", async () => {
    const store = await open();
    const kept = [{ word: "Café", project: "Larkspur Library" }];
    const letter = await settled(store, "k1", completeOrder(), monday, { kept });
    const words = [{ word: "CAFE", project: "LARKSPURLIBRARY" }];
    expect(await store.buyers.keptWords("ines@brightwire.example")).toEqual(words);
    expect(await store.buyers.keptWords("eve@stranger.example")).toEqual([]);
    await settled(store, "k2", [], monday, { kept: [...kept, ...kept] });
    expect(await store.buyers.keptWords("ines@brightwire.example")).toEqual(words);
    for (const state of ["held", "silent"] as const)
      await settled(store, state, [], monday, {
        state,
        kept: [{ word: "NIMBUS", project: "Larkspur Library" }],
      });
    expect(await store.buyers.keptWords("ines@brightwire.example")).toEqual(words);
    expect(await store.letters.read(letter)).toMatchObject({ verdict: "pass" });
  });

  test("answers are counted, to one and to all", async () => {
    const store = await open();
    await settled(store, "k1", completeOrder());
    const counts = async (since: Date, sender: string, thread = "") => {
      const { toOne, toAll, inThread } = await store.answers.since(since, sender, thread, 100);
      return [toOne, toAll, inThread].map((times) => times.length);
    };
    expect(await counts(monday, "ines@brightwire.example", "<k1@b.example>")).toEqual([1, 1, 1]);
    expect(await counts(monday, "eve@stranger.example")).toEqual([0, 1, 0]);
    expect(await counts(later, "ines@brightwire.example")).toEqual([0, 0, 0]);
  });

  test("a letter of an answer is found in its thread", async () => {
    const store = await open();
    const letter = await settled(store, "k1", completeOrder());
    const { messageId = "" } = (await store.answers.of(letter)) ?? {};
    expect(await store.answers.threadOf([messageId])).toBe("<k1@b.example>");
    expect(await store.answers.threadOf(["<another@b.example>"])).toBeUndefined();
  });

  test("a claim that ends before its letter is opened counts for nothing", async () => {
    const store = await open();
    const { letter } = await store.letters.receive("k1", bytes("x"), monday);
    await claimed(store, letter, monday);
    const second = await claimed(store, letter, leaseEnd);
    expect(second.opened).toBe(0);
    expect((await store.letters.opening(second)).opened).toBe(1);
  });

  test("a letter that waits for its turn is not due before, is opened no time more, and is counted", async () => {
    const store = await open();
    const { letter } = await store.letters.receive("k1", bytes("x"), monday);
    const claim = await store.letters.opening(await claimed(store, letter, monday));
    const wait = { sender: "ines@brightwire.example", why: "many", until: leaseEnd };
    await store.letters.letWait(claim, wait, monday);
    expect(await store.letters.claimDue(later, leaseEnd)).toBeUndefined();
    expect((await store.answers.since(monday, "ines@brightwire.example", "", 100)).waiting).toBe(1);
    expect(await store.letters.claimDue(leaseEnd, new Date("2026-11-09T15:00:00Z"))).toMatchObject({
      letter,
      opened: 0,
      waitsSince: monday,
    });
  });

  test("an answer whose copy was refused is sent, and its letter waits for a person until one has seen to it", async () => {
    const store = await open();
    const letter = await settled(store, "k1", completeOrder());
    const claim = await claimed(store, letter, monday);
    await store.letters.sent(claim, "250", "ana@quillgate.example: 550 no", monday);
    expect(await store.letters.states()).toEqual({ sent: 1 });
    expect((await store.letters.history(letter)).slice(-2).map(({ what, words }) => [what, words])).toEqual([
      ["sent", "250"],
      ["copy not delivered", "ana@quillgate.example: 550 no"],
    ]);
    const [waiting] = await store.people.waiting(later);
    expect(waiting).toMatchObject({ letter, answer: { unreached: "ana@quillgate.example: 550 no" } });
    await store.letters.putAside(letter, { name: "Rosa", why: "told her" }, later);
    expect(await store.people.waiting(later)).toEqual([]);
  });

  test("of two workers one has the letters that alarm, until he puts one back; others alarm nobody", async () => {
    const store = await open();
    const alarm = [{ order: "BW-2207", on: "2026-11-08", says: ["Its finish changed."] }];
    const letter = await settled(store, "k1", completeOrder(), monday, { alarm });
    await settled(store, "k2", [], monday);
    const alarming = { letter, from: ines, alarm };
    const both = await Promise.all([store.people.takeAlarms(later), store.people.takeAlarms(later)]);
    expect(both.flat()).toEqual([alarming]);
    await store.people.dropAlarm(letter);
    expect(await store.people.takeAlarms(later)).toEqual([alarming]);
    expect(await store.people.takeAlarms(later)).toEqual([]);
  });

  test("an answer that came back leaves its letter to a person, once", async () => {
    const store = await open();
    const letter = await settled(store, "k1", completeOrder());
    await store.letters.sent(await claimed(store, letter, monday), "250", undefined, monday);
    expect(await store.letters.returned(letter, "it came back", later)).toBe(true);
    expect(await store.letters.returned(letter, "it came back", later)).toBe(false);
    expect(await store.people.waiting(later)).toMatchObject([
      { letter, state: "refused", why: "it came back" },
    ]);
  });

  test("whoever is erased is gone with his bytes, and the chain of events holds", async () => {
    const store = await open();
    const letter = await settled(store, "k1", completeOrder());
    await store.letters.sent(await claimed(store, letter, monday), "250", undefined, monday);
    const erased = await store.erasures.erase(
      { address: ines, givesUp: true },
      { name: "Rosa", why: "asked for by letter" },
      later,
    );
    expect(erased).toMatchObject({ standIn: "erased-1", orders: ["BW-2207"], inTheWay: [] });
    const nowhere = () => Promise.resolve(false);
    const { bytes: count, ...deleted } = await store.erasures.finish(nowhere);
    expect(count).toBeGreaterThan(1);
    expect(deleted).toEqual({ packages: [], notFound: [], isFree: true });
    expect(await store.erasures.finish(nowhere)).toEqual({ ...deleted, bytes: 0 });
    expect(await store.orders.named("BW-2207")).toEqual([]);
    await expect(store.letters.bytesOf(letter)).rejects.toThrow("is erased");
    expect(await store.verify()).toMatchObject({ differ: [], erased: [{ by: "Rosa" }] });
    expect((await store.verify()).broken).toBeUndefined();
  });

  test("what a letter proved of its sender stays with it", async () => {
    const store = await open();
    await settled(store, "k1", completeOrder());
    expect(await store.buyers.proved("ines@brightwire.example")).toBe(true);
    expect(await store.buyers.proved("eve@stranger.example")).toBe(false);
  });

  test("numbers of orders are known whoever's they are, and the record keeps one secret", async () => {
    const store = await open();
    await settled(store, "k1", completeOrder());
    expect(await store.buyers.numbersKnown(["BW2207", "X1"])).toBe(true);
    expect(await store.buyers.numbersKnown(["X1"])).toBe(false);
    expect(await store.buyers.numbersKnown([])).toBe(false);
    const secret = await store.answers.secret();
    expect(secret).toMatch(/^[0-9a-f]{64}$/);
    expect(await store.answers.secret()).toBe(secret);
  });
}

async function claimed(store: Store, letter: number, at: Date): Promise<Claim> {
  const claim = await store.letters.claim(letter, at, new Date(at.getTime() + 600_000));
  if (claim === undefined) throw new Error(`letter ${letter} cannot be had`);
  return claim;
}

/** The sheets that stand in all orders of the buyer of these tests. */
async function sheetsOf(store: Store): Promise<Sheet[]> {
  return (await store.buyers.stateOf(ines, [])).orders.flatMap(({ sheets }) => sheets);
}

/** A letter judged beside what its buyer has sent before, and stored; gives its number. */
export async function settled(
  store: Store,
  key: string,
  sheets: readonly Sheet[],
  at = monday,
  { buyer = ines, state = "ready", kept = [], about = [], settles = [], lines, alarm }: Partial<Outcome> = {},
  before?: BuyerState,
): Promise<number> {
  const { letter } = await store.letters.receive(key, bytes(key), at);
  const known = before ?? (await store.buyers.stateOf(buyer, ["BW-2207"]));
  const files = sheets.map(({ id, file }) => ({ id, file, kind: "sheet" as const }));
  const report = makeReport({ files, sheets, kept, settles }, catalogue, known);
  const outcome: Outcome = {
    letter: {
      from: buyer,
      subject: "sheets",
      references: [],
      text: "",
      attachments: files.map((file) => ({ ...file, bytes: bytes(file.id) })),
    },
    report,
    buyer,
    version: known.version,
    changes: changesOf(report, known, (problem) => numbersIn(report).get(problem) ?? 0),
    kept,
    about,
    settles,
    ...(lines === undefined ? {} : { lines }),
    ...(alarm === undefined ? {} : { alarm }),
    proof: "pass",
    thread: `<${key}@b.example>`,
    state,
    ...(state === "ready"
      ? {
          answer: {
            messageId: `<${key}@quillgate.example>`,
            recipient: buyer,
            subject: "Re: sheets",
            bytes: bytes(`answer to ${key}`),
          },
        }
      : {}),
  };
  const claim = await claimed(store, letter, at);
  await store.letters.settle(claim, outcome, at);
  if (state === "ready") await store.letters.mark(claim, "ready", "", at, at);
  return letter;
}

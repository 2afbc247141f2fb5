import { beforeEach, expect, test } from "vitest";
import type { Desk } from "../../src/intake/desk.ts";
import { releaseOrder } from "../../src/intake/release.ts";
import {
  type Belongs,
  letIn,
  putAside,
  recordCut,
  settleOrder,
  settleSheet,
} from "../../src/intake/settle.ts";
import { takeDue } from "../../src/intake/take.ts";
import { readPeople } from "../../src/intake/tell-people.ts";
import { temporaryDesk } from "../make/desk.ts";
import { letterOf, post } from "../make/thread.ts";

const rosa = { name: "Rosa Imhoff", why: "she said so on the telephone" };
const buyer = "greta@fallowmere.example";
const sheet = (mark: string, legend: string, order = "FM-80") => ({
  mark,
  legend: [legend],
  fill: { order },
});
const order = { buyer, number: "FM-80" };

let desk: Desk;
const listed = () => readPeople(desk.store, desk.clock.now());
beforeEach(async () => {
  desk = await temporaryDesk();
});

test("whoever settles a point is told how the order stands, and that its sender is answered", async () => {
  await post(desk, { sheets: [sheet("P-1", "SALONA")] });
  expect(await settleOrder(desk, order, [{ kind: "yes", number: 2 }], rosa)).toEqual({
    done: false,
    words: "Nothing is settled: order FM-80 has no open point 2.",
  });
  expect(await settleOrder(desk, order, [{ kind: "yes", number: 1 }], rosa)).toEqual({
    done: true,
    words: "Order FM-80: pass. The worker sends the answer.",
  });
  expect(await desk.store.orders.confirmed(buyer, "fm 80")).toMatchObject([
    { number: 1, by: rosa.name, why: rosa.why, letter: 2 },
  ]);
});

test("a note waits while an older letter of its lane is not judged", async () => {
  await post(desk, { sheets: [sheet("P-1", "SALONA")] });
  await desk.store.letters.receive("older", new Uint8Array(), new Date(0), "fallowmere.example");
  expect(await settleOrder(desk, order, [{ kind: "yes", number: 1 }], rosa)).toEqual({
    done: true,
    words: "Kept as letter 3. It is judged once the letters before it are.",
  });
});

test("what is said to be engraved waits in its turn too, and is not told as recorded", async () => {
  await post(desk, { sheets: [sheet("P-1", "POOL")] });
  await releaseOrder(desk, "FM-80", rosa.name, () => Promise.resolve("here"));
  await desk.store.letters.receive("older", new Uint8Array(), new Date(0), "fallowmere.example");
  expect(await recordCut(desk, order, ["P-1"], "Bo")).toEqual({
    done: true,
    words: "Kept as letter 4. It is recorded once the letters before it are judged.",
  });
});

test("whoever moves a sheet to another order is told how both stand", async () => {
  await post(desk, { sheets: [sheet("P-1", "POOL"), sheet("P-2", "SPA")] });
  await post(desk, { sheets: [sheet("Q-1", "GYM", "GC-4100")] });
  const settled = (id: string, where: Belongs) => settleSheet(desk, id, where, rosa);
  expect(await settled("9/9", { mark: "P-9" })).toEqual({
    done: false,
    words: "No sheet 9/9 stands in any order: see burin order NUMBER.",
  });
  expect(await settled("1/1", { mark: "P-9" })).toEqual({
    done: true,
    words: "Order FM-80: pass. The worker sends the answer.",
  });
  // the note was letter 3, and its copy of the sheet is its first file
  expect(await settled("3/1", { order: "fm 80", mark: "P-8" })).toEqual({
    done: true,
    words: "Order FM-80: pass. The worker sends the answer.",
  });
  expect(await settled("1/2", { order: "gc 4100" })).toEqual({
    done: true,
    words: "Order FM-80: pass. The worker sends the answer.\nOrder GC-4100: pass.",
  });
  expect((await settled("1/2", { order: "GC-4100" })).done).toBe(false);
});

test("a sheet that is put back has not come again, and nobody is asked whether it is wanted", async () => {
  await post(desk, { sheets: [sheet("P-1", "POOL"), sheet("P-2", "SPA")] });
  const put = (id: string, where: Belongs) => settleSheet(desk, id, where, rosa);
  const passed = { done: true, words: "Order FM-80: pass. The worker sends the answer." };
  expect(await put("1/2", { mark: "P-9" })).toEqual(passed);
  expect(await put("2/1", { mark: "P-2" })).toEqual(passed);
  // nor is he with a later letter, nor once it was in another order
  expect((await post(desk, { sheets: [sheet("P-3", "GYM")] })).verdict).toBe("pass");
  await post(desk, { sheets: [sheet("Q-1", "LOBBY", "GC-4100")] });
  await put("3/1", { order: "GC-4100" });
  expect(await put("6/1", { order: "FM-80" })).toEqual({
    done: true,
    words: "Order GC-4100: pass. The worker sends the answer.\nOrder FM-80: pass.",
  });
  // the same sheet from its sender is asked about all the same
  await put("7/1", { mark: "P-9" });
  expect((await post(desk, { sheets: [sheet("P-2", "SPA"), sheet("P-4", "BAR")] })).verdict).toBe("confirm");
});

test("a letter is let in once, and only one that was held", async () => {
  const letter = async (from: string): Promise<number> => (await post(desk, { from, text: "Hello." })).letter;
  const taken = (await post(desk, { sheets: [sheet("P-1", "POOL")] })).letter;
  expect(await letIn(desk, taken, rosa)).toEqual({
    done: false,
    words: `Letter ${taken} was taken; there is nothing to let in.`,
  });
  const nobody = await letter("");
  expect(await letIn(desk, nobody, rosa)).toEqual({
    done: false,
    words: "The letter has no single sender: say whose it is, with an address.",
  });
  expect(await letIn(desk, nobody, rosa, buyer)).toEqual({
    done: true,
    words: `Let in as letter ${nobody + 1} of ${buyer}. The worker judges and answers it.`,
  });
  expect(await letIn(desk, nobody, rosa, buyer)).toEqual({
    done: false,
    words: `Letter ${nobody} was let in before.`,
  });
  for (const number of [99, 1.5])
    expect(await letIn(desk, number, rosa)).toEqual({
      done: false,
      words: "No such letter is in the record.",
    });
});

test("a YES in a letter that is let in settles nothing: whoever let it in has read it", async () => {
  const asked = await post(desk, { sheets: [sheet("P-1", "SALONA")] });
  const held = await post(desk, { from: "", to: asked, text: "1 YES" });
  expect(await letIn(desk, held.letter, rosa, buyer)).toMatchObject({ done: true });
  while (await takeDue(desk));
  const [left] = await desk.store.orders.named("FM-80");
  expect(left).toMatchObject({ verdict: "confirm", questions: [{ number: 1 }] });
});

test("a letter is put aside by itself, or with the order that carries what it said", async () => {
  const about = await post(desk, { sheets: [sheet("P-1", "POOL")], text: "Please make it blue if you can." });
  expect(await putAside(desk, about.letter, rosa)).toEqual({
    done: true,
    words: "Order FM-80: pass. The worker sends the answer.",
  });
  const none = await post(desk, { from: "Omar <omar@oakmoor.example>", text: "Do you make red ones?" });
  expect(await putAside(desk, none.letter, rosa)).toEqual({
    done: true,
    words: `Letter ${none.letter} is dealt with.`,
  });
  expect(await putAside(desk, 99, rosa)).toEqual({ done: false, words: "No such letter is in the record." });
});

test("a letter that is not judged yet is neither put aside nor let in", async () => {
  const { letter } = await desk.store.letters.receive(
    "next",
    await letterOf({ text: "STOP" }),
    new Date(0),
    "",
  );
  const words = `Letter ${letter} is not judged yet. Wait until it is.`;
  expect(await putAside(desk, letter, rosa)).toEqual({ done: false, words });
  expect(await letIn(desk, letter, rosa, buyer)).toEqual({ done: false, words });
  while (await takeDue(desk));
  expect((await listed()).map(({ letters }) => letters)).toEqual([[letter]]);
});

test("nothing is let in that nobody has sent, or that was taken, whatever became of its answer", async () => {
  const { letter } = await post(desk, { sheets: [sheet("P-1", "SALONA")] });
  await settleOrder(desk, order, [{ kind: "release", on: "2026-11-09" }], rosa);
  expect(await letIn(desk, letter + 1, rosa, buyer)).toEqual({
    done: false,
    words: `Letter ${letter + 1} is a note of one of us; nobody has sent it.`,
  });
  while (await takeDue(desk));
  await desk.store.letters.returned(letter, "550 no such user", desk.clock.now());
  expect(await letIn(desk, letter, rosa)).toEqual({
    done: false,
    words: `Letter ${letter} was taken; there is nothing to let in.`,
  });
});

test("a letter is let in as that of one e-mail address, and not as our own", async () => {
  const { letter } = await post(desk, { from: "", text: "Hello." });
  for (const as of ["", "greta", "Greta <greta@fallowmere.example>", "a@b.example, c@d.example"])
    expect(await letIn(desk, letter, rosa, as)).toEqual({
      done: false,
      words: `“${as.toLowerCase()}” is no e-mail address.`,
    });
  expect((await letIn(desk, letter, rosa, "Orders@Quillgate.example")).words).toContain("our own address");
  expect((await letIn(desk, letter, rosa, " Greta@Fallowmere.example ")).words).toContain(`of ${buyer}.`);
});

test("what came without a number is put aside too", async () => {
  const { letter } = await post(desk, {
    sheets: [sheet("P-1", "POOL", "")],
    text: "Make it blue if you can.",
  });
  const points = async () => (await listed()).map((one) => [one.order, one.points.map(({ says }) => says)]);
  expect(await points()).toEqual([["", ["“Make it blue if you can.”"]]]);
  expect(await putAside(desk, letter, rosa)).toEqual({
    done: true,
    words: "What came without a number: fail. The worker sends the answer.",
  });
  expect(await points()).toEqual([]);
});

test("what comes about a withdrawn order waits for a person until it is dealt with", async () => {
  const sent = await post(desk, { sheets: [sheet("P-1", "POOL")] });
  await post(desk, { to: sent, text: "CANCEL order" });
  expect((await desk.store.orders.named("FM-80"))[0]?.verdict).toBeUndefined();
  const { letter } = await post(desk, { to: sent, text: "Please call me about a refund of the deposit." });
  expect(await listed()).toMatchObject([{ order: "FM-80", contacts: [buyer], points: [{ letter }] }]);
  expect(await settleOrder(desk, order, [{ kind: "write", words: "We call." }], rosa)).toEqual({
    done: false,
    words: `Nothing is settled: nothing is left of order FM-80: write to ${buyer} yourself.`,
  });
  expect(await putAside(desk, letter, rosa)).toEqual({
    done: true,
    words: "Order FM-80: nothing is left of it. Nobody is answered.",
  });
  expect(await listed()).toEqual([]);
});

test("a recording that comes with a cancellation, or beside good sheets, is heard before anything passes", async () => {
  const sent = await post(desk, { sheets: [sheet("P-1", "POOL"), sheet("P-2", "SPA")] });
  const files = [{ file: "voice.mp3", bytes: new TextEncoder().encode("ID3\u0003 a voice") }];
  const said = [
    await post(desk, { sheets: [sheet("P-3", "GYM")], files }),
    await post(desk, { to: sent, text: "CANCEL P-1", files }),
    await post(desk, { to: sent, text: "CANCEL order", files }),
  ];
  const verdict = async () => (await desk.store.orders.named("FM-80"))[0]?.verdict;
  for (const { letter } of said) {
    expect(await verdict()).toBe("person");
    await putAside(desk, letter, rosa);
  }
  expect(await verdict()).toBeUndefined();
  expect(await listed()).toEqual([]);
});

test("an answer that comes back is told of, though what its letter said is dealt with", async () => {
  const { letter } = await post(desk, { text: "Do you make red ones?" });
  while (await takeDue(desk));
  await putAside(desk, letter, rosa);
  expect(await listed()).toEqual([]);
  await desk.store.letters.returned(letter, "550 no such user", desk.clock.now());
  expect(await listed()).toMatchObject([{ what: "undelivered", letters: [letter] }]);
});

test("what is engraved is told by its pieces", async () => {
  await post(desk, { sheets: [sheet("P-1", "POOL"), sheet("P-2", "SPA")] });
  expect(await recordCut(desk, order, [], rosa.name)).toEqual({
    done: false,
    words: "Nothing is recorded: order FM-80 was not released.",
  });
  await settleOrder(desk, order, [{ kind: "release", on: "2026-11-09" }], rosa);
  expect(await recordCut(desk, order, ["P-2"], rosa.name)).toEqual({
    done: true,
    words: "Order FM-80: 1 of 2 pieces are engraved.",
  });
  expect(await recordCut(desk, order, [], rosa.name)).toEqual({
    done: true,
    words: "Order FM-80 is engraved: 2 of 2 pieces.",
  });
});

test("of two buyers whose orders have one number the pieces of each are told", async () => {
  await post(desk, { sheets: [sheet("P-1", "POOL")] });
  await settleOrder(desk, order, [{ kind: "release", on: "2026-11-09" }], rosa);
  const { orders } = desk.store;
  const named = async (number: string) => {
    const own = await orders.named(number);
    return [
      ...own.map(({ released: _released, ...one }) => ({ ...one, buyer: "omar@oakmoor.example" })),
      ...own,
    ];
  };
  const both = { ...desk, store: { ...desk.store, orders: { ...orders, named } } };
  expect((await recordCut(both, order, [], rosa.name)).words).toBe("Order FM-80 is engraved: 1 of 1 pieces.");
});

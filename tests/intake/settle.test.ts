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
import { temporaryDesk } from "../make/desk.ts";
import { post } from "../make/thread.ts";

const rosa = { name: "Rosa Imhoff", why: "she said so on the telephone" };
const buyer = "greta@fallowmere.example";
const sheet = (mark: string, legend: string, order = "FM-80") => ({
  mark,
  legend: [legend],
  fill: { order },
});
const order = { buyer, number: "FM-80" };

let desk: Desk;
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

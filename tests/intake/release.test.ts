import { beforeEach, expect, test } from "vitest";
import type { Desk } from "../../src/intake/desk.ts";
import { prepareRelease } from "../../src/intake/release.ts";
import type { Packed } from "../../src/release/release.ts";
import { temporaryDesk } from "../make/desk.ts";
import { post } from "../make/thread.ts";

let desk: Desk;
beforeEach(async () => {
  desk = await temporaryDesk();
});

const salona = { mark: "B-1", legend: ["SALONA"] };

function why(packed: Packed): readonly string[] {
  return packed.ok ? [] : packed.why;
}

function parsed(packed: Packed, path: string): unknown {
  const file = packed.ok ? packed.files.find((one) => one.path === path) : undefined;
  return JSON.parse(new TextDecoder().decode(file?.bytes)) as unknown;
}

test("an order that has passed is packed, with its sheets as they came and what its buyer confirmed", async () => {
  const asked = await post(desk, { sheets: [salona] });
  const kept = await post(desk, { to: asked, text: "1 YES" });
  const packed = await prepareRelease("fm 72", { by: "Ada Vale" }, desk);
  expect(packed).toMatchObject({ ok: true, name: "FM-72 revision 2" });
  expect(parsed(packed, "manifest.json")).toMatchObject({
    order: "FM-72",
    revision: 2,
    releasedBy: "Ada Vale",
    releasedAt: "2026-11-09T15:00:00.000Z",
  });
  expect(parsed(packed, "confirmations.json")).toEqual([
    {
      question: 1,
      check: "spelling",
      says: expect.stringContaining("SALONA"),
      station: "B-1",
      by: "greta@fallowmere.example",
      at: "2026-11-09T15:00:00.000Z",
      letter: kept.letter,
    },
  ]);
  const original = packed.ok ? packed.files.find(({ path }) => path === "originals/B-1.pdf") : undefined;
  expect(Buffer.from(original?.bytes ?? []).toString("latin1")).toMatch(/^%PDF-/);
  expect([...(await desk.store.orders.originals([`${asked.letter}/1`])).values()]).toEqual([original?.bytes]);
});

test("an order that has not passed is refused, and it is said why", async () => {
  await post(desk, { sheets: [salona] });
  expect(why(await prepareRelease("FM-72", { by: "Ada Vale" }, desk))).toEqual([
    "it has not passed: confirm",
    expect.stringContaining("SALONA"),
    expect.stringContaining("burin order FM-72"),
  ]);
});

test("an order that nobody knows is refused", async () => {
  expect(why(await prepareRelease("FM-72", { by: "Ada Vale" }, desk))).toEqual(["no such order is known"]);
});

test("an order that would be cut otherwise than it was checked is refused", async () => {
  await post(desk, { sheets: [{ mark: "B-2", legend: ["SAUNA"] }] });
  expect(why(await prepareRelease("FM-72", { by: "Ada Vale" }, desk))).toEqual([]);
  const layouts = desk.catalogue.layouts.map((one) => ({
    ...one,
    face: { ...one.face, cap: one.face.cap - 0.2 },
  }));
  const changed = { ...desk, catalogue: { ...desk.catalogue, layouts } };
  expect(why(await prepareRelease("FM-72", { by: "Ada Vale" }, changed))).toEqual([
    "B-2.pdf would be cut otherwise than when it was checked: the catalogue has changed",
  ]);
});

test("what an older record has not kept of the cutting is compared with nothing", async () => {
  await post(desk, { sheets: [{ mark: "B-2", legend: ["SAUNA"] }] });
  const { orders } = desk.store;
  const named = async (number: string) =>
    (await orders.named(number)).map((order) => ({ ...order, cut: {} }));
  const older = { ...desk, store: { ...desk.store, orders: { ...orders, named } } };
  expect(why(await prepareRelease("FM-72", { by: "Ada Vale" }, older))).toEqual([]);
});

test("an order that would not pass any more is refused", async () => {
  await post(desk, { sheets: [{ mark: "B-2", legend: ["SAUNA"] }] });
  const characters = desk.catalogue.characters.replace("U", "");
  const changed = { ...desk, catalogue: { ...desk.catalogue, characters } };
  expect(why(await prepareRelease("FM-72", { by: "Ada Vale" }, changed))).toEqual(
    expect.arrayContaining(["judged once more it does not pass: fail"]),
  );
});

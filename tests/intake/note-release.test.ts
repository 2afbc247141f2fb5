import { expect, test } from "vitest";
import { againstRelease, releasedBy } from "../../src/intake/note-release.ts";
import { pieceKey } from "../../src/orders/piece.ts";
import type { Act, Note } from "../../src/trade/note.ts";
import type { Released } from "../../src/trade/released.ts";
import { reportOn } from "../make/report.ts";
import { completeOrder, deviceAt, plate } from "../make/sample.ts";
import { stateWith } from "../make/state.ts";

const now = new Date("2026-11-10T15:00:00Z");
const noteOf = (...acts: readonly Act[]): Note => ({
  id: "n1",
  buyer: "ines@brightwire.example",
  order: "bw 2207",
  by: "Rosa Imhoff",
  why: "",
  acts,
});
const first = {
  revision: 2,
  at: "2026-11-09T15:00:00.000Z",
  on: "2026-11-09",
  by: "Tom Aldous",
  pieces: [plate(), deviceAt(1), deviceAt(2, { mark: "S-105" })].map((sheet) => ({
    sheet: sheet.id,
    key: pieceKey(sheet),
    engraved: sheet.id === "1/2",
  })),
};
/** What a note makes of what was released. */
const after = (released: Released | undefined, ...acts: readonly Act[]): Released | undefined => {
  const state = stateWith([plate(), deviceAt(1), deviceAt(2, { mark: "S-105" }), deviceAt(3)]);
  const orders = state.orders.map((order) => ({
    ...order,
    revision: 4,
    ...(released === undefined ? {} : { released }),
  }));
  return releasedBy(noteOf(...acts), { ...state, orders }, reportOn(completeOrder()), now);
};
const engraved = (released: Released | undefined): string[] | undefined =>
  released?.pieces.flatMap((one) => (one.engraved ? one.sheet : []));

test("a release hands over every sheet of its order; what is engraved already stays so", () => {
  const released = after(first, { kind: "release", on: "2026-11-10" });
  expect(released).toMatchObject({ revision: 5, at: now.toISOString(), on: "2026-11-10", by: "Rosa Imhoff" });
  expect(released?.pieces.map(({ sheet }) => sheet)).toEqual(completeOrder().map(({ id }) => id));
  expect(engraved(released)).toEqual(["1/2"]);
  expect(engraved(after(undefined, { kind: "release", on: "2026-11-10" }))).toEqual([]);
});

test("an order that was never changed is released as its first revision", () => {
  const release = noteOf({ kind: "release", on: "2026-11-10" });
  const released = releasedBy(release, stateWith(completeOrder()), reportOn(completeOrder()), now);
  expect(released?.revision).toBe(1);
});

test("what is engraved of a station, or of all, is added to what was; nothing else of the release changes", () => {
  const cut = after(first, { kind: "cut", stations: ["s 105"] });
  expect(engraved(cut)).toEqual(["1/2", "1/3"]);
  expect({ ...cut, pieces: [] }).toEqual({ ...first, pieces: [] });
  expect(engraved(after(first, { kind: "cut", stations: ["S-104"] }))).toEqual(["1/1", "1/2"]);
  expect(engraved(after(first, { kind: "cut", stations: [] }))).toEqual(["1/1", "1/2", "1/3"]);
});

test("a note that neither releases nor cuts changes nothing of it, nor does one about an order not released", () => {
  expect(after(first, { kind: "write", words: "hello" })).toBeUndefined();
  expect(after(undefined, { kind: "cut", stations: [] })).toBeUndefined();
});

test("only an order that has passed is released", () => {
  expect(againstRelease(noteOf(), reportOn(completeOrder()))).toBeUndefined();
  expect(againstRelease(noteOf(), reportOn([plate()]))).toBe("the order has not passed");
  expect(againstRelease({ ...noteOf(), order: "BW-9" }, reportOn(completeOrder()))).toBe(
    "the order has not passed",
  );
});

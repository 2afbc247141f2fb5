import { expect, test } from "vitest";
import { without } from "../../src/checks/sample.ts";
import { type Known, nothingKnown, standingAfter } from "../../src/orders/stand.ts";
import type { Arrivals } from "../../src/trade/letter.ts";
import type { Place } from "../../src/trade/place.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { aloneDevice, device, deviceAt, plate } from "../make/sample.ts";

const standing = (earlier: Sheet[], sheets: Sheet[], known: Partial<Known> = {}): string[] =>
  standingAfter(earlier, sheets, { ...nothingKnown, ...known }).sheets.map(({ file }) => file);

const again = deviceAt(2, { id: "2/1", file: "again.pdf" });
const toMend = (file: string, ...places: Place[]): Partial<Known> => ({
  toMend: new Map([[file, new Set(places)]]),
});

/** Letters that arrived on these days and bear the dates of those. */
function arrivals(days: Record<string, readonly [arrived: number, dated: number]>): Arrivals {
  const day = (n: number): Date => new Date(Date.UTC(2026, 10, n));
  return new Map(
    Object.entries(days).map(([letter, [arrived, dated]]) => [
      letter,
      { receivedAt: day(arrived), dated: day(dated) },
    ]),
  );
}

test("a new sheet for a position takes the place of the old one and of no other, and both are named", () => {
  const corrected = { ...again, mark: "s104" };
  const after = standingAfter([plate(), deviceAt(1), deviceAt(2)], [corrected]);
  expect(after.sheets).toEqual([plate(), deviceAt(1), corrected]);
  expect(after.replaced).toEqual([{ old: deviceAt(2), now: corrected, how: "place" }]);
  expect(after.late).toEqual([]);
});

test("a sheet of another order or another station replaces nothing", () => {
  const [order, station] = [
    device({ id: "2/1", file: "a", order: "BW-2208" }),
    device({ id: "2/2", file: "b", mark: "S-105" }),
  ];
  expect(standing([device()], [order, station])).toEqual(["S-104 pos 2.pdf", "a", "b"]);
});

test("a sheet whose mark stands in its notes is replaced by the same place with its mark", () => {
  const noted = { ...without(device(), "mark", "position"), notes: "plate S-104 pos 2 of 4" };
  expect(standing([noted], [again])).toEqual(["again.pdf"]);
});

test("a sheet without a mark replaces nothing, since it may be one more of its kind", () => {
  const unmarked = without(aloneDevice(), "mark");
  expect(standing([unmarked], [{ ...unmarked, id: "2/1" }])).toHaveLength(2);
});

test("a sheet without a number, or without a position, is for no certain place", () => {
  const [numberless, placeless] = [without(deviceAt(2), "order"), without(deviceAt(2), "position")];
  expect(standing([numberless], [{ ...numberless, id: "2/1" }])).toHaveLength(2);
  expect(standing([placeless], [{ ...placeless, id: "2/1", finish: "CHK" }])).toHaveLength(2);
});

test("what looks mistyped is replaced by nothing", () => {
  const [number, mark] = [deviceAt(2, { order: "BW-2270" }), deviceAt(2, { mark: "S-140" })];
  for (const slip of [number, mark]) expect(standing([plate(), slip], [again])).toHaveLength(3);
});

test("a stopped sheet comes again with just that mended which stopped it, its position included", () => {
  const [entry, lounge] = [deviceAt(1), deviceAt(1, { id: "1/3", file: "LOUNGE.pdf", finish: "CHK" })];
  const moved = { ...lounge, id: "2/1", position: 2 };
  const after = standingAfter([entry, lounge], [moved], { ...nothingKnown, ...toMend("1/3", "position") });
  expect(after).toEqual({
    sheets: [entry, moved],
    replaced: [{ old: lounge, now: moved, how: "mended" }],
    late: [],
    untouched: [],
  });
  // more than that was changed, or nothing of it was to be mended
  const known = toMend("1/3", "position");
  expect(standing([entry, lounge], [{ ...moved, lettering: "MLK" }], known)).toHaveLength(3);
  expect(standing([entry, lounge], [moved])).toHaveLength(3);
  // two that could be it
  expect(standing([entry, lounge], [moved, { ...moved, id: "2/2", position: 3 }], known)).toHaveLength(4);
});

test("a sheet that could mend either of two that were stopped mends none", () => {
  const olds = [deviceAt(1), deviceAt(3)];
  const places = olds.map(({ id }) => [id, new Set(["position" as const])] as const);
  const now = deviceAt(2, { id: "2/1", file: "now" });
  expect(standing(olds, [now], { toMend: new Map(places) })).toHaveLength(3);
  expect(standing(olds, [now], { toMend: new Map(places.slice(1)) })).toEqual(["S-104 pos 1.pdf", "now"]);
});

test("a stopped sheet gives way to a newer one for its place, whatever was to be mended", () => {
  const now = { ...again, finish: "CHK" };
  const known = { ...nothingKnown, ...toMend("1/3", "finish") };
  expect(standingAfter([deviceAt(2)], [now], known).replaced).toEqual([
    { old: deviceAt(2), now, how: "place" },
  ]);
});

test("a letter of an earlier date and arrival replaces nothing, whenever it is read", () => {
  const old = { ...again, finish: "CHK" };
  const known = { ...nothingKnown, arrivals: arrivals({ "1": [5, 5], "2": [4, 4] }) };
  expect(standingAfter([deviceAt(2)], [old], known)).toEqual({
    sheets: [deviceAt(2)],
    replaced: [],
    late: [{ old, now: deviceAt(2), how: "place" }],
    untouched: [],
  });
});

test("where date and arrival disagree both sheets stand, until a third is newer than both", () => {
  const known = { arrivals: arrivals({ "1": [4, 4], "2": [5, 3], "3": [6, 6] }) };
  const other = { ...again, finish: "CHK" };
  expect(standing([deviceAt(2)], [other], known)).toEqual(["S-104 pos 2.pdf", "again.pdf"]);
  expect(standing([deviceAt(2), other], [deviceAt(2, { id: "3/1", file: "third" })], known)).toEqual([
    "third",
  ]);
});

test("of two that say the same, where it is unclear which is newer, the one that arrived first stands", () => {
  const known = { ...nothingKnown, arrivals: arrivals({ "1": [4, 4], "2": [5, 3] }) };
  expect(standingAfter([deviceAt(2)], [again], known)).toEqual({
    sheets: [deviceAt(2)],
    replaced: [],
    late: [{ old: again, now: deviceAt(2), how: "place" }],
    untouched: [],
  });
  // whichever is read first
  expect(standingAfter([again], [deviceAt(2)], known)).toEqual({
    sheets: [deviceAt(2)],
    replaced: [{ old: again, now: deviceAt(2), how: "place" }],
    late: [],
    untouched: [],
  });
});

test("a stopped device that may stand alone is mended by one that does, wherever it said that it belongs", () => {
  const old = deviceAt(2, { id: "1/3", file: "old" });
  const again = { id: "2/1", file: "now", mark: "S-105" };
  const now = without(deviceAt(2, { ...again, standing: "alone" }), "position", "gangs");
  const known = { ...toMend("1/3", "mark"), perhapsAlone: new Set(["1/3"]) };
  expect(standing([old], [now], known)).toEqual(["now"]);
  expect(standing([old], [now], toMend("1/3", "mark"))).toEqual(["old", "now"]);
  // one for another position of a plate is a second device, and mends nothing
  expect(standing([old], [deviceAt(3, again)], known)).toEqual(["old", "now"]);
});

test("of several for one place each gives way to the next, and once", () => {
  const [one, two, three] = [deviceAt(2), again, deviceAt(2, { id: "3/1", file: "third" })];
  expect(standingAfter([], [one, two, three])).toEqual({
    sheets: [three],
    replaced: [],
    late: [
      { old: one, now: two, how: "place" },
      { old: two, now: three, how: "place" },
    ],
    untouched: [],
  });
});

test("a device that may stand alone need not be stopped by anything else", () => {
  const now = without(deviceAt(2, { id: "2/1", file: "now", standing: "alone" }), "position", "gangs");
  expect(standing([deviceAt(2)], [now], { perhapsAlone: new Set(["1/3"]) })).toEqual(["now"]);
  expect(standing([deviceAt(2)], [now])).toHaveLength(2);
});

test("what mends a sheet is found among forty that are alike, and not among more", () => {
  const known = toMend("1/3", "position");
  const alike = (n: number) =>
    Array.from({ length: n }, (_, i) =>
      deviceAt(i + 3, { id: `2/${i}`, file: `${i}`, ...(i === 0 ? {} : { notes: "spare" }) }),
    );
  expect(standing([deviceAt(2)], alike(40), known)).toHaveLength(40);
  expect(standing([deviceAt(2)], alike(41), known)).toHaveLength(42);
});

test("a stopped sheet whose mended copy comes too late has given way to what stands", () => {
  const stands = plate({ id: "1/1", file: "first.pdf" });
  const stopped = without(plate({ id: "2/1", file: "no number.pdf" }), "order");
  const late = plate({ id: "3/1", file: "late.pdf" });
  const after = standingAfter([stands, stopped], [late], {
    ...nothingKnown,
    ...toMend("2/1", "order"),
    arrivals: arrivals({ "1": [1, 4], "2": [2, 2], "3": [3, 3] }),
  });
  expect(after.sheets).toEqual([stands]);
  expect(after.late).toEqual([{ old: late, now: stands, how: "place" }]);
  expect(after.replaced).toEqual([{ old: stopped, now: stands, how: "mended" }]);
});

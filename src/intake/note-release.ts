import type { OrderReport, Report } from "../judging/report.ts";
import { type BuyerState, orderKey } from "../judging/state.ts";
import { plainText } from "../orders/keys.ts";
import { pieceKey } from "../orders/piece.ts";
import type { Alarm } from "../ports/store.ts";
import type { Act, Note } from "../trade/note.ts";
import type { Released } from "../trade/released.ts";

/** The order of a note, as the record has it. */
export function orderIn({ order }: Note, { orders }: BuyerState): BuyerState["orders"][number] | undefined {
  return orders.find(({ number }) => orderKey(number) === orderKey(order));
}

/** Why a release cannot be; undefined for an order that has passed. */
export function againstRelease(note: Note, report: Report): string | undefined {
  const order = reportOn(note, report);
  return order?.verdict === "pass" && order.missing.length === 0 ? undefined : "the order has not passed";
}

type Cut = Omit<Extract<Act, { kind: "cut" }>, "kind">;

/**
 * The released pieces of some stations, whichever sheets stand there since; all if none is named. Undefined for a
 * station or a piece that was not released.
 */
function piecesIn(
  { stations, pieces: keys }: Cut,
  { released, sheets }: BuyerState["orders"][number],
): ReadonlySet<string> | undefined {
  const pieces = released?.pieces ?? [];
  if (keys !== undefined) {
    const own = new Set(keys);
    return own.isSubsetOf(new Set(pieces.map(({ key }) => key))) ? own : undefined;
  }
  if (stations.length === 0) return new Set(pieces.map(({ key }) => key));
  // Older releases have not kept the marks of their pieces.
  const marks = new Map(sheets.map((sheet) => [pieceKey(sheet), sheet.mark]));
  const byStation = Map.groupBy(pieces, ({ key, mark = marks.get(key) }) => plainText(mark ?? ""));
  const found = stations.map((station) => byStation.get(plainText(station)) ?? []);
  return found.every((some) => some.length > 0) ? new Set(found.flat().map(({ key }) => key)) : undefined;
}

/** Why it cannot be that the pieces of some stations are engraved. */
export function faultOfCut(cut: Cut, order: BuyerState["orders"][number]): string | undefined {
  if (order.released === undefined) return `order ${order.number} was not released`;
  return piecesIn(cut, order) === undefined
    ? `not all of ${cut.stations.join(", ")} are stations that were released`
    : undefined;
}

/** What a note hands to engraving, or says is engraved; undefined if it does neither. */
export function releasedBy(note: Note, state: BuyerState, report: Report, now: Date): Released | undefined {
  const before = orderIn(note, state);
  const release = note.acts.find((act) => act.kind === "release");
  if (release !== undefined) {
    const done = before?.released?.pieces.filter((one) => one.engraved) ?? [];
    const engraved = new Map(done.map((one) => [one.key, one]));
    const pieces = (reportOn(note, report)?.order.sheets ?? []).map((sheet) => {
      const key = pieceKey(sheet);
      const mark = sheet.mark === undefined ? {} : { mark: sheet.mark };
      const { engravedOn: on } = engraved.get(key) ?? {};
      const day = on === undefined ? {} : { engravedOn: on };
      return { sheet: sheet.id, key, ...mark, engraved: engraved.has(key), ...day };
    });
    const revision = (before?.revision ?? 0) + 1;
    const placeOf = before?.released === undefined ? {} : { before: lastOf(before.released) };
    return { revision, at: now.toISOString(), on: release.on, by: note.by, pieces, ...placeOf };
  }
  const cuts = note.acts.filter((act) => act.kind === "cut");
  if (before?.released === undefined || cuts.length === 0) return undefined;
  const engraved = new Map(
    cuts.flatMap((cut) => [...(piecesIn(cut, before) ?? [])].map((key) => [key, cut.on] as const)),
  );
  const pieces = before.released.pieces.map((one) => {
    if (one.engraved || !engraved.has(one.key)) return one;
    const on = engraved.get(one.key);
    return { ...one, engraved: true, ...(on === undefined ? {} : { engravedOn: on }) };
  });
  return { ...before.released, pieces };
}

/** Whether a note says that something is engraved, and nothing else. */
export function isCut({ acts }: Note): boolean {
  return acts.every(({ kind }) => kind === "cut");
}

/** What the engraving room is told of a release that takes the place of another. */
export function releasedAnew(note: Note, released: Released | undefined): Alarm {
  const isRelease = note.acts.some(({ kind }) => kind === "release");
  if (!isRelease || released?.before === undefined) return [];
  const says = [
    `It is released once more, as revision ${released.revision}. In the new package, changes.txt says which pieces are void.`,
  ];
  return [{ order: note.order, on: released.on, says, holds: true }];
}

function lastOf({ revision, on, pieces }: Released): NonNullable<Released["before"]> {
  return { revision, on, pieces };
}

function reportOn(note: Note, { orders }: Report): OrderReport | undefined {
  return orders.find(({ order }) => orderKey(order.number) === orderKey(note.order));
}

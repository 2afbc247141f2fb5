import { orderNumberNearMiss } from "../checks/order/order-number-near-miss.ts";
import { isMissing } from "../checks/required.ts";
import { headerBlocks, headerOf, type IsOpen, type Says, sameSaid } from "../orders/expected.ts";
import { letterOf } from "../orders/ids.ts";
import { sistersAt } from "../orders/missing.ts";
import { goesIntoPlate } from "../orders/standing.ts";
import type { Station } from "../trade/order.ts";
import type { Entry } from "../trade/place.ts";
import type { Problem } from "../trade/problem.ts";
import { type DeviceSheet, type FileId, isFilled, type Sheet, saidAt } from "../trade/sheet.ts";
import type { OrderReport, Report } from "./report.ts";

/**
 * What the new sheets can only say where something stops them, by their sisters: what the whole order says alike, the
 * gangs of the plate, the one position that is free. And what they have inherited. It is a proposal: it counts once
 * its sender sends it back. A legend is never proposed.
 */
export function mendingsIn(report: Report): ReadonlyMap<FileId, Says> {
  const problemsOf = new Map(report.sheets.map(({ sheet, problems }) => [sheet.id, problems]));
  return new Map(
    report.orders.flatMap((order) => {
      const mine = order.order.sheets.filter(({ id }) => problemsOf.has(id));
      const problems = [...order.problems, ...mine.flatMap(({ id }) => problemsOf.get(id) ?? [])];
      const isOpen = pointedAt(problems.filter(({ severity }) => severity !== "notes"));
      const isStopped = pointedAt(problems.filter(({ severity }) => severity === "stops"));
      return mine.map((sheet) => {
        const says = new Map([
          ...inheritedBy(sheet),
          ...ofHeader(sheet, order, isOpen, isStopped),
          ...inPlate(sheet, order, isOpen, isStopped),
        ]);
        return [sheet.id, says] as const;
      });
    }),
  );
}

function pointedAt(problems: readonly Problem[]): IsOpen {
  const spots = new Set(problems.flatMap(({ spots }) => spots.map(({ file, place }) => `${file} ${place}`)));
  return ({ id }, place) => spots.has(`${id} ${place}`);
}

function inheritedBy(sheet: Sheet): [Entry, string][] {
  const places = (sheet.inherited ?? []).flatMap((one) => one.places);
  return places.map((place) => [place, saidAt(sheet, place)]);
}

/** Blocks that a sheet leaves empty, or fills in as all others of its order do, as far as it goes. */
function ofHeader(
  sheet: Sheet,
  { order, problems }: OrderReport,
  isOpen: IsOpen,
  isStopped: IsOpen,
): [Entry, string][] {
  const others = order.sheets.filter(({ id }) => id !== sheet.id);
  const agreed = new Map(headerOf([others], isOpen));
  const isSame = (place: Entry): boolean =>
    !isFilled(sheet, place) || sameSaid(place, saidAt(sheet, place), agreed.get(place) ?? "");
  const lacks = (block: readonly Entry[]): boolean =>
    block.some((place) => isStopped(sheet, place) && isMissing(sheet, place));
  const bill = headerBlocks.find((block) => block.includes("bill.name")) ?? [];
  return headerBlocks
    .filter(
      (block) =>
        lacks(block) &&
        block.every(isSame) &&
        (!block.includes("ship.same") || bill.every(isSame)) &&
        (!block.includes("order") || isNumberCertain(sheet, others, problems)),
    )
    .flatMap((block) =>
      block.flatMap((place): [Entry, string][] => {
        const said = agreed.get(place);
        return said !== undefined && isMissing(sheet, place) ? [[place, said]] : [];
      }),
    );
}

/** Whether a sheet without a number came with others of its order, and nobody asks about their number. */
function isNumberCertain({ id }: Sheet, others: readonly Sheet[], problems: readonly Problem[]): boolean {
  return (
    others.some((other) => letterOf(other.id) === letterOf(id) && isFilled(other, "order")) &&
    problems.every(({ check }) => check !== orderNumberNearMiss.id)
  );
}

/** The gangs and the position of a device, if its station has one plate. */
function inPlate(sheet: Sheet, { order }: OrderReport, isOpen: IsOpen, isStopped: IsOpen): [Entry, string][] {
  if (sheet.kind !== "device" || !goesIntoPlate(sheet)) return [];
  const station = order.stations.find(({ devices }) => devices.some(({ id }) => id === sheet.id));
  const [plate, ...more] = station?.plates ?? [];
  if (station === undefined || plate?.gangs === undefined || more.length > 0 || isOpen(plate, "gangs"))
    return [];
  const { gangs } = plate;
  const position = isStopped(sheet, "position") ? onlyFree(sheet, station, gangs) : undefined;
  const isWithin = (position ?? sheet.position ?? 1) <= gangs;
  return [
    ...(isStopped(sheet, "gangs") && isWithin && sheet.gangs !== gangs
      ? [["gangs", String(gangs)] as const]
      : []),
    ...(position === undefined ? [] : [["position", String(position)] as const]),
  ].map(([place, said]) => [place, said]);
}

/** The one position that is free, for the one device that names none. */
function onlyFree(sheet: DeviceSheet, { mark, devices }: Station, gangs: number): number | undefined {
  const others = devices.filter((device) => goesIntoPlate(device) && device.id !== sheet.id);
  if (!isMissing(sheet, "position") || others.length !== gangs - 1) return undefined;
  const placed = others.map((device) => ({ ...device, gangs }));
  const [free, ...more] = sistersAt({ mark, plates: [], devices: placed, byNotes: [] });
  return more.length === 0 ? free?.position : undefined;
}

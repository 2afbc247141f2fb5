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
import type { Report } from "./report.ts";

/**
 * What the new sheets can only say where something stops them, by their sisters: what the whole order says alike, the
 * gangs of the plate, the one position that is free. And what they have inherited. It is a proposal: it counts once
 * its sender sends it back. A legend is never proposed.
 */
export function mendingsIn(report: Report): ReadonlyMap<FileId, Says> {
  const problemsOf = new Map(report.sheets.map(({ sheet, problems }) => [sheet.id, problems]));
  return new Map(
    report.orders.flatMap(({ order, problems: ofOrder }) => {
      const mine = order.sheets.filter(({ id }) => problemsOf.has(id));
      const problems = [...ofOrder, ...mine.flatMap(({ id }) => problemsOf.get(id) ?? [])];
      const isOpen = pointedAt(problems.filter(({ severity }) => severity !== "notes"));
      const sisters: Sisters = {
        isOpen,
        isStopped: pointedAt(problems.filter(({ severity }) => severity === "stops")),
        agreed: new Map([...headerOf(order.sheets, isOpen).values()].flat()),
        numbered: new Set(
          problems.some(({ check }) => check === orderNumberNearMiss.id)
            ? []
            : order.sheets.flatMap((sheet) => (isFilled(sheet, "order") ? [letterOf(sheet.id)] : [])),
        ),
        stations: new Map(
          order.stations.flatMap((station) => station.devices.map(({ id }) => [id, station] as const)),
        ),
      };
      return mine.map((sheet) => {
        const says = [...inheritedBy(sheet), ...ofHeader(sheet, sisters), ...inPlate(sheet, sisters)];
        return [sheet.id, new Map(says)] as const;
      });
    }),
  );
}

/** What the sheets of an order say together. */
interface Sisters {
  readonly isOpen: IsOpen;
  readonly isStopped: IsOpen;
  /** What they agree on of the order. */
  readonly agreed: Says;
  /** Letters that name the order's number, if nobody asks about it. */
  readonly numbered: ReadonlySet<string>;
  /** The station of each device. */
  readonly stations: ReadonlyMap<FileId, Station>;
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
function ofHeader(sheet: Sheet, { agreed, isStopped, numbered }: Sisters): [Entry, string][] {
  const isSame = (place: Entry): boolean =>
    !isFilled(sheet, place) || sameSaid(place, saidAt(sheet, place), agreed.get(place) ?? "");
  const bill = headerBlocks.find((block) => block.includes("bill.name")) ?? [];
  return headerBlocks
    .filter(
      (block) =>
        block.some((place) => isStopped(sheet, place) && isMissing(sheet, place)) &&
        block.every(isSame) &&
        (!block.includes("ship.same") || bill.every(isSame)) &&
        // A sheet without a number belongs to those that came with it, and to no others.
        (!block.includes("order") || numbered.has(letterOf(sheet.id))),
    )
    .flatMap((block) =>
      block.flatMap((place): [Entry, string][] => {
        const said = agreed.get(place);
        return said !== undefined && isMissing(sheet, place) ? [[place, said]] : [];
      }),
    );
}

/** The gangs and the position of a device, if its station has one plate. */
function inPlate(sheet: Sheet, { isOpen, isStopped, stations }: Sisters): [Entry, string][] {
  const station = stations.get(sheet.id);
  const [plate, ...more] = station?.plates ?? [];
  if (sheet.kind !== "device" || !goesIntoPlate(sheet) || station === undefined) return [];
  if (plate?.gangs === undefined || more.length > 0 || isOpen(plate, "gangs")) return [];
  const { gangs } = plate;
  const position = isStopped(sheet, "position") ? onlyFree(sheet, station, gangs) : undefined;
  const isWrong = isStopped(sheet, "gangs") && sheet.gangs !== gangs;
  return [
    ...(isWrong && (position ?? sheet.position ?? 1) <= gangs
      ? [["gangs", String(gangs)] satisfies [Entry, string]]
      : []),
    ...(position === undefined ? [] : [["position", String(position)] satisfies [Entry, string]]),
  ];
}

/** The one position that is free, for the one device that names none. */
function onlyFree(sheet: DeviceSheet, { mark, devices }: Station, gangs: number): number | undefined {
  const others = devices.filter((device) => goesIntoPlate(device) && device.id !== sheet.id);
  if (!isMissing(sheet, "position") || others.length !== gangs - 1) return undefined;
  const placed = others.map((device) => ({ ...device, gangs }));
  const [free, ...more] = sistersAt({ mark, plates: [], devices: placed, byNotes: [] });
  return more.length === 0 ? free?.position : undefined;
}

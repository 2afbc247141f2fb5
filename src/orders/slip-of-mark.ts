import type { Order, Station } from "../trade/order.ts";
import { looksOf, markPart } from "./alike.ts";
import { missingAt } from "./missing.ts";
import { oneSlipApart } from "./near.ts";
import { goesIntoPlate } from "./standing.ts";

/** Two stations that are probably one: the mark of the first is one slip from the second's. */
export interface SlipOfMark {
  readonly station: Station;
  readonly meant: Station;
}

const kept = new WeakMap<Order, readonly SlipOfMark[]>();

/**
 * Stations whose sheets are just what another station lacks, with a mark one slip away. Kept, since several checks
 * ask.
 */
export function slipsOfMark(order: Order): readonly SlipOfMark[] {
  const slips = kept.get(order) ?? findSlips(order);
  kept.set(order, slips);
  return slips;
}

function findSlips(order: Order): SlipOfMark[] {
  const marked = order.stations.filter((station) => station.mark !== "" && missingAt(station).length > 0);
  return marked.flatMap((station, i) => {
    const meant = marked.find(
      (other, j) =>
        i !== j &&
        lacksWhatIsAt(other, station) &&
        // If each lacks what the other has, the one with fewer sheets is asked about, then the later.
        !(lacksWhatIsAt(station, other) && (sheetsAt(station) - sheetsAt(other) || j - i) > 0),
    );
    return meant === undefined ? [] : [{ station, meant }];
  });
}

/** Stations whose marks look the same and are not, such as S-1O4 and S-104. The later one is asked about. */
export function lookAlikeMarks(order: Order): SlipOfMark[] {
  const marked = order.stations.filter(({ mark }) => mark !== "");
  return [...Map.groupBy(marked, ({ mark }) => looksOf(markPart(mark))).values()].flatMap(
    ([meant, ...more]) => (meant === undefined ? [] : more.map((station) => ({ station, meant }))),
  );
}

function lacksWhatIsAt(other: Station, station: Station): boolean {
  if (
    !oneSlipApart(station.mark, other.mark) &&
    looksOf(markPart(station.mark)) !== looksOf(markPart(other.mark))
  )
    return false;
  const lacking = missingAt(other);
  const gangs = new Set([station, other].flatMap(gangsSaid));
  return (
    gangs.size < 2 &&
    station.plates.every(() => lacking.some(({ kind }) => kind === "plate")) &&
    station.devices.every(
      (device) =>
        goesIntoPlate(device) &&
        lacking.some(({ kind, position }) => kind === "device" && position === device.position),
    )
  );
}

function gangsSaid({ plates, devices }: Station): number[] {
  return [...plates, ...devices].flatMap(({ gangs }) => gangs ?? []);
}

function sheetsAt({ plates, devices }: Station): number {
  return plates.length + devices.length;
}

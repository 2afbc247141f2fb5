import type { Order, Station } from "../trade/order.ts";
import { missingAt } from "./missing.ts";
import { oneSlipApart } from "./near.ts";
import { goesIntoPlate } from "./standing.ts";

/** Two stations that are probably one: the mark of the first is one slip from the second's. */
export interface SlipOfMark {
  readonly station: Station;
  readonly meant: Station;
}

/** Stations whose sheets are just what a station with a mark one slip away still lacks. */
export function slipsOfMark(order: Order): SlipOfMark[] {
  const marked = order.stations.filter(({ mark }) => mark !== "");
  return marked.flatMap((station, i) => {
    const meant = marked.find(
      (other, j) =>
        lacksWhatIsAt(other, station) &&
        // Where each lacks what the other has, the one with fewer sheets is asked about, then the later.
        !(lacksWhatIsAt(station, other) && (sheetsAt(station) - sheetsAt(other) || j - i) > 0),
    );
    return meant === undefined ? [] : [{ station, meant }];
  });
}

function lacksWhatIsAt(other: Station, station: Station): boolean {
  if (!oneSlipApart(station.mark, other.mark) || missingAt(station).length === 0) return false;
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

import type { Order, Station } from "../trade/order.ts";
import type { DeviceSheet } from "../trade/sheet.ts";
import { missingAt } from "./missing.ts";
import { goesIntoPlate } from "./standing.ts";

/** Device sheets of one station that claim one position. Some may be meant for a place that lacks a sheet. */
export interface DoubledPosition {
  readonly station: Station;
  readonly position: number;
  readonly claims: readonly DeviceSheet[];
  /** Positions of this station for which nothing came. */
  readonly positions: readonly number[];
  /** Another station for whose position nothing came. */
  readonly other?: Station;
}

/** Every position that several device sheets claim. */
export function doubledPositions(order: Order): DoubledPosition[] {
  const doubled = order.stations.flatMap((station) =>
    [...Map.groupBy(station.devices.filter(goesIntoPlate), ({ position }) => position)].flatMap(
      ([position, claims]) =>
        position === undefined || claims.length < 2 ? [] : [{ station, position, claims }],
    ),
  );
  // Stations by the positions that they lack; each is offered once.
  const lacking = new Map<number, Station[]>();
  for (const station of order.stations)
    for (const position of missingPositions(station))
      lacking.set(position, (lacking.get(position) ?? []).concat(station));
  return doubled.map((one) => {
    const positions = missingPositions(one.station);
    const others = positions.length > 0 ? [] : (lacking.get(one.position) ?? []);
    const other = others.find(({ plates }) => plates[0]?.gangs === one.claims[0]?.gangs);
    if (other === undefined) return { ...one, positions };
    lacking.set(
      one.position,
      others.filter((station) => station !== other),
    );
    return { ...one, positions, other };
  });
}

/** Whether as many device sheets came as a station has positions, although they do not say which is for which. */
export function enoughCame(station: Station): boolean {
  const missing = missingPositions(station);
  const placed = (station.plates[0]?.gangs ?? 0) - missing.length;
  return missing.length > 0 && station.devices.length - placed >= missing.length;
}

/** A station with several plate sheets. One may be meant for another station, which has devices and no plate. */
export interface DoubledPlate {
  readonly station: Station;
  readonly other?: Station;
}

/** Every station that has several plate sheets. */
export function doubledPlates(order: Order): DoubledPlate[] {
  const doubled = order.stations.filter(({ plates }) => plates.length > 1);
  let lacking = order.stations.filter((one) => missingAt(one).some(({ kind }) => kind === "plate"));
  return doubled.map((station) => {
    const gangs = new Set(station.plates.map((plate) => plate.gangs));
    const other = lacking.find(({ devices }) =>
      devices.every((device) => device.gangs === undefined || gangs.has(device.gangs)),
    );
    if (other === undefined) return { station };
    lacking = lacking.filter((one) => one !== other);
    return { station, other };
  });
}

function missingPositions(station: Station): number[] {
  return missingAt(station).flatMap(({ position }) => position ?? []);
}

import type { Order, Station } from "../trade/order.ts";
import type { DeviceSheet } from "../trade/sheet.ts";
import { missingAt } from "./missing.ts";
import { goesIntoPlate } from "./standing.ts";

/** Device sheets of one station that claim one position, and the place that lacks one, for which some may be meant. */
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
  if (doubled.length === 0) return [];
  const taken = new Set<string>();
  return doubled.map(({ station, position, claims }) => {
    const positions = missingPositions(station);
    const other =
      positions.length > 0
        ? undefined
        : order.stations.find(
            (one) =>
              one !== station &&
              !taken.has(`${one.mark}/${position}`) &&
              one.plates[0]?.gangs === claims[0]?.gangs &&
              missingPositions(one).includes(position),
          );
    if (other === undefined) return { station, position, claims, positions };
    taken.add(`${other.mark}/${position}`);
    return { station, position, claims, positions, other };
  });
}

/** Whether enough device sheets came for a station's positions that none is lacking, though they do not say which is for which. */
export function enoughCame(station: Station): boolean {
  const missing = missingPositions(station);
  const placed = (station.plates[0]?.gangs ?? 0) - missing.length;
  return missing.length > 0 && station.devices.length - placed >= missing.length;
}

/** A station with several plate sheets, and one that has devices and none, for which one of them may be meant. */
export interface DoubledPlate {
  readonly station: Station;
  readonly other?: Station;
}

/** Every station that has several plate sheets. */
export function doubledPlates(order: Order): DoubledPlate[] {
  const taken = new Set<Station>();
  return order.stations
    .filter(({ plates }) => plates.length > 1)
    .map((station) => {
      const gangs = new Set(station.plates.map((plate) => plate.gangs));
      const other = order.stations.find(
        (one) =>
          !taken.has(one) &&
          missingAt(one).some(({ kind }) => kind === "plate") &&
          one.devices.every((device) => device.gangs === undefined || gangs.has(device.gangs)),
      );
      if (other === undefined) return { station };
      taken.add(other);
      return { station, other };
    });
}

function missingPositions(station: Station): number[] {
  return missingAt(station).flatMap(({ position }) => position ?? []);
}

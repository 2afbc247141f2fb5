import type { Missing, Order, Station } from "../trade/order.ts";
import type { DeviceSheet } from "../trade/sheet.ts";
import { goesIntoPlate } from "./standing.ts";

/** More gangs than any wall plate has. A larger number is a slip, and the sheet is stopped for it. */
const beyondAnyPlate = 20;

/** The sheets that an order still lacks, station by station. */
export function missingOf(order: Order): Missing[] {
  return order.stations.flatMap(missingAt);
}

/** The sheets that one station still lacks. Without a mark nothing can be matched, so nothing is awaited. */
export function missingAt({ mark, plates, devices }: Station): Missing[] {
  if (mark === "") return [];
  const fitted = devices.filter(goesIntoPlate);
  const [plate] = plates;
  if (plate === undefined) return fitted.length === 0 ? [] : [{ station: mark, kind: "plate" }];
  return freeOf(plate.gangs, mark, fitted);
}

/** The devices that a station without a plate sheet would need besides, if its devices agree on the gangs. */
export function sistersAt({ mark, plates, devices }: Station): Missing[] {
  const fitted = devices.filter(goesIntoPlate);
  const [gangs, ...more] = new Set(fitted.map((device) => device.gangs));
  return mark === "" || plates.length > 0 || more.length > 0 ? [] : freeOf(gangs, mark, fitted);
}

/** The positions of a plate for which no device came. */
function freeOf(gangs = 0, station: string, fitted: readonly DeviceSheet[]): Missing[] {
  const taken = new Set(fitted.map((device) => device.position));
  return Array.from({ length: gangs < beyondAnyPlate ? gangs : 0 }, (_, i) => i + 1)
    .filter((position) => !taken.has(position))
    .map((position) => ({ station, kind: "device", position }));
}

import type { Missing, Order, Station } from "../trade/order.ts";
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
  const gangs = plate.gangs ?? 0;
  const taken = new Set(fitted.map((device) => device.position));
  return Array.from({ length: gangs < beyondAnyPlate ? gangs : 0 }, (_, i) => i + 1)
    .filter((position) => !taken.has(position))
    .map((position) => ({ station: mark, kind: "device", position }));
}

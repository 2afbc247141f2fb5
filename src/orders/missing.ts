import type { Missing, Order, Station } from "../trade/order.ts";

/** The sheets that an order still lacks, station by station. */
export function missingOf(order: Order): Missing[] {
  return order.stations.flatMap(missingAt);
}

function missingAt(station: Station): Missing[] {
  const devices = station.devices.filter((device) => device.standing !== "alone");
  const [plate] = station.plates;
  if (plate === undefined) return devices.length === 0 ? [] : [{ station: station.mark, kind: "plate" }];
  const taken = new Set(devices.map((device) => device.position));
  return Array.from({ length: plate.gangs ?? 0 }, (_, i) => i + 1)
    .filter((position) => !taken.has(position))
    .map((position) => ({ station: station.mark, kind: "device", position }));
}

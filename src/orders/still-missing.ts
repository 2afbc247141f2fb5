import type { Missing, Order, Station } from "../trade/order.ts";
import { alikeOrders } from "./alike-order.ts";
import { doubledPlates, doubledPositions, enoughCame } from "./doubled.ts";
import { plainText } from "./keys.ts";
import { missingAt, sistersAt } from "./missing.ts";
import { lookAlikeMarks, slipsOfMark } from "./slip-of-mark.ts";

/**
 * The sheets that an order still lacks. A sheet that came under a mistyped mark, number or position is not lacking:
 * it is asked about, and need not be sent again.
 */
export function stillMissing(order: Order, others: readonly Order[]): Missing[] {
  return lacking(order, others, missingAt);
}

/**
 * The sheets that are missing, and where a plate sheet is, the device sheets that its plate would need besides. It is
 * not certain that the plate is to come.
 */
export function withSisters(
  missing: readonly Missing[],
  order: Order,
  others: readonly Order[],
): readonly Missing[] {
  const plates = new Set(missing.flatMap(({ kind, station }) => (kind === "plate" ? [station] : [])));
  const sisters = lacking(order, others, sistersAt).filter(({ station }) => plates.has(station));
  return [...missing, ...sisters];
}

function lacking(
  order: Order,
  others: readonly Order[],
  missingAt: (station: Station) => Missing[],
): Missing[] {
  if (order.stations.every((station) => missingAt(station).length === 0)) return [];
  const elsewhere = new Map<Station, Station[]>();
  const add = (station: Station, other: Station): unknown =>
    elsewhere.set(station, [...(elsewhere.get(station) ?? []), other]);
  for (const { station, meant } of [...slipsOfMark(order), ...lookAlikeMarks(order)]) {
    add(station, meant);
    add(meant, station);
  }
  const inTwins = Map.groupBy(
    alikeOrders(order, others).flatMap(({ other }) => other.stations),
    ({ mark }) => plainText(mark),
  );
  const positions = new Set(
    doubledPositions(order).map(({ other, position }) => `${other?.mark}/${position}`),
  );
  const plates = new Set(doubledPlates(order).map(({ other }) => other));
  return order.stations.flatMap((station) => {
    const missing = missingAt(station);
    if (missing.length === 0) return [];
    const came = [...(elsewhere.get(station) ?? []), ...(inTwins.get(plainText(station.mark)) ?? [])];
    const enough = enoughCame(station);
    return missing.filter(
      ({ kind, position }) =>
        !came.some((other) => has(other, { kind, position })) &&
        !(kind === "plate" && plates.has(station)) &&
        !(kind === "device" && enough) &&
        !(kind === "device" && positions.has(`${station.mark}/${position}`)),
    );
  });
}

/** A sheet that an order lacks and that came under the number of another order, if the two may be one. */
export function lackedElsewhere(order: Order, others: readonly Order[]): Missing | undefined {
  const still = stillMissing(order, others);
  const without = stillMissing(order, []);
  return without.find(
    (missing) =>
      !still.some(
        ({ station, kind, position }) =>
          station === missing.station && kind === missing.kind && position === missing.position,
      ),
  );
}

function has(
  { plates, devices }: Station,
  { kind, position }: Pick<Missing, "kind"> & { position: number | undefined },
): boolean {
  return kind === "plate" ? plates.length > 0 : devices.some((device) => device.position === position);
}

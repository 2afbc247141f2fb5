import type { Missing, Order, Station } from "../trade/order.ts";
import { alikeOrders } from "./alike-order.ts";
import { doubledPlates, doubledPositions, enoughCame } from "./doubled.ts";
import { plainText } from "./keys.ts";
import { missingAt } from "./missing.ts";
import { lookAlikeMarks, slipsOfMark } from "./slip-of-mark.ts";

/**
 * The sheets that an order still lacks. What came under a mark, a number or a position that looks mistyped is not
 * among them: it is asked about, and need not be sent again because of that.
 */
export function stillMissing(order: Order, others: readonly Order[]): Missing[] {
  const slips = [...slipsOfMark(order), ...lookAlikeMarks(order)];
  const twins = alikeOrders(order, others);
  const counterparts = (station: Station): Station[] => [
    ...slips.flatMap((slip) =>
      slip.station === station ? slip.meant : slip.meant === station ? slip.station : [],
    ),
    ...twins
      .flatMap(({ other }) => other.stations)
      .filter(({ mark }) => plainText(mark) === plainText(station.mark)),
  ];
  const positions = doubledPositions(order);
  const plates = doubledPlates(order);
  return order.stations.flatMap((station) => {
    const missing = missingAt(station);
    if (missing.length === 0) return [];
    const came = counterparts(station);
    const enough = enoughCame(station);
    return missing.filter(
      ({ kind, position }) =>
        !came.some((other) => has(other, { kind, position })) &&
        !(kind === "plate" && plates.some(({ other }) => other === station)) &&
        !(kind === "device" && enough) &&
        !(kind === "device" && positions.some((one) => one.other === station && one.position === position)),
    );
  });
}

/** Whether some of what an order lacks came under the number of another order that may be one with it. */
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

import type { Missing, Order, Station } from "../trade/order.ts";
import { plainText } from "./keys.ts";
import { meantOrder } from "./meant-order.ts";
import { missingAt } from "./missing.ts";
import { slipsOfMark } from "./slip-of-mark.ts";

/**
 * The sheets that an order still lacks. What came under a mark or a number that looks mistyped is not
 * among them: it is asked about, and need not be sent again because of that.
 */
export function stillMissing(order: Order, others: readonly Order[]): Missing[] {
  const slips = slipsOfMark(order);
  const twins = others.filter(
    (other) => meantOrder(order, [other]) !== undefined || meantOrder(other, [order]) !== undefined,
  );
  const counterparts = (station: Station): Station[] => [
    ...slips.flatMap((slip) =>
      slip.station === station ? slip.meant : slip.meant === station ? slip.station : [],
    ),
    ...twins
      .flatMap(({ stations }) => stations)
      .filter(({ mark }) => plainText(mark) === plainText(station.mark)),
  ];
  return order.stations.flatMap((station) => {
    const came = counterparts(station);
    return missingAt(station).filter((missing) => !came.some((other) => has(other, missing)));
  });
}

function has({ plates, devices }: Station, { kind, position }: Missing): boolean {
  return kind === "plate" ? plates.length > 0 : devices.some((device) => device.position === position);
}

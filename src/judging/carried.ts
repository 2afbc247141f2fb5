import { gatherOrders } from "../orders/gather.ts";
import { plainText } from "../orders/keys.ts";
import { missingOf } from "../orders/missing.ts";
import type { Standing } from "../orders/stand.ts";
import { wallPlaceOf } from "../orders/wall-place.ts";
import type { Carried } from "../trade/carried.ts";
import type { Missing, Order } from "../trade/order.ts";
import type { Sheet } from "../trade/sheet.ts";
import type { OrderState } from "./state.ts";

/**
 * What earlier letters left open in an order and new sheets do not settle. A file that could not be read is settled
 * by a new sheet of its name, or by one for a place that the order lacked.
 */
export function stillCarried(
  order: Order,
  { replaced, late }: Pick<Standing, "replaced" | "late">,
  before: OrderState | undefined,
): readonly Carried[] {
  if (before === undefined) return [];
  const had = new Set(before.sheets.map(({ id }) => id));
  const gave = new Set([...replaced, ...late].flatMap(({ old, now }) => [old.id, now.id]));
  const fresh = order.sheets.filter(({ id }) => !had.has(id) && !gave.has(id));
  const lacked = gatherOrders(before.sheets).flatMap(missingOf);
  const left = [...fresh];
  return before.carried.filter((one) => {
    if (one.what !== "file") return true;
    const came =
      left.find((sheet) => isNamed(sheet, one.text)) ??
      left.find((sheet) => lacked.some((missing) => fills(sheet, missing)));
    if (came === undefined) return true;
    left.splice(left.indexOf(came), 1);
    return false;
  });
}

/** Whether a sheet bears the name of a file, whatever "scan" or number was put behind it. */
function isNamed({ file, named }: Sheet, other: string): boolean {
  const [a, b] = [named ?? file, other].map((name) => plainText(name.replace(/\.[a-z0-9]{2,5}$/i, "")));
  return (
    a !== undefined &&
    b !== undefined &&
    Math.min(a.length, b.length) > 1 &&
    (a.startsWith(b) || b.startsWith(a))
  );
}

function fills(sheet: Sheet, { station, kind, position }: Missing): boolean {
  return (
    sheet.kind === kind &&
    wallPlaceOf(sheet) !== undefined &&
    plainText(sheet.mark ?? "") === plainText(station) &&
    (sheet.kind === "plate" || sheet.position === position)
  );
}

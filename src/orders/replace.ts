import type { Sheet } from "../trade/sheet.ts";
import { gatherOrders } from "./gather.ts";
import { plainText } from "./keys.ts";
import { meantOrder } from "./meant-order.ts";
import { isMarked, placed } from "./placed.ts";
import { slipsOfMark } from "./slip-of-mark.ts";

/**
 * The earlier sheets that still stand when new ones come: a new sheet for the same place takes the place
 * of the old one, whether or not it is in order itself, since its sender no longer wants the old one. A
 * sheet that names no station replaces nothing: it may as well be one more of its kind.
 */
export function withoutReplaced(earlier: readonly Sheet[], sheets: readonly Sheet[]): Sheet[] {
  const wanted = sheets.flatMap((sheet) => placeOf(sheet) ?? []);
  const plates = [...earlier, ...sheets]
    .filter(({ kind }) => kind === "plate")
    .flatMap((plate) => placeOf(plate) ?? []);
  const hasPlate = ({ order, mark }: Place): boolean =>
    plates.some((plate) => plate.order === order && plate.mark === mark);
  const same = (old: Place, now: Place): boolean =>
    old.order === now.order &&
    old.mark === now.mark &&
    old.kind === now.kind &&
    // Without a plate, a device now said to stand alone is the one that was said to go into a plate.
    (old.position === now.position || (now.kind === "device" && now.position === 0 && !hasPlate(now)));

  const meant = meantPlaces(earlier);
  return earlier.filter((sheet) => {
    const places = [placeOf(sheet), ...(meant.get(sheet.id) ?? [])].filter((place) => place !== undefined);
    return !places.some((old) => wanted.some((now) => same(old, now)));
  });
}

interface Place {
  readonly order: string;
  readonly kind: Sheet["kind"];
  readonly mark: string;
  /** 0 for a plate, and for a device that stands alone; -1 for a device whose position is not known. */
  readonly position: number;
}

/** Where a sheet belongs; undefined for one that names no station. */
function placeOf(one: Sheet): Place | undefined {
  const number = one.order ?? "";
  const sheet = placed(one, [], [number]);
  if (!isMarked(sheet)) return undefined;
  const { kind } = sheet;
  const position = kind === "device" && sheet.standing !== "alone" ? (sheet.position ?? -1) : 0;
  return { order: plainText(number), kind, mark: plainText(sheet.mark), position };
}

/**
 * Where sheets were probably meant to go whose order number or mark looks mistyped: the sheet that comes
 * to that place is the mended one.
 */
function meantPlaces(sheets: readonly Sheet[]): Map<Sheet["id"], Place[]> {
  const orders = gatherOrders(sheets);
  const meant = new Map<Sheet["id"], Place[]>();
  const add = (sheet: Sheet, changes: Partial<Place>): void => {
    const place = placeOf(sheet);
    if (place !== undefined) meant.set(sheet.id, [...(meant.get(sheet.id) ?? []), { ...place, ...changes }]);
  };
  for (const order of orders) {
    const other = meantOrder(
      order,
      orders.filter((one) => one !== order),
    );
    if (other !== undefined) for (const sheet of order.sheets) add(sheet, { order: plainText(other.number) });
    for (const slip of slipsOfMark(order))
      for (const sheet of [...slip.station.plates, ...slip.station.devices])
        add(sheet, { mark: plainText(slip.meant.mark) });
  }
  return meant;
}

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
  const plates = new Set(
    [...earlier, ...sheets]
      .filter(({ kind }) => kind === "plate")
      .flatMap((plate) => placeOf(plate) ?? [])
      .map(stationKey),
  );
  const taken = new Set(wanted.map(placeKey));
  // Without a plate, a device now said to stand alone is the one that was said to go into a plate.
  const alone = new Set(
    wanted
      .filter(({ kind, position }) => kind === "device" && position === 0)
      .map(stationKey)
      .filter((station) => !plates.has(station)),
  );
  const isTaken = (old: Place): boolean =>
    taken.has(placeKey(old)) || (old.kind === "device" && alone.has(stationKey(old)));

  const meant = meantPlaces(earlier);
  return earlier.filter((sheet) => {
    const places = [placeOf(sheet), ...(meant.get(sheet.id) ?? [])].filter((place) => place !== undefined);
    return !places.some(isTaken);
  });
}

interface Place {
  readonly order: string;
  readonly kind: Sheet["kind"];
  readonly mark: string;
  /** 0 for a plate, and for a device that stands alone; -1 for a device whose position is not known. */
  readonly position: number;
}

// Order and mark are plain texts, letters and digits alone.
function stationKey({ order, mark }: Place): string {
  return `${order}/${mark}`;
}

function placeKey(place: Place): string {
  return `${stationKey(place)}/${place.kind}/${place.position}`;
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
    if (place === undefined) return;
    const places = meant.get(sheet.id) ?? [];
    places.push({ ...place, ...changes });
    meant.set(sheet.id, places);
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

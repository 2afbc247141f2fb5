import type { Aside } from "../trade/order.ts";
import type { Place } from "../trade/place.ts";
import type { DeviceSheet, Sheet } from "../trade/sheet.ts";
import { ageOf } from "./age.ts";
import { plainText } from "./keys.ts";
import type { Known } from "./stand.ts";
import { goesIntoPlate } from "./standing.ts";
import { wallPlaceOf } from "./wall-place.ts";

/** Sheets of one order for one place of which it is not clear which is newer: the one that arrived first counts. */
export function unclearDates(sheets: readonly Sheet[], { arrivals }: Known): Aside[] {
  const groups = Map.groupBy(sheets, (sheet) => wallPlaceOf(sheet) ?? sheet.id);
  return [...groups.values()].flatMap(([first, ...more]) =>
    more.flatMap((sheet): Aside[] =>
      first !== undefined && ageOf(sheet.id, first.id, arrivals) === "unclear"
        ? [{ sheet, beside: first, why: "dates" }]
        : [],
    ),
  );
}

/** The places of a sheet that say where it belongs. */
const wherePlaces: readonly Place[] = ["order", "project", "mark", "standing", "position", "gangs"];

/**
 * Stopped sheets of earlier letters that have perhaps come again for another place, since their own was at fault: a
 * newer sheet of that kind bears the name of their file, or their station mark.
 */
export function perhapsAgain(sheets: readonly Sheet[], { arrivals, stopped, toMend }: Known): Aside[] {
  const isPlaced = (sheet: Sheet): boolean =>
    wallPlaceOf(sheet) !== undefined &&
    wherePlaces.every((place) => toMend.get(sheet.id)?.has(place) !== true);
  return sheets
    .filter((sheet) => stopped.has(sheet.id) && !isPlaced(sheet))
    .flatMap((sheet): Aside[] => {
      const again = sheets.find(
        (now) =>
          now.kind === sheet.kind &&
          !stopped.has(now.id) &&
          ageOf(now.id, sheet.id, arrivals) === "newer" &&
          (nameOf(now) === nameOf(sheet) || hasItsMark(now, sheet)),
      );
      return again === undefined ? [] : [{ sheet, beside: again, why: "again" }];
    });
}

/** The file's name as it was first sent: without what a marked copy puts before it. */
function nameOf({ named, file }: Sheet): string {
  return plainText((named ?? file).replace(/^(?:marked )+/i, "").replace(/\.pdf$/i, ""));
}

function hasItsMark(now: Sheet, sheet: Sheet): boolean {
  return wallPlaceOf(sheet) === undefined && plainText(now.mark ?? "") === plainText(sheet.mark ?? " ");
}

/** Of one station: older sheets for which newer ones leave no room. */
export function leftOver(members: readonly Sheet[], known: Known): Aside[] {
  const plates = members.filter((sheet) => sheet.kind === "plate");
  const devices = members.filter((sheet) => sheet.kind === "device");
  return devices.flatMap((sheet) => {
    const older = (beside: Sheet): boolean => ageOf(sheet.id, beside.id, known.arrivals) === "older";
    const [why, beside] = goesIntoPlate(sheet)
      ? inPlate(sheet, plates, devices, older)
      : (["alone", [...plates, ...devices.filter(goesIntoPlate)].find(older)] as const);
    return beside === undefined ? [] : [{ sheet, beside, why }];
  });
}

function inPlate(
  { position }: DeviceSheet,
  [plate]: readonly Sheet[],
  devices: readonly DeviceSheet[],
  older: (beside: Sheet) => boolean,
): readonly [Aside["why"], Sheet | undefined] {
  if (plate === undefined)
    return ["in-plate", devices.find((other) => other.standing === "alone" && older(other))];
  const isBeyond = position !== undefined && position > (plate.gangs ?? Number.POSITIVE_INFINITY);
  return ["beyond", isBeyond && older(plate) ? plate : undefined];
}

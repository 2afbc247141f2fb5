import type { Aside } from "../trade/order.ts";
import type { Place } from "../trade/place.ts";
import type { DeviceSheet, Sheet } from "../trade/sheet.ts";
import { ageOf, ageOfSheets } from "./age.ts";
import { differencesOf } from "./differences.ts";
import { letterOf } from "./ids.ts";
import { plainText } from "./keys.ts";
import type { Known } from "./stand.ts";
import { goesIntoPlate } from "./standing.ts";
import { wallPlaceOf } from "./wall-place.ts";

/** Sheets of one order for one place, if it is not clear which is newer. The one that arrived first counts. */
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

/**
 * Sheets of one order for one place that stand in letters of two dates, forwarded as one. Whoever forwards both may not
 * know that the newer counts, so it is asked about. Sheets that say the same ask nothing.
 */
export function olderForwarded(sheets: readonly Sheet[], { arrivals }: Known): Aside[] {
  const dated = sheets.filter(({ written }) => written !== undefined);
  const groups = Map.groupBy(dated, (sheet) => `${letterOf(sheet.id)} ${wallPlaceOf(sheet) ?? sheet.id}`);
  return [...groups.values()].flatMap((group) => {
    const newest = group.reduce((one, other) =>
      ageOfSheets(other, one, arrivals) === "newer" ? other : one,
    );
    return group.flatMap((sheet): Aside[] =>
      ageOfSheets(sheet, newest, arrivals) === "older" && differencesOf(sheet, newest).length > 0
        ? [{ sheet, beside: newest, why: "forwarded" }]
        : [],
    );
  });
}

/** The places of a sheet that say where it belongs. */
const wherePlaces: readonly Place[] = ["order", "project", "mark", "standing", "position", "gangs"];

/**
 * Stopped sheets of earlier letters that may have come again for another place, since their own was at fault. A newer
 * sheet of that kind bears the name of their file, or their station mark.
 */
export function perhapsAgain(
  sheets: readonly Sheet[],
  { arrivals, stopped, toMend, perhapsAlone }: Known,
): Aside[] {
  const isPlaced = (sheet: Sheet): boolean =>
    wallPlaceOf(sheet) !== undefined &&
    perhapsAlone?.has(sheet.id) !== true &&
    wherePlaces.every((place) => toMend.get(sheet.id)?.has(place) !== true);
  const mended = sheets.filter(({ id }) => !stopped.has(id));
  const byName = Map.groupBy(mended, (sheet) => `${sheet.kind} ${nameOf(sheet)}`);
  const byMark = Map.groupBy(mended, (sheet) => `${sheet.kind} ${plainText(sheet.mark ?? "")}`);
  return sheets
    .filter((sheet) => stopped.has(sheet.id) && !isPlaced(sheet))
    .flatMap((sheet): Aside[] => {
      const { kind, mark = "" } = sheet;
      const named = byName.get(`${kind} ${nameOf(sheet)}`) ?? [];
      const marked =
        mark === "" || wallPlaceOf(sheet) !== undefined ? [] : byMark.get(`${kind} ${plainText(mark)}`);
      const beside = [...named, ...(marked ?? [])].findLast(
        ({ id }) => ageOf(id, sheet.id, arrivals) === "newer",
      );
      return beside === undefined ? [] : [{ sheet, beside, why: "again" }];
    });
}

/** The file's name as it was first sent, without what a marked copy adds in front. */
function nameOf({ named, file }: Sheet): string {
  return plainText((named ?? file).replace(/^(?:marked )+/i, "").replace(/\.pdf$/i, ""));
}

/** Older devices of one station for which newer sheets leave no room. Its sheets stand in the order in which they came. */
export function leftOver(members: readonly Sheet[], { arrivals }: Known): Aside[] {
  const devices = members.filter((sheet) => sheet.kind === "device");
  const plates = members.filter((sheet) => sheet.kind === "plate");
  const alone = devices.findLast(isAlone);
  // The gangs of a plate go before those that its devices name.
  const inPlates = [plates.at(-1), devices.findLast(goesIntoPlate)];
  const [plate] = plates;
  return devices.flatMap((sheet): Aside[] => {
    const asides: readonly [Aside["why"], Sheet | undefined][] = goesIntoPlate(sheet)
      ? [
          ["in-plate", plate === undefined ? alone : undefined],
          ["beyond", isBeyond(sheet, plate) ? plate : undefined],
        ]
      : inPlates.map((inPlate) => ["alone", inPlate] as const);
    const found = asides.find(
      ([, beside]) => beside !== undefined && ageOfSheets(sheet, beside, arrivals) === "older",
    );
    return found?.[1] === undefined ? [] : [{ sheet, beside: found[1], why: found[0] }];
  });
}

function isAlone({ standing }: DeviceSheet): boolean {
  return standing === "alone";
}

function isBeyond({ position = 0 }: DeviceSheet, plate: Sheet | undefined): boolean {
  return position > (plate?.gangs ?? Number.POSITIVE_INFINITY);
}

import type { Catalogue } from "../catalogue/catalogue.ts";
import { deviceWithoutPlate } from "../checks/order/device-without-plate.ts";
import { checkWhatStops } from "../checks/run.ts";
import { gatherOrders } from "../orders/gather.ts";
import { type Known, nothingKnown } from "../orders/stand.ts";
import type { Arrivals } from "../trade/letter.ts";
import type { Place } from "../trade/place.ts";
import type { Problem, Spot } from "../trade/problem.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";

/**
 * What the buyer was told of his earlier sheets: which are stopped, and which places to mend. It follows from the
 * sheets themselves.
 */
export function knownOf(
  earlier: readonly Sheet[],
  arrivals: Arrivals,
  problemsOf: (sheet: Sheet) => readonly Problem[],
  catalogue: Catalogue,
  homes: ReadonlyMap<FileId, string> = new Map(),
): Known {
  const orders = gatherOrders(earlier, { ...nothingKnown, arrivals, homes });
  const problems = [
    ...earlier.flatMap(problemsOf),
    ...orders.flatMap((order) =>
      checkWhatStops({ order, others: orders.filter((other) => other !== order) }, catalogue),
    ),
  ];
  const stopping = problems.filter(({ severity }) => severity === "stops").flatMap(({ spots }) => spots);
  return {
    arrivals,
    homes,
    stopped: new Set(stopping.map(({ file }) => file)),
    toMend: placesOf(stopping),
    perhapsAlone: new Set(problems.flatMap(standingAsked)),
  };
}

/** Devices whose plate never came. Their sender is asked whether they stand alone. */
function standingAsked({ check, wording, spots }: Problem): FileId[] {
  return check === deviceWithoutPlate.id && wording === "unordered" ? spots.map(({ file }) => file) : [];
}

function placesOf(spots: readonly Spot[]): Map<FileId, Set<Place>> {
  const places = new Map<FileId, Set<Place>>();
  for (const { file, place } of spots) {
    const those = places.get(file) ?? new Set();
    if (place !== undefined) those.add(place);
    places.set(file, those);
  }
  return places;
}

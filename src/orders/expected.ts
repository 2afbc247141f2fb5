import type { Missing, Order, Station } from "../trade/order.ts";
import { type Entry, entries } from "../trade/place.ts";
import { isFilled, type Sheet, saidAt } from "../trade/sheet.ts";
import { numberKey } from "./keys.ts";
import { goesIntoPlate } from "./standing.ts";

/** What stands at places of a sheet, as `saidAt` tells it. */
export type Says = ReadonlyMap<Entry, string>;

/** A sheet that an order waits for, and what its sisters let us know of it. Of its legends nothing is known. */
export interface Expected {
  readonly missing: Missing;
  readonly says: Says;
}

/** Whether a place of a sheet waits to be mended or confirmed. */
export type IsOpen = (sheet: Sheet, place: Entry) => boolean;

/** What all sheets of an order say alike, by what belongs together. */
export const headerBlocks: readonly (readonly Entry[])[] = [
  ["order"],
  ["project"],
  ...["contact.", "bill.", "ship."].map((block) => entries.filter((place) => place.startsWith(block))),
];

/** What the sheets of one station say alike besides. */
const ofStation = ["gangs", "finish", "lettering"] as const satisfies readonly Entry[];

/** Every place of which something may be known before its sheet comes. */
export const foreseen: readonly Entry[] = [
  ...headerBlocks.flat(),
  "mark",
  ...ofStation,
  "standing",
  "position",
];

/**
 * What is known of sheets that are still to come. The sheets of its station tell of each. What none of them says of the
 * order, the other sheets of the order tell. A place stays empty where they differ, and where it is asked about.
 */
export function expectedOf(missing: readonly Missing[], order: Order, isOpen: IsOpen): Expected[] {
  const ofOrder = headerOf(order.sheets, isOpen);
  const stations = new Map(order.stations.map((station) => [station.mark, station]));
  return [...Map.groupBy(missing, ({ station }) => station)].flatMap(([mark, some]) => {
    const station = stations.get(mark);
    const sisters = station === undefined ? [] : fittedIn(station);
    const header = headerOf(sisters, isOpen);
    const known: [Entry, string][] = [
      ...headerBlocks.flatMap((block) => header.get(block) ?? ofOrder.get(block) ?? []),
      ["mark", mark],
      ...agreedAt(ofStation, sisters, isOpen),
    ];
    return some.map((one) => ({ missing: one, says: new Map([...known, ...placeOf(one)]) }));
  });
}

function placeOf({ position }: Missing): [Entry, string][] {
  if (position === undefined) return [];
  return [
    ["standing", "in-plate"],
    ["position", String(position)],
  ];
}

/** The plate sheets of a station, and the device sheets that go into its plate. */
function fittedIn({ plates, devices }: Station): Sheet[] {
  return [...plates, ...devices.filter(goesIntoPlate)];
}

/** What sheets agree on of an order, by blocks. A block of which none says anything is absent. */
export function headerOf(
  sheets: readonly Sheet[],
  isOpen: IsOpen,
): ReadonlyMap<readonly Entry[], [Entry, string][]> {
  const isTold = (place: Entry): boolean => sheets.some((sheet) => isFilled(sheet, place));
  return new Map(
    headerBlocks
      .filter((block) => block.some(isTold))
      .map((block) => {
        // One sheet ticks "same as bill-to", another has an address: they differ.
        const both =
          block.includes("ship.same") &&
          isTold("ship.same") &&
          block.some((place) => place !== "ship.same" && isTold(place));
        return [block, both ? [] : agreedAt(block, sheets, isOpen)] as const;
      }),
  );
}

/**
 * Who orders and who pays, as far as all sheets of a buyer that say anything of it say one thing. His next order may well
 * say so too. Where it goes differs from order to order.
 */
export function usualHead(sheets: readonly Sheet[]): Says {
  const header = headerOf(sheets, () => false);
  const ofBuyer = headerBlocks.filter((block) => /^(?:contact|bill)\./.test(block[0] ?? ""));
  return new Map(
    ofBuyer.flatMap((block) => {
      const agreed = header.get(block) ?? [];
      const told = block.filter((place) => sheets.some((sheet) => isFilled(sheet, place)));
      return agreed.length === told.length ? agreed : [];
    }),
  );
}

/** Places at which all sheets that say anything say one thing, about which nothing is open. */
function agreedAt(places: readonly Entry[], sheets: readonly Sheet[], isOpen: IsOpen): [Entry, string][] {
  return places.flatMap((place): [Entry, string][] => {
    const saying = sheets.filter((sheet) => isFilled(sheet, place));
    const [first, ...more] = saying.map((sheet) => saidAt(sheet, place));
    if (first === undefined || saying.some((sheet) => isOpen(sheet, place))) return [];
    return more.every((said) => sameSaid(place, said, first)) ? [[place, first]] : [];
  });
}

/** Whether two sheets say one thing. Only capitals and blanks may differ, and the ways to write an order number. */
export function sameSaid(place: Entry, one: string, other: string): boolean {
  const key = (said: string): string =>
    place === "order" ? numberKey(said) : said.normalize("NFKC").trim().replace(/\s+/g, " ").toUpperCase();
  return key(one) === key(other);
}

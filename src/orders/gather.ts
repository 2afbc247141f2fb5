import { memory } from "../trade/memory.ts";
import type { Aside, Order, Station } from "../trade/order.ts";
import type { DeviceSheet, FileId, Sheet } from "../trade/sheet.ts";
import { byArrival } from "./age.ts";
import { leftOver, olderForwarded, perhapsAgain, unclearDates } from "./aside.ts";
import { usuallySaid } from "./differ.ts";
import { letterOf } from "./ids.ts";
import { contentKey, numberKey, plainText } from "./keys.ts";
import { isMarked, placed } from "./placed.ts";
import { type Known, nothingKnown } from "./stand.ts";
import { goesIntoPlate } from "./standing.ts";

/** Sheets → orders, by order number. The order of the sheets does not matter. */
export function gatherOrders(sheets: readonly Sheet[], known: Known = nothingKnown): Order[] {
  const arrival = byArrival(known.arrivals);
  const sorted = sheets.toSorted((one, other) => arrival(one.id, other.id));
  const letters = Map.groupBy(sorted, ({ id }) => letterOf(id));
  const all = numbersOn(sorted);
  const projects = new Set(
    sorted.flatMap(({ order, project }) => (order === undefined ? [] : plainText(project ?? ""))),
  );
  const isOfProject = ({ project = "" }: Sheet): boolean =>
    projects.has(plainText(project)) || project === "";
  const numberOf = (sheet: Sheet): string => {
    const named = numbersOn(letters.get(letterOf(sheet.id)) ?? []);
    // A sheet without a number joins an order, so that its sisters need not be called incomplete; it is stopped for
    // the missing number all the same. It joins the only order that its letter names. If the letter names none, it
    // joins the only order of its project.
    const [only, ...more] = named.length > 0 ? named : isOfProject(sheet) ? all : [];
    // A sheet stays with the order that it has joined, whatever orders come later.
    const own = numberKey(sheet.order ?? "") || known.homes?.get(sheet.id);
    return own || (more.length > 0 ? "" : (only ?? ""));
  };
  return [...Map.groupBy(sorted, numberOf).values()].map((members) => gatherOrder(members, known));
}

function numbersOn(sheets: readonly Sheet[]): string[] {
  return [...new Set(sheets.map(({ order }) => numberKey(order ?? "")))].filter((number) => number !== "");
}

function gatherOrder(sheets: readonly Sheet[], known: Known): Order {
  const unclear = asidesOf(sheets, known);
  const { kept, twice } = withoutDoubles(without(sheets, unclear));
  const project = usuallySaid(kept, (sheet) => ({ name: sheet.project ?? "" }))?.name;
  const { stations, loose, left } = gatherStations(kept, known);
  return {
    number: sheets.find((sheet) => sheet.order !== undefined)?.order ?? "",
    ...(project === undefined ? {} : { project }),
    sheets: without(kept, left),
    stations,
    loose,
    twice,
    aside: [...unclear, ...left],
  };
}

/** The sheets kept aside. Each is asked about once. */
function asidesOf(sheets: readonly Sheet[], known: Known): Aside[] {
  const dates = [...unclearDates(sheets, known), ...olderForwarded(sheets, known)];
  return [...dates, ...perhapsAgain(without(sheets, dates), known)];
}

function without(sheets: readonly Sheet[], aside: readonly Aside[]): Sheet[] {
  return sheets.filter(({ id }) => aside.every(({ sheet }) => sheet.id !== id));
}

/** What a sheet says, whatever its file or its list is called. Two rows of a list are two all the same. Sheets are gathered several times for one letter. */
const contentOf = memory((sheet: Sheet) =>
  contentKey({ ...sheet, id: "", file: "", named: "", written: "", list: sheet.list?.row }),
);

function withoutDoubles(sheets: readonly Sheet[]): { kept: Sheet[]; twice: Order["twice"] } {
  // Most sheets go to a place of their own. So not all that they say has to be compared.
  const alike = Map.groupBy(sheets, placeText);
  const first = new Map<string, Sheet>();
  const twice: { kept: Sheet; again: Sheet }[] = [];
  for (const sheet of sheets) {
    const place = placeText(sheet);
    const content = alike.get(place)?.length === 1 ? place : contentOf(sheet);
    const kept = first.get(content);
    if (kept === undefined) first.set(content, sheet);
    else twice.push({ kept, again: sheet });
  }
  return { kept: [...first.values()], twice };
}

/** Where a sheet says that it belongs, letter by letter. Sheets that say all the same say this alike. */
function placeText(sheet: Sheet): string {
  const { kind, order, mark } = sheet;
  return JSON.stringify([kind, order, mark, kind === "device" ? sheet.position : undefined]);
}

function gatherStations(
  sheets: readonly Sheet[],
  known: Known,
): Pick<Order, "stations" | "loose"> & { readonly left: readonly Aside[] } {
  const marks = sheets.flatMap(({ mark }) => mark ?? []);
  const numbers = sheets.flatMap(({ order }) => order ?? []);
  const unmarked = new Set(sheets.filter((sheet) => !isMarked(sheet)).map(({ id }) => id));
  const stations = new Map<string, Sheet[]>();
  const loose: DeviceSheet[] = [];
  for (const sheet of sheets.map((one) => placed(one, marks, numbers))) {
    if (!isMarked(sheet) && sheet.kind === "device" && goesIntoPlate(sheet)) {
      loose.push(sheet);
      continue;
    }
    // A sheet without a mark is a station of its own.
    const key = isMarked(sheet) ? plainText(sheet.mark) : sheet.id;
    const members = stations.get(key);
    if (members === undefined) stations.set(key, [sheet]);
    else members.push(sheet);
  }
  const left = [...stations.values()].flatMap((members) => leftOver(members, known));
  return {
    stations: [...stations.values()].map((members) => stationOf(without(members, left), unmarked)),
    loose,
    left,
  };
}

function stationOf(members: readonly Sheet[], unmarked: ReadonlySet<FileId>): Station {
  const mark = members.find(isMarked)?.mark ?? "";
  return {
    mark,
    plates: members.filter((sheet) => sheet.kind === "plate"),
    devices: members.filter((sheet) => sheet.kind === "device"),
    byNotes: mark === "" ? [] : members.map(({ id }) => id).filter((id) => unmarked.has(id)),
  };
}

import type { Order, Station } from "../trade/order.ts";
import type { DeviceSheet, FileId, Sheet } from "../trade/sheet.ts";
import { usuallySaid } from "./differ.ts";
import { byId, letterOf } from "./ids.ts";
import { contentKey, plainText } from "./keys.ts";
import { isMarked, placed } from "./placed.ts";
import { goesIntoPlate } from "./standing.ts";

/** Sheets, in whatever order they are given → orders, by order number. */
export function gatherOrders(sheets: readonly Sheet[]): Order[] {
  const sorted = sheets.toSorted((one, other) => byId(one.id, other.id));
  const letters = Map.groupBy(sorted, ({ id }) => letterOf(id));
  const numberOf = (sheet: Sheet): string => {
    const named = numbersOn(letters.get(letterOf(sheet.id)) ?? []);
    // A sheet without a number joins the only order that its letter names or, where the letter names none,
    // the only one there is: it is stopped for the missing number, and its sisters need not be called
    // incomplete as well.
    const [only, ...more] = named.length === 0 ? numbersOn(sorted) : named;
    return plainText(sheet.order ?? "") || (more.length > 0 ? "" : (only ?? ""));
  };
  return [...Map.groupBy(sorted, numberOf).values()].map(gatherOrder);
}

function numbersOn(sheets: readonly Sheet[]): string[] {
  return [...new Set(sheets.map(({ order }) => plainText(order ?? "")))].filter((number) => number !== "");
}

function gatherOrder(sheets: readonly Sheet[]): Order {
  const { kept, twice } = withoutDoubles(sheets);
  const project = usuallySaid(kept, (sheet) => ({ name: sheet.project ?? "" }))?.name;
  return {
    number: kept.find((sheet) => sheet.order !== undefined)?.order ?? "",
    ...(project === undefined ? {} : { project }),
    sheets: kept,
    ...gatherStations(kept),
    twice,
  };
}

function withoutDoubles(sheets: readonly Sheet[]): { kept: Sheet[]; twice: Order["twice"] } {
  const first = new Map<string, Sheet>();
  const twice: { kept: Sheet; again: Sheet }[] = [];
  for (const sheet of sheets) {
    const content = contentKey({ ...sheet, id: "", file: "", named: "" });
    const kept = first.get(content);
    if (kept === undefined) first.set(content, sheet);
    else twice.push({ kept, again: sheet });
  }
  return { kept: [...first.values()], twice };
}

function gatherStations(sheets: readonly Sheet[]): Pick<Order, "stations" | "loose"> {
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
    // What has no mark and needs no tie is a station of its own.
    const key = isMarked(sheet) ? plainText(sheet.mark) : sheet.id;
    const members = stations.get(key);
    if (members === undefined) stations.set(key, [sheet]);
    else members.push(sheet);
  }
  return { stations: [...stations.values()].map((members) => stationOf(members, unmarked)), loose };
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

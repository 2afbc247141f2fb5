import type { Order, Station } from "../trade/order.ts";
import type { DeviceSheet, FileId, Sheet } from "../trade/sheet.ts";
import { plainText } from "./keys.ts";
import { readNotedPlace } from "./notes.ts";

/**
 * Sheets → orders, by order number. A sheet without a number joins the only order there is, if there is
 * just one: it is refused for the missing number, and its sisters need not be called incomplete as well.
 */
export function gatherOrders(sheets: readonly Sheet[]): Order[] {
  const groups = Map.groupBy(sheets, (sheet) => plainText(sheet.order ?? ""));
  const nameless = groups.get("") ?? [];
  const numbers = [...groups.keys()].filter((key) => key !== "");
  const only = numbers.length === 1 ? numbers[0] : undefined;
  if (only !== undefined && nameless.length > 0) {
    // Filtered from the whole, so that the sheets keep the order in which they came.
    groups.set(only, [...sheets]);
    groups.delete("");
  }
  return [...groups.values()].map(gatherOrder);
}

/** Sheets of one order number → the order. */
export function gatherOrder(sheets: readonly Sheet[]): Order {
  const { kept, twice } = withoutDoubles(sheets);
  const project = kept.find((sheet) => sheet.project !== undefined)?.project;
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
    const content = JSON.stringify({ ...sheet, id: "", file: "" });
    const kept = first.get(content);
    if (kept === undefined) first.set(content, sheet);
    else twice.push({ kept, again: sheet });
  }
  return { kept: [...first.values()], twice };
}

function gatherStations(sheets: readonly Sheet[]): Pick<Order, "stations" | "loose"> {
  const knownMarks = sheets.flatMap((sheet) => sheet.mark ?? []);
  const byMark = new Map<string, { mark: string; sheets: Sheet[]; byNotes: FileId[] }>();
  const unmarked: Station[] = [];
  const loose: DeviceSheet[] = [];

  const join = (mark: string, sheet: Sheet): { byNotes: FileId[] } => {
    const key = plainText(mark);
    const station = byMark.get(key) ?? { mark, sheets: [], byNotes: [] };
    station.sheets.push(sheet);
    byMark.set(key, station);
    return station;
  };
  for (const sheet of sheets) {
    const noted = sheet.notes === undefined ? {} : readNotedPlace(sheet.notes, knownMarks);
    if (sheet.mark !== undefined) join(sheet.mark, sheet);
    else if (noted.mark !== undefined) join(noted.mark, { ...noted, ...sheet }).byNotes.push(sheet.id);
    else if (sheet.kind === "plate") unmarked.push({ mark: "", plates: [sheet], devices: [], byNotes: [] });
    else if (sheet.standing === "alone")
      unmarked.push({ mark: "", plates: [], devices: [sheet], byNotes: [] });
    else loose.push(sheet);
  }
  const marked = [...byMark.values()].map(({ mark, sheets: members, byNotes }) => ({
    mark,
    plates: members.filter((sheet) => sheet.kind === "plate"),
    devices: members.filter((sheet) => sheet.kind === "device"),
    byNotes,
  }));
  return { stations: [...marked, ...unmarked], loose };
}

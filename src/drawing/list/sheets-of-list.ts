import { type Catalogue, mostGangs } from "../../catalogue/catalogue.ts";
import { plainText } from "../../orders/keys.ts";
import type { Edition } from "../../reading/edition.ts";
import type { ListField, ListForm } from "../../reading/list/list-form.ts";
import type { ListedDevice, Said, StationList } from "../../reading/list/read-list.ts";
import type { Place } from "../../trade/place.ts";
import type { ListOrigin } from "../../trade/sheet.ts";
import type { SheetValues } from "../fill-sheet.ts";
import { type Filling, startFilling } from "./filling.ts";

/** A sheet that a list orders: what is typed into a blank of its edition. */
export interface ListedSheet {
  readonly file: string;
  readonly edition: Edition;
  readonly values: SheetValues;
  readonly list: Omit<ListOrigin, "file">;
}

/** A device of a list with what its station says of it. */
interface Placed {
  readonly device: ListedDevice;
  readonly mark: string;
  readonly inPlate: boolean;
  /** The gangs that its row gives, or else those that its station's first row with any gives. */
  readonly gangs: Said | undefined;
  /** The opening of the plate whose legend it brings. */
  readonly opening?: number;
}

/** A station list → the sheets that it orders: each plate, then its devices, in the order of the list. */
export function sheetsOfList(list: StationList, form: ListForm, catalogue: Catalogue): ListedSheet[] {
  const stations = stationsOf(list, catalogue);
  return stations.flatMap((station) => {
    const plate =
      form.plate !== undefined && station[0]?.inPlate === true && station[0].mark !== ""
        ? [plateSheet(station, form.plate, { list, form, catalogue })]
        : [];
    return [...plate, ...station.map((placed) => deviceSheet(placed, { list, form, catalogue }))];
  });
}

interface Making {
  readonly list: StationList;
  readonly form: ListForm;
  readonly catalogue: Catalogue;
}

function saidFor(device: ListedDevice, place: Place): Said | undefined {
  return [...device.said].find(([field]) => field.on === "device" && field.place === place)?.[1];
}

/** Devices by station. One without a mark is a station of its own. */
function stationsOf({ devices }: StationList, catalogue: Catalogue): Placed[][] {
  const markOf = (device: ListedDevice): string => saidFor(device, "mark")?.text.trim() ?? "";
  const byMark = Map.groupBy(devices, (device) => plainText(markOf(device)) || `row ${device.row}`);
  return [...byMark.values()].map((members) => {
    const gangsIn = (device: ListedDevice): Said | undefined => {
      const said = saidFor(device, "gangs");
      return said === undefined || said.text.trim() === "" ? undefined : said;
    };
    const ofStation = members.map(gangsIn).find((said) => said !== undefined);
    const inPlate =
      members.length > 1 ||
      (ofStation !== undefined && (ofStation.odd !== undefined || ofStation.text.trim() !== "1")) ||
      members.some((device) => (saidFor(device, "position")?.text.trim() ?? "") !== "");
    const taken = new Set<number>();
    return members.map((device): Placed => {
      const opening = Number(saidFor(device, "position")?.text.trim());
      const isFree =
        inPlate &&
        opening > 0 &&
        opening <= mostGangs(catalogue) &&
        !taken.has(opening) &&
        markOf(device) !== "";
      if (isFree) taken.add(opening);
      const gangs = gangsIn(device) ?? ofStation;
      return {
        device,
        mark: markOf(device),
        inPlate,
        gangs: inPlate ? gangs : undefined,
        ...(isFree ? { opening } : {}),
      };
    });
  });
}

function deviceSheet({ device, mark, inPlate, gangs, opening }: Placed, making: Making): ListedSheet {
  const { list, form, catalogue } = making;
  const filling = startFilling(form.device, catalogue);
  fillHead(filling, list);
  filling.put("standing", { text: inPlate ? "in-plate" : "alone", at: "" });
  for (const [field, said] of device.said) {
    const { place, on } = field;
    if (on === "plate" || place === "gangs") continue;
    if (on === "plain") leavePlain(filling, said, place, opening);
    else if (place.startsWith("row.plate.") && opening !== undefined && form.plate !== undefined) continue;
    else filling.put(place, said.text.trim() === "" ? (usualOf(list, field) ?? said) : said);
  }
  const own = saidFor(device, "gangs");
  if (inPlate) filling.put("gangs", gangs ?? own ?? { text: "", at: "" });
  const words = mark === "" ? `row ${device.row}` : fileWords(mark);
  const position = saidFor(device, "position")?.text.trim() ?? "";
  const behind = inPlate && /^\d{1,3}$/.test(position) ? ` position ${position}` : "";
  return { file: `${words}${behind}.pdf`, edition: form.device, ...filling.done(device.row) };
}

function plateSheet(station: readonly Placed[], plate: Edition, { list, catalogue }: Making): ListedSheet {
  const filling = startFilling(plate, catalogue);
  fillHead(filling, list);
  const [first] = station;
  const cellOf = (place: Place): Said => (first && saidFor(first.device, place)) ?? { text: "", at: "" };
  filling.put("mark", cellOf("mark"));
  filling.put("gangs", first?.gangs ?? cellOf("gangs"));
  for (const place of ["finish", "lettering"] as const) {
    const own = station.flatMap(({ device }) =>
      [...device.said]
        .filter(([field]) => field.on === "plate" && field.place === place)
        .map(([, said]) => said),
    );
    const typed = own.find(({ text }) => text.trim() !== "");
    const ofDevices = station.map(({ device }) => {
      const said = saidFor(device, place) ?? { text: "", at: "" };
      return said.text.trim() === "" ? (usualNamed(list, place) ?? said) : said;
    });
    const same = new Set(ofDevices.map(({ text }) => plainText(text))).size === 1 ? ofDevices[0] : undefined;
    filling.put(place, typed ?? same ?? own[0] ?? { text: "", at: "" });
  }
  for (const { device, opening } of station) {
    if (opening === undefined) continue;
    for (const [{ place, on }, said] of device.said) {
      const [, face, row] = place.split(".");
      if (on === "device" && place.startsWith("row.") && face === "plate")
        filling.put(`row.${opening}.${Number(row)}`, said);
      else if (on === "plain" && facesIn(said).includes("plate")) filling.tick(`plain.${opening}`, said);
    }
  }
  return {
    file: `${fileWords(first?.mark ?? "")} plate.pdf`,
    edition: plate,
    ...filling.done(first?.device.row ?? 0),
  };
}

function fillHead(filling: Filling, { head }: StationList): void {
  for (const [{ place, on }, said] of head) if (on === "every") filling.put(place, said);
}

/** Ticks the faces of a device that its row names. The legend of a plate of several gangs is on the plate's sheet. */
function leavePlain(filling: Filling, said: Said, place: Place, opening: number | undefined): void {
  for (const face of facesIn(said)) {
    if (face === "plate" && opening !== undefined) continue;
    if (said.odd === undefined && filling.tick(`plain.${face}` as Place, said)) continue;
    filling.refuse(place, said, "numbers of buttons, such as 2, 5, or plate");
    return;
  }
}

/** "2, 5 and plate". */
function facesIn({ text }: Said): string[] {
  return text
    .toLowerCase()
    .split(/[\s,;+&]+|\band\b/)
    .filter((word) => word !== "");
}

/** What the head says for every device whose row says nothing. */
function usualOf(list: StationList, { place }: ListField): Said | undefined {
  return usualNamed(list, place);
}

function usualNamed({ head }: StationList, place: Place): Said | undefined {
  const said = [...head].find(([field]) => field.on === "device" && field.place === place)?.[1];
  return said === undefined || said.text.trim() === "" ? undefined : said;
}

/** A station mark as part of a file name. */
function fileWords(mark: string): string {
  return (
    mark
      .replaceAll(/[^\p{L}\p{N} ._-]+/gu, "-")
      .replace(/^[.\s-]+/, "")
      .slice(0, 40)
      .trim() || "without a mark"
  );
}

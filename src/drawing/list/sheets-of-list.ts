import type { Catalogue } from "../../catalogue/catalogue.ts";
import { plainText } from "../../orders/keys.ts";
import type { Edition } from "../../reading/edition.ts";
import type { ListForm } from "../../reading/list/list-form.ts";
import type { Said, StationList } from "../../reading/list/read-list.ts";
import type { Place } from "../../trade/place.ts";
import type { ListOrigin } from "../../trade/sheet.ts";
import type { SheetValues } from "../fill-sheet.ts";
import { type Filling, startFilling } from "./filling.ts";
import { isEmpty, nothing, type Placed, saidIn, saidOrUsual, stationsIn } from "./listed-stations.ts";

/** A sheet that a list orders: what is typed into a blank of its edition. */
export interface ListedSheet {
  readonly file: string;
  readonly edition: Edition;
  readonly values: SheetValues;
  readonly list: Omit<ListOrigin, "file">;
}

interface Making {
  readonly list: StationList;
  readonly form: ListForm;
  readonly catalogue: Catalogue;
  /** The edition of the station's plate sheet; undefined if it has none. */
  readonly plate: Edition | undefined;
}

/** A station list → the sheets that it orders: each plate, then its devices, in the order of the list. */
export function sheetsOfList(list: StationList, form: ListForm, catalogue: Catalogue): ListedSheet[] {
  return stationsIn(list, catalogue).flatMap((station) => {
    const [first] = station;
    const plate = first?.inPlate === true && first.mark !== "" ? form.plate : undefined;
    const making = { list, form, catalogue, plate };
    return [
      ...(plate === undefined || first === undefined ? [] : [plateSheet(first, station, plate, making)]),
      ...station.map((placed) => deviceSheet(placed, station, making)),
    ];
  });
}

function deviceSheet(placed: Placed, station: readonly Placed[], making: Making): ListedSheet {
  const { device, mark, inPlate, gangs } = placed;
  const { list, form, catalogue, plate } = making;
  const opening = plate === undefined ? undefined : placed.opening;
  const filling = startFilling(form.device, catalogue);
  fillHead(filling, list);
  filling.put("standing", { text: inPlate ? "in-plate" : "alone", at: "" });
  for (const { place, on } of form.columns) {
    const said = saidIn(device.said, place, on);
    if (on === "plain") leavePlain(filling, said, place, opening);
    else if (on === "plate") {
      const counts = plate === undefined ? nothing : ownOfPlate(station, place);
      if (!isEmpty(said) && plainText(said.text) !== plainText(counts.text))
        filling.refuse(place, said, "nothing, or what the plate of this station has in its first row");
    } else if (place === "gangs") {
      if (inPlate) filling.put(place, gangs);
    } else if (opening === undefined || !place.startsWith("row.plate."))
      filling.put(place, saidOrUsual(device, place, list));
  }
  const position = saidIn(device.said, "position").text.trim();
  const words = mark === "" ? `row ${device.row}` : fileWords(mark);
  const behind = inPlate && /^\d{1,3}$/.test(position) ? ` position ${position}` : "";
  return { file: `${words}${behind}.pdf`, edition: form.device, ...filling.done(device.row) };
}

function plateSheet(
  first: Placed,
  station: readonly Placed[],
  plate: Edition,
  { list, form, catalogue }: Making,
): ListedSheet {
  const filling = startFilling(plate, catalogue);
  fillHead(filling, list);
  filling.put("mark", saidIn(first.device.said, "mark"));
  filling.put("gangs", first.gangs);
  for (const { place, on, label } of form.columns) {
    if (on !== "plate") continue;
    const own = ownOfPlate(station, place);
    const [usual = nothing, ...others] = distinct(
      station.map(({ device }) => saidOrUsual(device, place, list)),
    );
    if (!isEmpty(own) || others.length === 0) filling.put(place, isEmpty(own) ? usual : own);
    else {
      const text = [usual, ...others].map((said) => said.text.trim() || "nothing").join(" / ");
      filling.refuse(place, { text, at: own.at }, `one choice under “${label}”, since its devices differ`);
    }
  }
  for (const { device, opening } of station) {
    if (opening === undefined) continue;
    for (const [{ place, on }, said] of device.said) {
      if (place.startsWith("row.plate.")) filling.put(`row.${opening}.${Number(place.split(".")[2])}`, said);
      else if (on === "plain" && said.odd === undefined && facesIn(said).includes("plate"))
        filling.tick(`plain.${opening}`, said);
    }
  }
  return { file: `${fileWords(first.mark)} plate.pdf`, edition: plate, ...filling.done(first.device.row) };
}

/** What the rows of a station say of its plate alone. The first that says anything counts. */
function ownOfPlate(station: readonly Placed[], place: Place): Said {
  const own = station.map(({ device }) => saidIn(device.said, place, "plate"));
  return own.find((said) => !isEmpty(said)) ?? own[0] ?? nothing;
}

function distinct(all: readonly Said[]): Said[] {
  return [...new Map(all.toReversed().map((said) => [plainText(said.text), said])).values()].toReversed();
}

function fillHead(filling: Filling, { head }: StationList): void {
  for (const [{ place, on }, said] of head) if (on === "every") filling.put(place, said);
}

/** Ticks the faces of a device that its row names. The legend of a plate of several gangs is on the plate's sheet. */
function leavePlain(filling: Filling, said: Said, place: Place, opening: number | undefined): void {
  const wants = "numbers of buttons, such as 2, 5, or plate";
  if (said.odd !== undefined) {
    filling.refuse(place, said, wants);
    return;
  }
  for (const face of facesIn(said)) {
    if (face === "plate" && opening !== undefined) continue;
    if (filling.tick(`plain.${face}` as Place, said)) continue;
    filling.refuse(place, said, wants);
    return;
  }
}

/** "2, 5 and plate". Who writes "none" leaves none plain. */
function facesIn({ text }: Said): string[] {
  if (/^\s*(?:none|no|nil|n\/?a|[-–—]+)\s*$/i.test(text)) return [];
  return text
    .toLowerCase()
    .split(/[\s,;+&]+|\band\b/)
    .filter((word) => word !== "");
}

/** A station mark as part of a file name. */
function fileWords(mark: string): string {
  const words = mark.replaceAll(/[^\p{L}\p{N} ._-]+/gu, "-").replace(/^[.\s-]+/, "");
  return words.slice(0, 40).trim() || "without a mark";
}

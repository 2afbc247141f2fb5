import { gatherOrders } from "../orders/gather.ts";
import type { FileKind, ReadFile } from "../trade/attachment.ts";
import type { FaceName, Legend } from "../trade/legend.ts";
import { entries, type Place, type Print, rowOf } from "../trade/place.ts";
import type { DeviceSheet, PlateSheet, Sheet } from "../trade/sheet.ts";
import type { OrderSubject } from "./check.ts";

/** Legends by face, row by row: what an example changes on the sample. */
type Rows = Readonly<Partial<Record<FaceName, readonly string[]>>>;

const common = {
  unread: [],
  unsure: [],
  doubts: [],
  contact: { name: "Ines Calloway", email: "ines@brightwire.example", phone: "312-555-0117" },
  billTo: {
    name: "Brightwire Electric",
    street: "48 Foundry Row",
    city: "Chicago",
    state: "IL",
    postcode: "60607",
  },
  shipTo: {},
  shipSame: true,
  project: "Larkspur Library",
  order: "BW-2207",
  mark: "S-104",
  gangs: 4,
  finish: "OAT",
  lettering: "INK",
} as const;

/** A good device sheet: four buttons, position 2 of the four-gang plate S-104. No check finds anything. */
export function device(changes: Partial<DeviceSheet> = {}, rows: Rows = {}): DeviceSheet {
  const legends = [
    legend("1", "ENTRY", ""),
    legend("2", "STACKS", "EAST"),
    legend("3", "DIM", ""),
    legend("4", "ALL", "OFF"),
  ];
  return {
    kind: "device",
    id: "1/2",
    file: "S-104 pos 2.pdf",
    edition: { name: "device-26c", title: "Device sheet, edition 26c" },
    prints: prints("device", [...facePlaces(6, 2), ...facePlace("plate", 2)]),
    ...common,
    standing: "in-plate",
    position: 2,
    layouts: ["D4"],
    legends: merge(legends, rows),
    ...changes,
  };
}

/** A good device sheet that stands alone, with its own one-gang plate. No check finds anything. */
export function aloneDevice(changes: Partial<DeviceSheet> = {}, rows: Rows = {}): DeviceSheet {
  const { gangs: _gangs, position: _position, ...rest } = device();
  return {
    ...rest,
    id: "1/9",
    file: "S-110.pdf",
    standing: "alone",
    mark: "S-110",
    legends: merge([...rest.legends, legend("plate", "STAFF ROOM", "")], rows),
    ...changes,
  };
}

/** A good plate sheet: the four-gang plate S-104. No check finds anything. */
export function plate(changes: Partial<PlateSheet> = {}, rows: Rows = {}): PlateSheet {
  const legends = [
    legend("1", "FOYER", ""),
    legend("2", "READING", "ROOM"),
    legend("3", "CHILDREN", ""),
    legend("4", "WORKROOM", ""),
  ];
  return {
    kind: "plate",
    id: "1/1",
    file: "S-104 plate.pdf",
    edition: { name: "plate-26c", title: "Plate sheet, edition 26c" },
    prints: prints("plate", facePlaces(6, 2)),
    ...common,
    legends: merge(legends, rows),
    ...changes,
  };
}

/** The sample device sheet as it comes before anybody fills it in. */
export function blankDevice(changes: Partial<DeviceSheet> = {}): DeviceSheet {
  const sheet = without(device(), ...entered, "standing", "position");
  return { ...sheet, ...nothing, layouts: [], legends: emptied(sheet), ...changes };
}

/** The sample plate sheet as it comes before anybody fills it in. */
export function blankPlate(changes: Partial<PlateSheet> = {}): PlateSheet {
  const sheet = without(plate(), ...entered);
  return { ...sheet, ...nothing, legends: emptied(sheet), ...changes };
}

const entered = ["project", "order", "mark", "gangs", "finish", "lettering"] as const;
const nothing = { contact: {}, billTo: {}, shipSame: false } as const;

function emptied(sheet: Sheet): Legend[] {
  return sheet.legends.map(({ face }) => legend(face, "", ""));
}

/** A complete order: the plate S-104 and its four devices. No check finds anything. */
export function completeOrder(): Sheet[] {
  return [plate(), ...[1, 2, 3, 4].map((position) => deviceAt(position))];
}

/** The sample device in another position, as a file of its own. */
export function deviceAt(position: number, changes: Partial<DeviceSheet> = {}): DeviceSheet {
  return device({ position, id: `1/${position + 1}`, file: `S-104 pos ${position}.pdf`, ...changes });
}

export function legend(face: FaceName, ...rows: readonly string[]): Legend {
  return { face, rows, plain: false };
}

/** The order of the first sheet among all orders that these sheets make, as an order check sees it. */
export function subject(sheets: readonly Sheet[], otherSheets: readonly Sheet[] = []): OrderSubject {
  const orders = gatherOrders([...sheets, ...otherSheets]);
  const order = orders.find((one) => one.sheets.some(({ id }) => id === sheets[0]?.id));
  if (order === undefined) throw new Error("no sheet to make an order of");
  return { order, others: orders.filter((one) => one !== order) };
}

/** An attachment that turned out to be of this kind. */
export function fileAs(kind: FileKind): ReadFile {
  return { id: "1/1", file: fileNames[kind] ?? "S-104.pdf", kind };
}

const fileNames: Partial<Record<FileKind, string>> = {
  picture: "photo.jpg",
  decoration: "logo.png",
  "office-document": "stations.xlsx",
  archive: "sheets.zip",
  "archive-locked": "sheets.zip",
  "too-large": "site.mov",
  other: "voice.m4a",
};

/** The sheet without some of what it says. */
export function without<S extends Sheet>(sheet: S, ...keys: readonly (keyof S)[]): S {
  return Object.fromEntries(Object.entries(sheet).filter(([key]) => !keys.some((k) => k === key))) as S;
}

/** The sheet on a form that does not print some places. */
export function unprinted<S extends Sheet>(sheet: S, ...places: readonly Place[]): S {
  const left = Object.entries(sheet.prints).filter(([place]) => !places.some((p) => p === place));
  return { ...sheet, prints: Object.fromEntries(left) };
}

function merge(legends: readonly Legend[], rows: Rows): Legend[] {
  const changed = legends.map((old) => ({ ...old, rows: rows[old.face] ?? old.rows }));
  const added = Object.entries(rows)
    .filter(([face]) => !legends.some((old) => old.face === face))
    .map(([face, text]) => legend(face as FaceName, ...(text ?? [])));
  return [...changed, ...added];
}

/** A form that prints every place of a kind of sheet, with the labels of the table. */
function prints(kind: Sheet["kind"], faces: readonly Place[]): Partial<Record<Place, Print>> {
  const printed: readonly Place[] = [...entries.filter((place) => kind in rowOf(place)), ...faces];
  return Object.fromEntries(
    printed.map((place): [Place, Print] => {
      const [, face = "", row = ""] = place.split(".");
      const label = rowOf(place).label.replace("{face}", face).replace("{row}", row);
      return [place, { field: place, label: label.replace("Face plate", "Plate legend") }];
    }),
  );
}

function facePlaces(faces: number, rows: number): Place[] {
  return Array.from({ length: faces }, (_, i) => facePlace(`${i + 1}`, rows)).flat();
}

function facePlace(face: FaceName, rows: number): Place[] {
  const places: Place[] = Array.from({ length: rows }, (_, i): Place => `row.${face}.${i + 1}`);
  return [...places, `plain.${face}`];
}

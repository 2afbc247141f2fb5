import {
  buttonsOf,
  type Catalogue,
  type Finish,
  type Layout,
  mostGangs,
  type Room,
} from "../catalogue/catalogue.ts";
import { partKey } from "../catalogue/part-key.ts";
import { contrastRatio } from "../lettering/contrast.ts";
import { gatherOrders } from "../orders/gather.ts";
import type { FileKind, ReadFile } from "../trade/attachment.ts";
import type { FaceName, Legend } from "../trade/legend.ts";
import type { ListFault } from "../trade/list-fault.ts";
import type { Place } from "../trade/place.ts";
import type { DeviceSheet, PlateSheet, Sheet } from "../trade/sheet.ts";
import type { OrderSubject } from "./check.ts";
import { usualFinishes, usualLayout } from "./sample-choices.ts";
import { printsOfDevice, printsOfPlate } from "./sample-forms.ts";

/** Legends by face, row by row: what an example changes on the sample. */
type Rows = Readonly<Partial<Record<FaceName, readonly string[]>>>;

/** The buyer of the sample sheets. */
export const contact = {
  name: "Ines Calloway",
  email: "ines@brightwire.example",
  phone: "312-555-0117",
} as const;
export const billTo = {
  name: "Brightwire Electric",
  street: "48 Foundry Row",
  city: "Chicago",
  state: "IL",
  postcode: "60607",
} as const;

const common = {
  unread: [],
  unsure: [],
  doubts: [],
  contact,
  billTo,
  shipTo: {},
  shipSame: true,
  project: "Larkspur Library",
  order: "BW-2207",
  mark: "S-104",
  gangs: 4,
} as const;

/** What examples are made of: good sheets that order what a catalogue has, and what they can be changed to. */
export interface Sample {
  readonly catalogue: Catalogue;
  /** Several buttons of several rows, in position 2 of the four-gang plate S-104. No check finds anything. */
  readonly device: (changes?: Partial<DeviceSheet>, rows?: Rows) => DeviceSheet;
  /** A device that stands alone, with its own one-gang plate. No check finds anything. */
  readonly aloneDevice: (changes?: Partial<DeviceSheet>, rows?: Rows) => DeviceSheet;
  /** The four-gang plate S-104. No check finds anything. */
  readonly plate: (changes?: Partial<PlateSheet>, rows?: Rows) => PlateSheet;
  /** The sheets as they come before anybody fills them in. */
  readonly blankDevice: (changes?: Partial<DeviceSheet>) => DeviceSheet;
  readonly blankPlate: (changes?: Partial<PlateSheet>) => PlateSheet;
  /** The plate S-104 and its four devices: a complete order. No check finds anything. */
  readonly completeOrder: () => Sheet[];
  /** The sample device in another position, as a file of its own. */
  readonly deviceAt: (position: number, changes?: Partial<DeviceSheet>) => DeviceSheet;
  /** The layout of the sample device; the smallest other one of several buttons; the one with the narrowest faces. */
  readonly layout: Layout;
  readonly otherLayout: Layout;
  readonly narrow: Layout;
  /** Gangs of the widest plate. */
  readonly widest: number;
  /** Codes of another finish that is made for all that the sample orders, and of another lettering. */
  readonly otherFinish: string;
  readonly otherLettering: string;
  /** The code of a finish that is so. Throws `CannotShow` if there is none, as the rest does. */
  readonly finishThat: (is: (finish: Finish) => boolean) => string;
  /** The code of a layout that is so. */
  readonly layoutThat: (is: (layout: Layout) => boolean) => string;
  /** A finish of devices and a lettering whose contrast is so. */
  readonly coloursThat: (is: (ratio: number) => boolean) => Pick<DeviceSheet, "finish" | "lettering">;
  /** The part key of the sample device, and what it would be with the other layout. */
  readonly key: string;
  readonly otherKey: string;
}

/** A catalogue has nothing to show an example by. */
export class CannotShow extends Error {}

export function sampleOf(catalogue: Catalogue): Sample {
  const { finishes, lettering: letterings, layouts } = catalogue;
  const layout = usualLayout(layouts);
  const [otherLayout = layout] = layouts
    .filter((one) => one !== layout && buttonsOf(one) > 1)
    .toSorted((a, b) => buttonsOf(a) - buttonsOf(b));
  const [finish, otherFinish] = usualFinishes(catalogue, common.gangs);
  const lettering = letterings.toSorted(
    (a, b) => contrastRatio(b.colour, finish.colour) - contrastRatio(a.colour, finish.colour),
  )[0];
  const colours = { finish: finish.code, lettering: lettering?.code ?? "" };
  const forms = {
    device: printsOfDevice(catalogue),
    plate: printsOfPlate(catalogue),
  };

  const device: Sample["device"] = (changes = {}, rows = {}) => ({
    kind: "device",
    id: "1/2",
    file: "S-104 pos 2.pdf",
    edition: { name: "device-26c", title: "Device sheet, edition 26c" },
    prints: forms.device,
    ...common,
    ...colours,
    standing: "in-plate",
    position: 2,
    layouts: [layout.code],
    legends: merge(
      Array.from({ length: buttonsOf(layout) }, (_, i) =>
        spread(`${i + 1}`, buttonWords[i] ?? [`${i + 1}`], layout),
      ),
      rows,
    ),
    ...changes,
  });
  const aloneDevice: Sample["aloneDevice"] = (changes = {}, rows = {}) => {
    const { gangs: _gangs, position: _position, ...rest } = device();
    return {
      ...rest,
      id: "1/9",
      file: "S-110.pdf",
      standing: "alone",
      mark: "S-110",
      legends: merge([...rest.legends, legendOf("plate", ["STAFF ROOM"], catalogue.plate)], rows),
      ...changes,
    };
  };
  const plate: Sample["plate"] = (changes = {}, rows = {}) => ({
    kind: "plate",
    id: "1/1",
    file: "S-104 plate.pdf",
    edition: { name: "plate-26c", title: "Plate sheet, edition 26c" },
    prints: forms.plate,
    ...common,
    ...colours,
    legends: merge(
      gangWords.map((words, i) => spread(`${i + 1}`, words, catalogue.plate)),
      rows,
    ),
    ...changes,
  });
  const deviceAt: Sample["deviceAt"] = (position, changes = {}) =>
    device({ position, id: `1/${position + 1}`, file: `S-104 pos ${position}.pdf`, ...changes });
  return {
    catalogue,
    device,
    aloneDevice,
    plate,
    deviceAt,
    completeOrder: () => [plate(), ...[1, 2, 3, 4].map((position) => deviceAt(position))],
    blankDevice: (changes = {}) => {
      const sheet = without(device(), ...entered, "standing", "position");
      return { ...sheet, ...nothing, layouts: [], legends: emptied(sheet), ...changes };
    },
    blankPlate: (changes = {}) => {
      const sheet = without(plate(), ...entered);
      return { ...sheet, ...nothing, legends: emptied(sheet), ...changes };
    },
    layout,
    otherLayout,
    narrow: layouts.toSorted((a, b) => a.face.width - b.face.width)[0] ?? layout,
    widest: mostGangs(catalogue),
    get otherFinish() {
      return otherFinish?.code ?? cannotShow("finish");
    },
    get otherLettering() {
      return (letterings.find(({ code }) => code !== colours.lettering) ?? cannotShow("lettering")).code;
    },
    finishThat: (is) => (finishes.find(is) ?? cannotShow("finish")).code,
    layoutThat: (is) => (layouts.find(is) ?? cannotShow("layout")).code,
    coloursThat: (is) =>
      finishes
        .filter(({ devices }) => devices)
        .flatMap((body) => letterings.map((text) => ({ body, text })))
        .filter(({ body, text }) => is(contrastRatio(body.colour, text.colour)))
        .map(({ body, text }) => ({ finish: body.code, lettering: text.code }))[0] ?? cannotShow("colour"),
    key: partKey(layout.code, colours.finish, colours.lettering),
    otherKey: partKey(otherLayout.code, colours.finish, colours.lettering),
  };
}

/** Leaves an example out. */
export function cannotShow(what: string): never {
  throw new CannotShow(`the catalogue has no ${what} like that`);
}

/** Words of the sample, row by row. */
const buttonWords = [
  ["ENTRY"],
  ["STACKS", "EAST"],
  ["DIM"],
  ["ALL", "OFF"],
  ["AISLE"],
  ["STAIRS"],
  ["DESK"],
  ["LAMPS"],
];
const gangWords = [["FOYER"], ["READING", "ROOM"], ["CHILDREN"], ["WORKROOM"]];

const entered = ["project", "order", "mark", "gangs", "finish", "lettering"] as const;
const nothing = { contact: {}, billTo: {}, shipSame: false } as const;

function emptied(sheet: Sheet): Legend[] {
  return sheet.legends.map(({ face, rows }) => legend(face, ...rows.map(() => "")));
}

/** A legend of these words: row by row, or in one row where there is no more. */
function spread(face: FaceName, words: readonly string[], room: Room): Legend {
  return legendOf(face, words.length > room.rows ? [words.join(" ")] : words, room);
}

function legendOf(face: FaceName, words: readonly string[], { rows }: Room): Legend {
  return legend(face, ...words, ...Array.from({ length: rows - words.length }, () => ""));
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

/** Right words of a legend, by their length. */
const wordOf = [
  "",
  "",
  "TO",
  "NEW",
  "MAIN",
  "NORTH",
  "DINING",
  "READING",
  "TRAINING",
  "RECEPTION",
  "CONFERENCE",
];

/** A row that a word fills up to its end, behind another word and a blank. Throws `CannotShow` if no word does. */
export function fullRow({ characters }: Room, end: string): string {
  const word = wordOf[characters - end.length - 1] ?? "";
  return word === "" ? cannotShow("row") : `${word} ${end}`;
}

/** A part key in which two neighbours have changed places. */
export function swapped(key: string): string {
  return key.replace(/([A-Z0-9])(?!\1)([A-Z0-9])/, "$2$1");
}

/** An attachment that turned out to be of this kind. */
export function fileAs(kind: FileKind): ReadFile {
  return { id: "1/1", file: fileNames[kind] ?? "S-104.pdf", kind };
}

/** A station list with something that keeps it from being taken. */
export function listAs(...faults: readonly ListFault[]): ReadFile {
  return { ...fileAs("list"), ...(faults.length === 0 ? {} : { faults }) };
}

const fileNames: Partial<Record<FileKind, string>> = {
  picture: "photo.jpg",
  "small-picture": "logo.png",
  recording: "voice.m4a",
  decoration: "logo.png",
  list: "stations.xlsx",
  "office-document": "schedule.xlsx",
  archive: "sheets.zip",
  "archive-locked": "sheets.zip",
  "too-large": "site.mov",
  other: "plan.dwg",
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

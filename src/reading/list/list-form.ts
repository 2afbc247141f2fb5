import { entries, type Place, rowOf } from "../../trade/place.ts";
import type { Edition, EditionField } from "../edition.ts";

/** What a line of the head or a column of a list says: a place of the sheets that are made of it, or more of them. */
export interface ListField {
  readonly label: string;
  readonly place: Place;
  /**
   * The sheet that it goes on. `plate`: only where the plate has it otherwise than its devices. `plain`: the faces
   * left plain, by their numbers.
   */
  readonly on: "every" | "device" | "plate" | "plain";
}

/** What a station list asks: all that the two sheets do, each thing once. */
export interface ListForm {
  readonly device: Edition;
  readonly plate?: Edition;
  /** Once for the whole list. */
  readonly head: readonly ListField[];
  /** Once for each device. */
  readonly columns: readonly ListField[];
}

/** Places that each sheet of an order says alike. */
function isOfOrder(place: Place): boolean {
  return place === "project" || place === "order" || /^(?:contact|bill|ship)\./.test(place);
}

/** What the head says of every device whose row says nothing else. */
const usual: readonly Place[] = ["finish", "lettering"];

/** Columns in the order in which one fills them in; others stand behind the legends. */
const first: readonly Place[] = [
  "mark",
  "gangs",
  "position",
  "layout",
  "legend-place",
  "finish",
  "lettering",
];

/** The form of a list: the editions in use that Burin draws. Undefined if there is none for devices. */
export function listForm(editions: readonly Edition[]): ListForm | undefined {
  const ours = editions.filter(({ drawn, replacedBy }) => drawn && replacedBy === undefined);
  const device = ours.find(({ form }) => form === "device");
  const plate = ours.find(({ form }) => form === "plate");
  if (device === undefined) return undefined;
  const printed = new Map(device.fields.toReversed().map((field) => [field.place, field]));
  const fieldOf = (place: Place, on: ListField["on"] = "device"): ListField[] => {
    const field = printed.get(place);
    return field === undefined ? [] : [{ label: labelOf(field), place, on }];
  };
  const known = [...printed.keys()].filter((place) => place !== undefined).toReversed();
  const rows = known.filter((place) => place.startsWith("row."));
  const plain = known.filter((place) => place.startsWith("plain."));
  const plateRows = rows.filter((place) => place.startsWith("row.plate."));
  const rest = entries.filter(
    (place) => printed.has(place) && !isOfOrder(place) && !first.includes(place) && place !== "standing",
  );
  return {
    device,
    ...(plate === undefined ? {} : { plate }),
    head: [
      ...known.filter(isOfOrder).flatMap((place) => fieldOf(place, "every")),
      ...usual.flatMap((place) => fieldOf(place)),
    ],
    columns: [
      ...first.flatMap((place) => fieldOf(place)),
      ...plateRows.flatMap((place) => fieldOf(place)),
      ...rows.filter((place) => !plateRows.includes(place)).flatMap((place) => fieldOf(place)),
      ...(plain[0] === undefined ? [] : [{ label: "Leave plain", place: plain[0], on: "plain" } as const]),
      ...rest.flatMap((place) => fieldOf(place)),
      ...(plate === undefined ? [] : usual.flatMap((place) => plateField(plate, place))),
    ],
  };
}

function plateField(plate: Edition, place: Place): ListField[] {
  const field = plate.fields.find((one) => one.place === place);
  return field === undefined ? [] : [{ label: `Plate: ${field.label.toLowerCase()}`, place, on: "plate" }];
}

/** Several boxes that make one choice are called by what the choice is. */
function labelOf({ label, ticked, place }: EditionField): string {
  return ticked === undefined || place === undefined ? label : rowOf(place).label;
}

/** Labels as they are compared. */
export function labelKey(label: string): string {
  return label
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, "");
}

import { buttonsOf, type Catalogue } from "../../catalogue/catalogue.ts";
import { choicesAt } from "../../reading/choices.ts";
import { helpTitle } from "../../reading/list/list-facts.ts";
import type { ListField, ListForm } from "../../reading/list/list-form.ts";
import type { Printed } from "../../reading/list/read-list.ts";
import { type ChoicePlace, rowOf } from "../../trade/place.ts";
import { choicesOf, roomOf } from "../blank/choices.ts";
import { roomWords } from "../blank/furniture.ts";

/** What may be chosen for a field of a list; undefined if one types freely. */
export function wordsFor(
  { place, on }: ListField,
  { device, plate }: ListForm,
  catalogue: Catalogue,
): readonly string[] | undefined {
  if (on === "plain") return undefined;
  if (rowOf(place).holds === "tick") return ["yes"];
  const edition = on === "plate" && plate !== undefined ? plate : device;
  const field = edition.fields.find((one) => one.place === place);
  const words = field === undefined ? undefined : choicesOf(field, edition, catalogue);
  if (words !== undefined || !(place in choicesAt)) return words;
  return choicesAt[place as ChoicePlace].of(catalogue).map(({ name }) => name);
}

/** What one should know of a field of a list. */
export function hintOf({ place, on }: ListField, catalogue: Catalogue): string {
  if (on === "plain") return "the numbers of buttons without words, such as 2, 5; plate for the plate legend";
  if (on === "plate") return "once for a station, only where the plate has it otherwise than its devices";
  if (place === "ship.same") return "yes, or leave it empty and fill in the next lines";
  if (place === "finish" || place === "lettering")
    return "for all devices, or in its row for one; a plate is as its devices are";
  if (place === "gangs") return "how many openings the plate has; once for a station is enough";
  if (place === "position")
    return "which opening of the plate, counted from the left; empty for a device alone";
  const characters = roomOf(place, "device", catalogue);
  return rowOf(place).tip?.replace("{characters}", String(characters)) ?? "";
}

/** How to fill in a list, line by line. */
export function helpLines({ head, columns }: ListForm, { maker }: Catalogue): readonly string[] {
  const labelOf = (place: string): string =>
    [...columns, ...head].find((field) => field.place === place)?.label ?? place;
  return [
    helpTitle,
    `${maker.name} makes the order sheets of it, one for each device and one for each plate, and shows you all of them.`,
    "Nothing is cut before you have answered yes to what you are shown.",
    "1. On the sheet Order, say once who orders, who pays and where it goes.",
    "2. On the sheet Stations, fill in a row for each device. A plate needs no row of its own.",
    `3. Devices of one plate have the same “${labelOf("mark")}”, and each its own “${labelOf("position")}”.`,
    `4. “${labelOf("gangs")}” stands in one row of a plate, or in all. For a device alone leave it empty, and the position too.`,
    "5. Legends are cut exactly as typed. A button without words has its number under “Leave plain”.",
    "6. Save it as a workbook (.xlsx) and send it to us. Only what is typed into cells is read: no colours, remarks or pictures.",
  ];
}

export const exampleTitle = "An example: a plate of two gangs with two devices, and a device alone";

const exampleLegends = [
  ["ON", "HALF", "OFF", "READ", "CLEAN", "UP", "DOWN", "AISLE"],
  ["DESK", "STACKS", "OFF", "READ", "CLEAN", "UP", "DOWN", "AISLE"],
  ["UP", "DOWN", "OFF", "READ", "CLEAN", "DESK", "HALF", "AISLE"],
] as const;

/** The rows of the example under their headings. */
export function exampleRows({ columns }: ListForm, { layouts }: Catalogue): readonly (readonly string[])[] {
  const [layout] = layouts
    .filter((one) => buttonsOf(one) > 1)
    .toSorted((one, other) => buttonsOf(one) - buttonsOf(other));
  const buttons = Array.from(
    { length: Math.min(layout === undefined ? 0 : buttonsOf(layout), 8) },
    (_, i) => i,
  );
  const legends = (row: number): Record<string, string> =>
    Object.fromEntries(buttons.map((i) => [`row.${i + 1}.1`, exampleLegends[row]?.[i] ?? ""]));
  const common = { layout: layout?.name ?? "" };
  const rows: readonly Readonly<Record<string, string>>[] = [
    { ...common, mark: "S-104", gangs: "2", position: "1", "row.plate.1": "ENTRY", ...legends(0) },
    { ...common, mark: "S-104", position: "2", "row.plate.1": "STACKS", ...legends(1) },
    { ...common, mark: "S-110", ...legends(2), plain: "plate" },
  ];
  const keyOf = ({ place, on }: ListField): string => (on === "device" ? place : on);
  const shown = columns.filter((field) => rows.some((row) => keyOf(field) in row));
  return [
    shown.map(({ label }) => label),
    ...rows.map((row) => shown.map((field) => row[keyOf(field)] ?? "")),
  ];
}

/** Every text that stands in lists of ours besides what is filled in. */
export function printedTexts(form: ListForm, catalogue: Catalogue): Printed {
  const fields = [...form.head, ...form.columns];
  const words = fields.flatMap((field) => wordsFor(field, form, catalogue) ?? []);
  return {
    beside: [catalogue.maker.name, ...form.head.map((field) => hintOf(field, catalogue))],
    help: [
      exampleTitle,
      ...helpLines(form, catalogue),
      ...exampleRows(form, catalogue).flat(),
      ...fields.flatMap((field) => [field.label, hintOf(field, catalogue)]),
      ...words,
      ...Object.values(helpHeadings),
      ...roomLines(catalogue).flat(),
    ],
  };
}

export const helpHeadings = { hint: "What to know", words: "What can be chosen" } as const;

/** What there is room for on each layout. */
export function roomLines({ layouts, plate }: Catalogue): (readonly [label: string, room: string])[] {
  return [
    ...layouts.map((layout) => [layout.name, `${roomWords(layout)} characters`] as const),
    ["Plate legend", `${roomWords(plate)} characters`],
  ];
}

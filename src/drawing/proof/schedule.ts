import { type Catalogue, finishOf, layoutOf, letteringOf } from "../../catalogue/catalogue.ts";
import { facesOf } from "../../catalogue/faces.ts";
import { notCuttable } from "../../lettering/characters.ts";
import { fitOn } from "../../lettering/faces.ts";
import { hasText, type Legend } from "../../trade/legend.ts";
import type { Aside } from "../../trade/order.ts";
import type { DeviceSheet, Sheet } from "../../trade/sheet.ts";
import type { View } from "./view.ts";

/** What the list says of one part, cell by cell, each in lines of its own. */
export interface Entry {
  /** "Plate", or the position of a device. */
  readonly part: string;
  /** What is cut on each face, as typed, and what of it is not drawn. */
  readonly legends: readonly string[];
  readonly make: readonly string[];
  /** Font and height of a capital, and what it is cut with. */
  readonly letters: readonly string[];
  /** The file of the sheet; absent while none has come. */
  readonly file?: string;
}

/** What is made for a station: the plate, each device from the left, and what the drawing has no place for. */
export function scheduleOf(
  { plate, gangs, devices, undrawn }: View,
  catalogue: Catalogue,
  aside: readonly Aside[],
): Entry[] {
  const plateMake = `${gangs} ${gangs === 1 ? "gang" : "gangs"}`;
  const onPlate = ({ face }: Legend): boolean => plate?.kind === "plate" || face === "plate";
  const here = new Set<Sheet | undefined>([plate, ...devices.values()]);
  const askedAbout = aside
    .filter(({ beside }) => here.has(beside))
    .map(({ sheet, beside }) => ({ sheet, why: `it is asked about beside ${beside.file}` }));
  return [
    entryOf("Plate", plate, plateMake, onPlate, catalogue),
    ...Array.from({ length: gangs }, (_, i) => {
      const device = devices.get(i + 1);
      return entryOf(`${i + 1}`, device, makeOf(device, catalogue), isOnDevice, catalogue);
    }),
    ...[...undrawn, ...askedAbout].map(({ sheet, why }) => {
      const make = sheet.kind === "plate" ? "plate" : makeOf(sheet, catalogue);
      const entry = entryOf("", sheet, make, () => true, catalogue);
      return { ...entry, legends: [`Not drawn: ${why}.`, ...entry.legends] };
    }),
  ];
}

const isOnDevice = ({ face }: Legend): boolean => face !== "plate";

function entryOf(
  part: string,
  sheet: Sheet | undefined,
  make: string,
  isHere: (legend: Legend) => boolean,
  catalogue: Catalogue,
): Entry {
  if (sheet === undefined) return { part, legends: [], make: [make], letters: [] };
  const finish = finishOf(catalogue, sheet.finish ?? "")?.name ?? sheet.finish ?? "no finish";
  const lettering = letteringOf(catalogue, sheet.lettering ?? "")?.name ?? sheet.lettering;
  const here = sheet.legends.filter(isHere);
  return {
    part,
    legends: legendsOf(sheet, here, catalogue),
    make: [make, `${finish}, ${lettering ?? "no"} lettering`],
    letters: lettersOn(sheet, here, catalogue),
    file: sheet.file,
  };
}

/** "1 ENTRY  ·  2 STACKS / EAST", and why something of it is not drawn or not as typed. */
function legendsOf(sheet: Sheet, legends: readonly Legend[], catalogue: Catalogue): string[] {
  const faces = facesOf(sheet, catalogue);
  const typed = legends.filter((legend) => hasText(legend) || legend.plain);
  const inLine = (isDrawn: boolean): string =>
    typed
      .filter(({ face }) => (faces?.includes(face) === true) === isDrawn)
      .map((legend) => `${numberOf(legend)}${textOf(legend)}`)
      .join("  ·  ");
  const strange = typed
    .filter(({ plain }) => !plain)
    .flatMap(({ rows }) => rows.flatMap((row) => notCuttable(row, catalogue.characters)));
  const [drawn, left] = [inLine(true), inLine(false)];
  const why = faces === undefined ? "the layout or size is not known" : "there is no such face";
  return [
    ...(drawn === "" ? [] : [drawn]),
    ...(left === "" ? [] : [`Not drawn, since ${why}: ${left}`]),
    ...(strange.length === 0 ? [] : ["A crossed box stands for a character that cannot be cut."]),
    ...(typed.some((legend) => !legend.plain && fitOn(sheet, legend, catalogue)?.fits === false)
      ? ["What runs over its face is drawn in red. It cannot be cut there."]
      : []),
  ];
}

function numberOf({ face }: Legend): string {
  return face === "plate" ? "" : `${face}\u00A0`;
}

function textOf({ rows, plain }: Legend): string {
  if (plain) return "left plain";
  return rows
    .slice(0, rows.findLastIndex((row) => row.trim() !== "") + 1)
    .map((row) => (row.trim() === "" ? "(empty row)" : row))
    .join(" / ");
}

function makeOf(device: DeviceSheet | undefined, catalogue: Catalogue): string {
  if (device === undefined) return "device";
  const [code, ...more] = device.layouts;
  const layout = code === undefined || more.length > 0 ? undefined : layoutOf(catalogue, code);
  if (layout === undefined) return "layout not known";
  const isChosen = layout.legend_places !== undefined && device.legendPlace !== undefined;
  return isChosen ? `${layout.name}, legend at ${device.legendPlace}` : layout.name;
}

/** How these legends are cut; the least and the greatest height where faces differ. */
function lettersOn(sheet: Sheet, legends: readonly Legend[], catalogue: Catalogue): string[] {
  const fitted = legends
    .filter(({ plain }) => !plain)
    .flatMap((legend) => fitOn(sheet, legend, catalogue) ?? [])
    .filter(({ rows }) => rows.length > 0);
  const [first] = fitted;
  if (first === undefined) return [];
  const caps = fitted.map(({ cap }) => cap);
  const [least, most] = [Math.min(...caps), Math.max(...caps)];
  const font = catalogue.engraving.fonts.find(({ code }) => code === first.font)?.name ?? first.font;
  return [font, `${least === most ? least : `${least} to ${most}`} mm, cutter ${first.cutter} mm`];
}

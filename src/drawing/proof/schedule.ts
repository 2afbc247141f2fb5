import { type Catalogue, finishOf, layoutOf, letteringOf } from "../../catalogue/catalogue.ts";
import { fitOn } from "../../lettering/faces.ts";
import type { Legend } from "../../trade/legend.ts";
import type { DeviceSheet, Sheet } from "../../trade/sheet.ts";
import type { View } from "./view.ts";

/** One line of the list below a drawing. */
export interface Entry {
  /** "Plate", or the position of a device. */
  readonly part: string;
  readonly make: string;
  readonly colours: string;
  readonly font: string;
  /** Height of a capital, and what it is cut with. */
  readonly letters: string;
  readonly cutter: string;
  /** The file of the sheet; absent while none has come. */
  readonly file?: string;
}

const nothing = { colours: "", font: "", letters: "", cutter: "" } as const;

/** What is made for a station: the plate, each device from the left, and what the drawing has no place for. */
export function scheduleOf({ plate, gangs, devices, undrawn }: View, catalogue: Catalogue): Entry[] {
  const plateMake = `${gangs} ${gangs === 1 ? "gang" : "gangs"}`;
  const onPlate = ({ face }: Legend): boolean => plate?.kind === "plate" || face === "plate";
  const file = undrawn.map((sheet) => sheet.file).join(", ");
  return [
    entryOf("Plate", plate, plateMake, onPlate, catalogue),
    ...Array.from({ length: gangs }, (_, i) => {
      const device = devices.get(i + 1);
      return entryOf(
        `${i + 1}`,
        device,
        makeOf(device, catalogue),
        ({ face }) => face !== "plate",
        catalogue,
      );
    }),
    ...(undrawn.length > 0 ? [{ ...nothing, part: "", make: "not drawn", file }] : []),
  ];
}

function entryOf(
  part: string,
  sheet: Sheet | undefined,
  make: string,
  isHere: (legend: Legend) => boolean,
  catalogue: Catalogue,
): Entry {
  if (sheet === undefined) return { ...nothing, part, make };
  const finish = finishOf(catalogue, sheet.finish ?? "")?.name ?? sheet.finish ?? "no finish";
  const lettering = letteringOf(catalogue, sheet.lettering ?? "")?.name ?? sheet.lettering;
  return {
    part,
    make,
    ...lettersOn(sheet, sheet.legends.filter(isHere), catalogue),
    colours: `${finish}, ${lettering ?? "no"} lettering`,
    file: sheet.file,
  };
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
function lettersOn(
  sheet: Sheet,
  legends: readonly Legend[],
  catalogue: Catalogue,
): Pick<Entry, "font" | "letters" | "cutter"> {
  const fitted = legends
    .filter(({ plain }) => !plain)
    .flatMap((legend) => fitOn(sheet, legend, catalogue) ?? [])
    .filter(({ rows }) => rows.length > 0);
  const [first] = fitted;
  if (first === undefined) return nothing;
  const caps = fitted.map(({ cap }) => cap);
  const [least, most] = [Math.min(...caps), Math.max(...caps)];
  return {
    font: catalogue.engraving.fonts.find(({ code }) => code === first.font)?.name ?? first.font,
    letters: `${least === most ? least : `${least} to ${most}`} mm`,
    cutter: `${first.cutter} mm`,
  };
}

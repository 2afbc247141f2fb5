import {
  type Catalogue,
  type Finish,
  finishOf,
  type Lettering,
  layoutOf,
  letteringOf,
} from "../catalogue/catalogue.ts";
import { partKeyOf } from "../catalogue/part-key.ts";
import { cutOf } from "../checks/fitted.ts";
import { type CutPath, cutPathOn } from "../drawing/proof/legend.ts";
import { leavesOf } from "../drawing/proof/page.ts";
import { buttonsIn, placesOf } from "../drawing/proof/places.ts";
import type { Box } from "../drawing/proof/shapes.ts";
import type { View } from "../drawing/proof/view.ts";
import type { CutLegend } from "../trade/cut.ts";
import type { FaceName } from "../trade/legend.ts";
import type { DeviceSheet, Sheet } from "../trade/sheet.ts";

/** One thing that is laid under the cutter: a plate, or a device. Millimetres, from its upper left corner. */
export interface Part {
  readonly kind: "plate" | "device";
  readonly station: string;
  /** Which opening of its plate, for a device. */
  readonly position?: number;
  /** The page of the proof that shows it, counted from 1. */
  readonly page: number;
  /** The sheet that orders it. A device that stands alone orders its plate too. */
  readonly sheet: Sheet;
  /** The code and the name of the layout or of the plate. */
  readonly code: string;
  readonly name: string;
  /** Undefined, as are the colours, if the catalogue does not have what the sheet orders. */
  readonly key: string | undefined;
  readonly finish: Finish | undefined;
  readonly lettering: Lettering | undefined;
  readonly width: number;
  readonly height: number;
  /** What shows within its outline: the openings of a plate, the buttons of a device. */
  readonly within: readonly Box[];
  readonly faces: readonly Face[];
}

/** A surface of a part that can carry a legend. */
export interface Face {
  readonly name: FaceName;
  /** "gang 2", "button 3", "plate". */
  readonly says: string;
  readonly box: Box;
  /** The buyer marked it "leave plain". */
  readonly plain: boolean;
  /** As typed. */
  readonly rows: readonly string[];
  /** The same as checked and proofed, and its strokes; undefined if nothing is cut. */
  readonly cut: CutLegend | undefined;
  readonly path: CutPath | undefined;
}

/** What is made for the drawings of an order, each plate before its devices. */
export function partsOf(views: readonly View[], catalogue: Catalogue): Part[] {
  let before = 0;
  return views.flatMap((view) => {
    const page = before + 1;
    before += leavesOf(view, catalogue).length;
    const plate = view.plate === undefined ? [] : [platePart(view, view.plate, page, catalogue)];
    const devices = [...view.devices].toSorted(([one], [other]) => one - other);
    return [
      ...plate,
      ...devices.map(([position, device]) =>
        devicePart(device, { station: view.mark, position, page }, catalogue),
      ),
    ];
  });
}

function platePart({ mark, gangs }: View, sheet: Sheet, page: number, catalogue: Catalogue): Part {
  const places = placesOf(gangs, catalogue);
  const positions = Array.from({ length: gangs }, (_, i) => i + 1);
  return {
    kind: "plate",
    station: mark,
    page,
    ...ordered(sheet, catalogue),
    code: `${catalogue.plate_code}${gangs}`,
    name: gangs === 1 ? "Plate, 1 gang" : `Plate, ${gangs} gangs`,
    width: places.plate.width,
    height: places.plate.height,
    within: positions.map(places.opening),
    faces:
      sheet.kind === "plate"
        ? positions.map((n) => faceOn(sheet, `${n}`, `gang ${n}`, places.gang(n), catalogue))
        : [faceOn(sheet, "plate", "plate", places.gang(1), catalogue)],
  };
}

function devicePart(
  sheet: DeviceSheet,
  place: Pick<Part, "station" | "page"> & { readonly position: number },
  catalogue: Catalogue,
): Part {
  const layout = layoutOf(catalogue, sheet.layouts[0] ?? "");
  const { opening } = catalogue.device;
  const buttons = buttonsIn({ x: 0, y: 0, ...opening }, sheet, catalogue);
  return {
    kind: "device",
    ...place,
    ...ordered(sheet, catalogue),
    code: layout?.code ?? "",
    name: layout?.name ?? "",
    ...opening,
    within: [...buttons.values()],
    faces: [...buttons].map(([name, box]) => faceOn(sheet, name, `button ${name}`, box, catalogue)),
  };
}

function ordered(sheet: Sheet, catalogue: Catalogue): Pick<Part, "sheet" | "key" | "finish" | "lettering"> {
  return {
    sheet,
    key: partKeyOf(sheet, catalogue),
    finish: finishOf(catalogue, sheet.finish ?? ""),
    lettering: letteringOf(catalogue, sheet.lettering ?? ""),
  };
}

function faceOn(sheet: Sheet, name: FaceName, says: string, box: Box, catalogue: Catalogue): Face {
  const legend = sheet.legends.find(({ face }) => face === name);
  return {
    name,
    says,
    box,
    plain: legend?.plain ?? false,
    rows: legend?.rows ?? [],
    cut: cutOf(sheet, catalogue).find(({ face }) => face === name),
    path: cutPathOn(sheet, name, box, catalogue),
  };
}

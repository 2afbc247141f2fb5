import type { FaceName } from "../trade/legend.ts";
import type { Sheet } from "../trade/sheet.ts";
import {
  buttonsOf,
  type Catalogue,
  type Layout,
  layoutOf,
  mostGangs,
  type Room,
  roomOfButton,
} from "./catalogue.ts";

/** What fits on a face of this sheet; while the layout is not known or not made, on one of any layout. */
export function roomOn(sheet: Sheet, face: FaceName, catalogue: Catalogue): Room {
  if (sheet.kind === "plate" || face === "plate") return catalogue.plate;
  return chosenLayout(sheet, catalogue) ?? roomOfButton(Number(face), catalogue);
}

/** The faces that what is ordered really has; undefined while layout or gangs are not known or not made. */
export function facesOf(sheet: Sheet, catalogue: Catalogue): readonly FaceName[] | undefined {
  if (sheet.kind === "plate") {
    const gangs = sheet.gangs ?? 0;
    return gangs < 1 || gangs > mostGangs(catalogue) ? undefined : faceNumbers(gangs);
  }
  const layout = chosenLayout(sheet, catalogue);
  if (layout === undefined) return undefined;
  return [...faceNumbers(buttonsOf(layout)), ...(sheet.standing === "alone" ? (["plate"] as const) : [])];
}

/** The one layout that a device sheet chooses, if it is made. */
export function chosenLayout(sheet: Sheet, catalogue: Catalogue): Layout | undefined {
  if (sheet.kind === "plate") return undefined;
  const [code, ...more] = sheet.layouts;
  return code === undefined || more.length > 0 ? undefined : layoutOf(catalogue, code);
}

function faceNumbers(n: number): FaceName[] {
  return Array.from({ length: n }, (_, i): FaceName => `${i + 1}`);
}

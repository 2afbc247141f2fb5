import { type Catalogue, layoutOf } from "../catalogue/catalogue.ts";
import type { Face } from "../catalogue/engraving.ts";
import type { FaceName, Legend } from "../trade/legend.ts";
import type { Sheet } from "../trade/sheet.ts";
import { type Edge, type Fitted, fitLegend } from "./fit.ts";

/** The surface that a legend of this sheet is cut into. Undefined if the layout is not known or not made. */
export function faceOf(sheet: Sheet, name: FaceName, catalogue: Catalogue): Face | undefined {
  if (sheet.kind === "plate" || name === "plate") return catalogue.plate.face;
  const [code, ...more] = sheet.layouts;
  return code === undefined || more.length > 0 ? undefined : layoutOf(catalogue, code)?.face;
}

/** A legend of this sheet, fitted to its face. Undefined if the layout is not known or not made. */
export function fitOn(sheet: Sheet, legend: Legend, catalogue: Catalogue): Fitted | undefined {
  const face = faceOf(sheet, legend.face, catalogue);
  if (face === undefined) return undefined;
  return fitLegend(legend.rows, face, catalogue.engraving, edgeOf(sheet, legend.face, catalogue));
}

/** Where on a button the buyer wants the legend, if not in the middle. */
function edgeOf(sheet: Sheet, name: FaceName, catalogue: Catalogue): Edge | undefined {
  if (sheet.kind === "plate" || name === "plate") return undefined;
  const { legend_top: top, legend_foot: foot } = layoutOf(catalogue, sheet.layouts[0] ?? "") ?? {};
  if (sheet.legendPlace === "top" && top !== undefined) return { top };
  return sheet.legendPlace === "foot" && foot !== undefined ? { foot } : undefined;
}

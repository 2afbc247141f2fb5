import type { Catalogue } from "../../catalogue/catalogue.ts";
import { fitOn } from "../../lettering/faces.ts";
import { lettersOf } from "../../lettering/row.ts";
import { extentOf, type Stroke } from "../../lettering/stroke.ts";
import type { FaceName } from "../../trade/legend.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { type Box, lines, type Shape } from "./shapes.ts";

/** The legend of a face as the strokes that the cutter makes. Letters that would run off the face are left out. */
export function legendOn(
  sheet: Sheet,
  name: FaceName,
  { face, colour }: { readonly face: Box; readonly colour: string },
  catalogue: Catalogue,
): Shape[] {
  const legend = sheet.legends.find((one) => one.face === name);
  const fitted = legend && !legend.plain ? fitOn(sheet, legend, catalogue) : undefined;
  if (fitted === undefined) return [];
  const strokes = fitted.rows.flatMap(({ text, left, baseline }) =>
    lettersOf(text, fitted)
      .map((letter) => moved(letter, face.x + left, face.y + baseline))
      .filter((letter) => isInside(letter, face))
      .flat(),
  );
  return strokes.length === 0 ? [] : [lines(strokes, { colour, thickness: fitted.cutter })];
}

function moved(strokes: readonly Stroke[], dx: number, dy: number): Stroke[] {
  return strokes.map((line) => line.map(([x, y]) => [x + dx, y + dy] as const));
}

function isInside(letter: readonly Stroke[], { x, width }: Box): boolean {
  const extent = extentOf(letter);
  return extent !== undefined && extent.left >= x && extent.right <= x + width;
}

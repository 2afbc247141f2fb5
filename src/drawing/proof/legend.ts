import type { Catalogue } from "../../catalogue/catalogue.ts";
import { fitOn } from "../../lettering/faces.ts";
import { lettersOf } from "../../lettering/row.ts";
import { extentOf, type Stroke } from "../../lettering/stroke.ts";
import type { FaceName } from "../../trade/legend.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { type Box, lines, type Shape } from "./shapes.ts";

/** What the cutter does on a face. */
export interface CutPath {
  /** Its diameter in millimetres. */
  readonly cutter: number;
  /** The middle lines of its strokes, x to the right and y downwards. */
  readonly strokes: readonly Stroke[];
  /** How many letters would run off the face. They are left out. */
  readonly off: number;
}

/** The legend of a face as the cutter makes it, for drawings and for cut files; undefined if nothing is cut. */
export function cutPathOn(
  sheet: Sheet,
  name: FaceName,
  face: Box,
  catalogue: Catalogue,
): CutPath | undefined {
  const legend = sheet.legends.find((one) => one.face === name);
  const fitted = legend && !legend.plain ? fitOn(sheet, legend, catalogue) : undefined;
  if (fitted === undefined) return undefined;
  const letters = fitted.rows.flatMap(({ text, left, baseline }) =>
    lettersOf(text, fitted).map((letter) => moved(letter, face.x + left, face.y + baseline)),
  );
  const inked = letters.filter((letter) => letter.length > 0);
  const inside = inked.filter((letter) => isInside(letter, face));
  if (inked.length === 0) return undefined;
  return { cutter: fitted.cutter, strokes: inside.flat(), off: inked.length - inside.length };
}

/** The same as a shape of a drawing. */
export function legendOn(
  sheet: Sheet,
  name: FaceName,
  { face, colour }: { readonly face: Box; readonly colour: string },
  catalogue: Catalogue,
): Shape[] {
  const path = cutPathOn(sheet, name, face, catalogue);
  if (path === undefined || path.strokes.length === 0) return [];
  return [lines(path.strokes, { colour, thickness: path.cutter })];
}

function moved(strokes: readonly Stroke[], dx: number, dy: number): Stroke[] {
  return strokes.map((line) => line.map(([x, y]) => [x + dx, y + dy] as const));
}

function isInside(letter: readonly Stroke[], { x, width }: Box): boolean {
  const extent = extentOf(letter);
  return extent !== undefined && extent.left >= x && extent.right <= x + width;
}

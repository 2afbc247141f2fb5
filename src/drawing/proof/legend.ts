import type { Catalogue } from "../../catalogue/catalogue.ts";
import { fitOn } from "../../lettering/faces.ts";
import { lettersOf } from "../../lettering/row.ts";
import { extentOf, type Stroke } from "../../lettering/stroke.ts";
import type { FaceName } from "../../trade/legend.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { palette } from "../blank/canvas.ts";
import { outlineLooks } from "../kinds.ts";
import type { ShownFace } from "./faces.ts";
import { type Box, lines, type Shape } from "./shapes.ts";

/** What the cutter does on a face. */
export interface CutPath {
  /** Its diameter in millimetres. */
  readonly cutter: number;
  /** The middle lines of its strokes, x to the right and y downwards. */
  readonly strokes: readonly Stroke[];
  /** The letters that would run off the face, each by its strokes. They are shown and never cut. */
  readonly over: readonly (readonly Stroke[])[];
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
  if (inked.length === 0) return undefined;
  const [inside, over] = [true, false].map((is) => inked.filter((letter) => isInside(letter, face) === is));
  return { cutter: fitted.cutter, strokes: inside?.flat() ?? [], over: over ?? [] };
}

/** The same as a shape of a drawing, as far as it is cut. */
export function legendOn({ sheet, name, face, colour }: ShownFace, catalogue: Catalogue): Shape[] {
  const path = cutPathOn(sheet, name, face, catalogue);
  if (path === undefined || path.strokes.length === 0) return [];
  return [lines(path.strokes, { colour, thickness: path.cutter })];
}

/** What would run off the face, in the colour of faults and with a light rim, to lie above all that is made. */
export function runOver({ sheet, name, face }: ShownFace, catalogue: Catalogue): Shape[] {
  const { cutter = 0, over = [] } = cutPathOn(sheet, name, face, catalogue) ?? {};
  if (over.length === 0) return [];
  return [
    lines(over.flat(), { colour: palette.paper, thickness: cutter + 0.8 }),
    lines(over.flat(), { colour: outlineLooks.fail.colour, thickness: cutter }),
  ];
}

function moved(strokes: readonly Stroke[], dx: number, dy: number): Stroke[] {
  return strokes.map((line) => line.map(([x, y]) => [x + dx, y + dy] as const));
}

function isInside(letter: readonly Stroke[], { x, width }: Box): boolean {
  const extent = extentOf(letter);
  return extent !== undefined && extent.left >= x && extent.right <= x + width;
}

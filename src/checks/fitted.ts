import type { Catalogue } from "../catalogue/catalogue.ts";
import { facesOf, roomOn } from "../catalogue/faces.ts";
import { fitOn } from "../lettering/faces.ts";
import type { Fitted } from "../lettering/fit.ts";
import { charactersOf } from "../lettering/glyph.ts";
import type { CutLegend, CutRow } from "../trade/cut.ts";
import type { FaceName } from "../trade/legend.ts";
import type { Sheet } from "../trade/sheet.ts";

/** A legend as it will be cut, on a face that what is ordered really has. */
export interface FittedLegend {
  readonly face: FaceName;
  readonly fitted: Fitted;
  /** Rows with no more characters than are allowed: of the others that is all there is to say. */
  readonly rows: readonly CutRow[];
}

/** Every legend of a sheet that has something to cut. */
export function fittedLegends(sheet: Sheet, catalogue: Catalogue): FittedLegend[] {
  const faces = facesOf(sheet, catalogue) ?? [];
  return sheet.legends
    .filter(({ face, plain }) => !plain && faces.includes(face))
    .flatMap((legend) => {
      const fitted = fitOn(sheet, legend, catalogue);
      if (fitted === undefined || fitted.rows.length === 0) return [];
      const { characters } = roomOn(sheet, legend.face, catalogue);
      const rows = fitted.rows.filter(({ text }) => charactersOf(text).length <= characters);
      return [{ face: legend.face, fitted, rows }];
    });
}

/** The same for the record. */
export function cutOf(sheet: Sheet, catalogue: Catalogue): CutLegend[] {
  return fittedLegends(sheet, catalogue).map(({ face, fitted: { font, cap, cutter, fits, rows } }) => ({
    face,
    font,
    cap,
    cutter,
    fits,
    rows,
  }));
}

import { type Catalogue, mostButtons, mostGangs, roomOfButton } from "../catalogue/catalogue.ts";
import type { FaceName } from "../trade/legend.ts";
import { entries, type Place, type Print, rowOf } from "../trade/place.ts";
import type { Sheet } from "../trade/sheet.ts";

/** A form that prints every place of a kind of sheet, with the labels of the table. */
function prints(kind: Sheet["kind"], faces: readonly Place[]): Partial<Record<Place, Print>> {
  const printed: readonly Place[] = [...entries.filter((place) => kind in rowOf(place)), ...faces];
  return Object.fromEntries(
    printed.map((place): [Place, Print] => {
      const [, face = "", row = ""] = place.split(".");
      const label = rowOf(place).label.replace("{face}", face).replace("{row}", row);
      return [place, { field: place, label: label.replace("Face plate", "Plate legend") }];
    }),
  );
}

/** What a device sheet prints that has room for every layout. */
export function printsOfDevice(catalogue: Catalogue): Partial<Record<Place, Print>> {
  const buttons = Array.from({ length: mostButtons(catalogue) }, (_, i) =>
    facePlace(`${i + 1}`, roomOfButton(i + 1, catalogue).rows),
  );
  return prints("device", [...buttons.flat(), ...facePlace("plate", catalogue.plate.rows)]);
}

/** What a plate sheet prints that has room for the widest plate. */
export function printsOfPlate(catalogue: Catalogue): Partial<Record<Place, Print>> {
  const gangs = Array.from({ length: mostGangs(catalogue) }, (_, i) =>
    facePlace(`${i + 1}`, catalogue.plate.rows),
  );
  return prints("plate", gangs.flat());
}

function facePlace(face: FaceName, rows: number): Place[] {
  const places: Place[] = Array.from({ length: rows }, (_, i): Place => `row.${face}.${i + 1}`);
  return [...places, `plain.${face}`];
}

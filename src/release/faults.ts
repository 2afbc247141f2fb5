import type { Catalogue } from "../catalogue/catalogue.ts";
import type { View } from "../drawing/proof/view.ts";
import { describe, notCuttable } from "../lettering/characters.ts";
import { hasText } from "../trade/legend.ts";
import type { Order } from "../trade/order.ts";
import type { Sheet } from "../trade/sheet.ts";
import type { Face, Part } from "./part.ts";

/**
 * Why an order cannot be made as its sheets say, in words; none if it can. Checks have asked all of this before. The
 * package asks again, since what it leaves out would be left out of the work.
 */
export function faultsOf(
  order: Order,
  views: readonly View[],
  parts: readonly Part[],
  catalogue: Catalogue,
): string[] {
  return [
    ...(order.number === "" ? ["the order has no number"] : []),
    ...(order.sheets.length === 0 ? ["the order has no sheet"] : []),
    ...order.aside.map(({ sheet }) => `${sheet.file} contradicts another sheet and is kept aside`),
    ...views.flatMap(faultsOfView),
    ...parts.flatMap((part) => faultsOfPart(part, catalogue)),
    ...order.sheets.flatMap((sheet) => facesWithoutPart(sheet, parts)),
  ];
}

function faultsOfView({ mark, gangs, plate, devices, undrawn }: View): string[] {
  const station = mark === "" ? "a station without a mark" : `station ${mark}`;
  const positions = Array.from({ length: gangs }, (_, i) => i + 1);
  return [
    ...(plate === undefined ? [`the plate of ${station} is missing`] : []),
    ...positions
      .filter((position) => !devices.has(position))
      .map((position) => `device ${position} of ${station} is missing`),
    ...[...devices.values()]
      .filter(({ position }) => position === undefined && gangs > 1)
      .map(({ file }) => `${file} does not say which position of ${station} it is for`),
    ...undrawn.map(({ sheet }) => `there is no room at ${station} for ${sheet.file}`),
  ];
}

function faultsOfPart({ key, sheet, faces }: Part, catalogue: Catalogue): string[] {
  const unknown = key === undefined ? [`${sheet.file} orders what the catalogue does not have`] : [];
  return [...unknown, ...faces.flatMap((face) => faultsOfFace(face, sheet, catalogue))];
}

function faultsOfFace(
  { rows, says, plain, cut, path }: Face,
  { file }: Sheet,
  catalogue: Catalogue,
): string[] {
  const left = rows
    .map((text, i) => ({ text, row: i + 1 }))
    .filter(({ text, row }) => text.trim() !== "" && !cut?.rows.some((one) => one.row === row));
  const strange = rows.flatMap((text) => notCuttable(text, catalogue.characters));
  const where = `${says} of ${file}`;
  return [
    ...left.map(({ row }) => `row ${row} on ${where} is typed and would not be cut`),
    ...(!plain && strange.length > 0 ? [`${where} has ${strange.map(describe).join(", ")}`] : []),
    ...(cut?.fits === false || (path?.over.length ?? 0) > 0
      ? [`the legend on ${where} is wider than its face`]
      : []),
  ];
}

/** Legends of a sheet that no part has the face for. */
function facesWithoutPart(sheet: Sheet, parts: readonly Part[]): string[] {
  const faces = parts.filter((part) => part.sheet.id === sheet.id).flatMap((part) => part.faces);
  return sheet.legends
    .filter((legend) => hasText(legend) && !faces.some(({ name }) => name === legend.face))
    .map(({ face }) => `${sheet.file} has text for face ${face}, which is not made`);
}

import type { Catalogue } from "../catalogue/catalogue.ts";
import { viewsOf } from "../drawing/proof/view.ts";
import { gatherOrders } from "../orders/gather.ts";
import { plainText } from "../orders/keys.ts";
import type { Piece, Released } from "../trade/released.ts";
import type { Sheet } from "../trade/sheet.ts";
import type { EngravedRow, RowFault } from "./engraved-list.ts";
import { partsOf } from "./part.ts";

/** A released piece, and where the schedule has its faces. */
interface Made {
  readonly piece: Piece;
  readonly sheet: Sheet;
  readonly faces: readonly string[];
}

/** Pieces that rows say are engraved, with the day where a row says one; and the rows that cannot be so. */
export interface EngravedPieces {
  readonly engraved: ReadonlyMap<Piece, string | undefined>;
  /** How many rows name what was engraved already. */
  readonly already: number;
  readonly faults: readonly RowFault[];
}

/** The pieces of one release that rows of a list name. `sheets` are those that were released. */
export function engravedPieces(
  rows: readonly EngravedRow[],
  released: Released,
  sheets: readonly Sheet[],
  { catalogue, today }: { readonly catalogue: Catalogue; readonly today: string },
): EngravedPieces {
  const made = madeOf(released, sheets, catalogue);
  const faults: RowFault[] = [];
  const named = new Map<Made, { readonly line: number; readonly faces: Set<string>; on?: string }>();
  let already = 0;
  for (const row of rows) {
    const found = foundBy(row, made);
    const says = typeof found === "string" ? found : faultOfDay(row, found, released, today);
    if (says !== undefined) faults.push({ line: row.line, says });
    if (says !== undefined || typeof found === "string") continue;
    const open = found.filter(({ piece }) => !piece.engraved);
    if (open.length === 0) already++;
    for (const one of open) {
      const { line, faces, ...day } = named.get(one) ?? { line: row.line, faces: new Set<string>() };
      const own = row.face === undefined ? one.faces : [faceAt(row.position, row.face)];
      const on = row.on === undefined ? day : { on: row.on };
      named.set(one, { line, faces: new Set([...faces, ...own]), ...on });
    }
  }
  for (const [{ faces, sheet }, { line, faces: listed }] of named) {
    const lacks = faces.filter((face) => !listed.has(face));
    if (lacks.length > 0)
      faults.push({
        line,
        says: `${sheet.mark ?? sheet.file} has ${lacks.join(", ")} too, and the list does not: a piece is engraved when all its rows are`,
      });
  }
  return {
    engraved: new Map([...named].map(([{ piece }, { on }]) => [piece, on])),
    already,
    faults: faults.toSorted((one, other) => one.line - other.line),
  };
}

function madeOf({ pieces }: Released, sheets: readonly Sheet[], catalogue: Catalogue): Made[] {
  const parts = gatherOrders(sheets).flatMap((order) => partsOf(viewsOf(order, catalogue), catalogue));
  return pieces.flatMap((piece) => {
    const sheet = sheets.find(({ id }) => id === piece.sheet);
    if (sheet === undefined) return [];
    const faces = parts
      .filter((part) => part.sheet.id === piece.sheet)
      .flatMap(({ position, faces: own }) => own.map(({ says }) => faceAt(position ?? "plate", says)));
    return [{ piece, sheet, faces }];
  });
}

/** "position 2 button 3", "plate gang 2". */
function faceAt(position: number | "plate" | undefined, face: string): string {
  return position === undefined || position === "plate" ? `plate ${face}` : `position ${position} ${face}`;
}

/** The pieces that a row names, or why it names none. */
function foundBy(
  { order, station, position, face }: EngravedRow,
  made: readonly Made[],
): readonly Made[] | string {
  if (station === "" && face === undefined) return "no station is named";
  const there = made.filter(({ sheet }) => plainText(sheet.mark ?? "") === plainText(station));
  if (there.length === 0) return `station ${station} was not released of order ${order}`;
  const found = there.filter(({ sheet, faces }) => {
    if (face !== undefined) return faces.includes(faceAt(position, face));
    if (position === undefined || position === "plate")
      return position === undefined || sheet.kind === "plate";
    return sheet.kind === "device" && faces.some((one) => one.startsWith(`position ${position} `));
  });
  const place = position === undefined || position === "plate" ? (position ?? "") : `position ${position}`;
  const where = [station, place, face].filter(Boolean).join(" ");
  if (found.length === 0) return `${where} was not released of order ${order}`;
  if (position !== undefined && found.length > 1)
    return `several pieces of order ${order} are at ${where}: record the order by its number`;
  return found;
}

/** Why pieces cannot have been engraved on the day that a row says, or why it has to say one. */
function faultOfDay(
  { on, station }: EngravedRow,
  found: readonly Made[],
  { pieces, before, on: since }: Released,
  today: string,
): string | undefined {
  if (on !== undefined && on > today) return `${on} is still to come`;
  // What an earlier release had too may have been engraved by it.
  const fresh = found.filter(({ piece }) => !before?.pieces.some(({ key }) => key === piece.key));
  if (on !== undefined)
    return fresh.length > 0 && on < since ? `${on} is before the order was released, on ${since}` : undefined;
  // A list that grows still has the row of what was engraved there and is void.
  const isVoid = ({ key, engraved }: Piece): boolean => engraved && !pieces.some((one) => one.key === key);
  const isTwofold = fresh.some(
    ({ piece: { mark, engraved } }) =>
      !engraved && before?.pieces.some((one) => one.mark === mark && isVoid(one)),
  );
  return isTwofold
    ? `${station} was engraved before it was released anew, on ${since}: the column when has to say which day this was`
    : undefined;
}

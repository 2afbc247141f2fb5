import { createHash } from "node:crypto";
import { projectKey } from "../lettering/glossary.ts";
import type { Managing } from "../trade/manager.ts";
import type { Sheet } from "../trade/sheet.ts";
import { contentKey, plainText } from "./keys.ts";
import { pieceKey } from "./piece.ts";

/** An order as far as it says who manages it. */
export interface Manageable {
  readonly buyer: string;
  readonly project?: string | undefined;
  readonly sheets: readonly Sheet[];
}

/** Who manages an order: the first of some that it fits. An order has one manager at most. */
export function managerOf(order: Manageable, all: readonly Managing[]): Managing | undefined {
  return all.find((one) => fits(order, one));
}

/** Who manages an order of some sheets. */
export function managerOfSheets(
  buyer: string,
  sheets: readonly Sheet[],
  all: readonly Managing[],
): Managing | undefined {
  const project = sheets.find((sheet) => sheet.project !== undefined)?.project;
  return managerOf({ buyer, project, sheets }, all);
}

function fits({ buyer, project, sheets }: Manageable, { stationsAbove, ...named }: Managing): boolean {
  if (named.project !== undefined && projectKey(named.project) !== projectKey(project ?? "")) return false;
  if (named.buyer !== undefined && !isOf(buyer, named.buyer)) return false;
  return stationsAbove === undefined || stationsIn(sheets) > stationsAbove;
}

/** Whether an address is this one, or of this domain. */
export function isOf(address: string, named: string): boolean {
  return address === named || address.split("@").at(-1) === named;
}

/** The stations of some sheets. A sheet without a mark is a station of its own. */
function stationsIn(sheets: readonly Sheet[]): number {
  const marks = new Set(sheets.flatMap(({ mark = "" }) => (plainText(mark) === "" ? [] : plainText(mark))));
  return marks.size + sheets.filter(({ mark = "" }) => plainText(mark) === "").length;
}

/** All pieces of an order as one short text, so that another order of pieces is known to be another. */
export function piecesKey(sheets: readonly Sheet[]): string {
  const pieces = contentKey([...new Set(sheets.map(pieceKey))].toSorted());
  return createHash("sha256").update(pieces).digest("hex").slice(0, 24);
}

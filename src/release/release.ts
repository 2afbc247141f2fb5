import { extname } from "node:path";
import { oneLine } from "../answer/one-line.ts";
import type { Catalogue } from "../catalogue/catalogue.ts";
import { viewsOf } from "../drawing/proof/view.ts";
import { proofPdf } from "../drawing/proof.ts";
import { goesIntoPlate } from "../orders/standing.ts";
import type { Confirmation } from "../trade/confirmation.ts";
import type { Order } from "../trade/order.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";
import { confirmationsJson, confirmationsText } from "./confirmations.ts";
import { tableCsv } from "./csv.ts";
import { cutDxf } from "./cut-dxf.ts";
import { cutSvg } from "./cut-svg.ts";
import { faultsOf } from "./faults.ts";
import { manifestOf } from "./manifest.ts";
import { safeName, safeNames } from "./names.ts";
import { type Part, partsOf } from "./part.ts";
import { cuttingList, type NamedPart, scheduleJson, scheduleTable } from "./schedule.ts";
import { voidsText } from "./voids.ts";
import { workbookOf } from "./xlsx.ts";

/** An order that has passed, and who lets it be cut. */
export interface Release {
  /** As gathered from its sheets (`gatherOrders`). */
  readonly order: Order;
  /** The one that the order was checked by. */
  readonly catalogue: Catalogue;
  /** Counted from 1: how often the order has changed. */
  readonly revision: number;
  readonly confirmations: readonly Confirmation[];
  /** The bytes of every sheet of the order as they came, duplicates among them, by its id. */
  readonly originals: ReadonlyMap<FileId, Uint8Array>;
  readonly by: string;
  readonly at: Date;
  /** The day of it where the desk stands; the day in UTC, if absent. */
  readonly on?: string;
  /** What an earlier release of the order handed over and this one does not, and what is new in this one. */
  readonly voids?: Voids;
}

/** What a release makes void of an earlier one, and what it changes. */
export interface Voids {
  /** The revision that was released before, and the day. */
  readonly revision: number;
  readonly on: string;
  /** Sheets whose pieces are void, and whether those are engraved already. */
  readonly pieces: readonly { readonly sheet: Sheet; readonly engraved: boolean }[];
  readonly anew: readonly Sheet[];
}

/** One file of a package. */
export interface PackageFile {
  /** Within the package, with slashes; every part of it is a name that every file system takes. */
  readonly path: string;
  readonly bytes: Uint8Array;
  /** What it is, in words. */
  readonly is: string;
}

/** A package, or why the order cannot be made as its sheets say. */
export type Packed =
  | {
      readonly ok: true;
      /** Of its folder: the order's number and the revision. */
      readonly name: string;
      /** The manifest is the last. */
      readonly files: readonly PackageFile[];
    }
  | { readonly ok: false; readonly why: readonly string[] };

/**
 * What the engraving room gets of an order: schedule, cutting list, proof, cut paths, the sheets as they came, what was
 * confirmed, and a manifest of all that. What is cut is what the proof shows, by the same strokes. Lengths are
 * millimetres. Whether the order has passed is the caller's to know; what cannot be cut whole is refused here. The same
 * release always makes the same bytes. Throws when the bytes of a sheet are missing.
 */
export async function packageOf(release: Release): Promise<Packed> {
  const { order, catalogue, revision, confirmations } = release;
  const views = viewsOf(order, catalogue);
  const made = partsOf(views, catalogue);
  const why = faultsOf(order, views, made, catalogue);
  if (why.length > 0) return { ok: false, why };

  const names = safeNames(made.map(cutName));
  const parts = made.map((part, i): NamedPart => ({ ...part, file: names[i] ?? "" }));
  const schedule = scheduleTable(order, parts, catalogue);
  const list = cuttingList(parts);
  const files: PackageFile[] = [
    text("schedule.csv", "what is cut, a row for each face (UTF-8, RFC 4180)", tableCsv(schedule)),
    file(
      "schedule.xlsx",
      "the same, and the cutting list, as a workbook",
      await workbookOf([schedule, list]),
    ),
    json("schedule.json", "the same for programs", scheduleJson(order, revision, parts, list)),
    text("cutting-list.csv", "parts to take from stock, and how many", tableCsv(list)),
    file(
      "proof.pdf",
      "every station at true scale, on pages of its own",
      await proofPdf(order, catalogue, {
        revision,
        released: { on: release.on ?? release.at.toISOString().slice(0, 10), by: release.by },
      }),
    ),
    ...parts.flatMap((part) => [
      text(
        `cut/${part.file}.svg`,
        `cut paths of ${told(part)}`,
        cutSvg(part, oneLine(`${order.number}, ${told(part)}`, 200)),
      ),
      text(`cut/${part.file}.dxf`, `the same in DXF, millimetres`, cutDxf(part)),
    ]),
    ...originalsOf(release),
    json("confirmations.json", "what was confirmed, by whom and when", confirmationsJson(confirmations)),
    text("confirmations.txt", "the same to read", confirmationsText(confirmations)),
  ];
  const { voids } = release;
  if (voids !== undefined)
    files.push(text("changes.txt", "what is void of the release before, and what is new", voidsText(voids)));
  return {
    ok: true,
    name: `${safeName(order.number)} revision ${revision}`,
    files: [...files, json("manifest.json", "this list", manifestOf(release, files))],
  };
}

/** The sheets of an order, those that came twice among them: their bytes belong to its package. */
export function sheetsWithOriginals({ sheets, twice }: Order): Sheet[] {
  return [...sheets, ...twice.map(({ again }) => again)];
}

function originalsOf({ order, originals }: Release): PackageFile[] {
  const sheets = sheetsWithOriginals(order);
  const names = safeNames(sheets.map(({ file: name }) => name.slice(0, name.length - extname(name).length)));
  return sheets.map(({ id, file: name }, i) => {
    const bytes = originals.get(id);
    if (bytes === undefined) throw new Error(`the bytes of ${name} (${id}) are missing`);
    return file(`originals/${names[i] ?? ""}.pdf`, `${name} as it came`, bytes);
  });
}

/** "S-104 plate", "S-104 position 2". */
function cutName({ station, kind, position, sheet }: Part): string {
  const alone = sheet.kind === "device" && !goesIntoPlate(sheet);
  const what = kind === "plate" ? "plate" : alone ? "device" : `position ${position}`;
  // What a long mark may lose is its end, not what stands behind it.
  return `${[...station].slice(0, 40).join("") || "no mark"} ${what}`;
}

function told({ name, station, position }: Part): string {
  const where = [station || "no mark", ...(position === undefined ? [] : [`position ${position}`])];
  return `${name}, ${where.join(" ")}`;
}

function file(path: string, is: string, bytes: Uint8Array): PackageFile {
  return { path, is, bytes };
}

function text(path: string, is: string, words: string): PackageFile {
  return file(path, is, new TextEncoder().encode(words));
}

function json(path: string, is: string, value: object): PackageFile {
  return text(path, is, `${JSON.stringify(value, null, 2)}\n`);
}

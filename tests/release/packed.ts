import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Catalogue } from "../../src/catalogue/catalogue.ts";
import { legend } from "../../src/checks/sample.ts";
import { type PackageFile, packageOf, type Release, sheetsWithOriginals } from "../../src/release/release.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { orderOf } from "../drawing/proof-orders.ts";
import { catalogue as usual } from "../make/config.ts";
import { aloneDevice, completeOrder } from "../make/sample.ts";

/** Legends that a spreadsheet would reckon, or show otherwise, and their numbers of rows. */
export const trapLegends = ["=1+1", "@SUM", "+ON", "-OFF", "00123"] as const;

/** The trade's catalogue, whose cutter has an @ besides. */
export const catalogue: Catalogue = { ...usual, characters: `${usual.characters}@` };

/** A device standing alone, with six buttons and these legends on them. */
export function trapDevice(): Sheet {
  return aloneDevice({
    layouts: ["D6"],
    legends: [
      ...trapLegends.map((text, i) => legend(`${i + 1}`, text, "")),
      legend("6", "MAR 3", "TRUE"),
      legend("plate", "'QUOTED'", 'A,B "C"'),
    ],
  });
}

/** The plate S-104 with its four devices, and the device with the traps. */
export const sheets: readonly Sheet[] = [...completeOrder(), trapDevice()];

/** What a sheet's file holds in these tests. */
export function bytesOf({ id }: Sheet): Uint8Array {
  return new TextEncoder().encode(`%PDF of ${id}`);
}

export function releaseOf(of: readonly Sheet[], changes: Partial<Release> = {}): Release {
  const order = orderOf(...of);
  return {
    order,
    catalogue,
    revision: 3,
    confirmations: [],
    originals: new Map(sheetsWithOriginals(order).map((sheet) => [sheet.id, bytesOf(sheet)])),
    by: "Ada Vale",
    at: new Date("2026-11-09T15:00:00Z"),
    ...changes,
  };
}

/** The files of a package, by their paths. Throws if there is none. */
export async function filesOf(release: Release): Promise<ReadonlyMap<string, PackageFile>> {
  const packed = await packageOf(release);
  if (!packed.ok) throw new Error(packed.why.join("\n"));
  return new Map(packed.files.map((file) => [file.path, file]));
}

export function bytesIn(files: ReadonlyMap<string, PackageFile>, path: string): Uint8Array {
  const file = files.get(path);
  if (file === undefined) throw new Error(`the package has no ${path}, but ${[...files.keys()].join(", ")}`);
  return file.bytes;
}

export function textIn(files: ReadonlyMap<string, PackageFile>, path: string): string {
  return new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytesIn(files, path));
}

/** What a Python program of Debian's prints as JSON, given files by their names in the folder that it runs in. */
export function python(program: string, given: Readonly<Record<string, Uint8Array | string>>): unknown {
  const folder = mkdtempSync(join(tmpdir(), "burin-release-"));
  for (const [name, bytes] of Object.entries(given)) writeFileSync(join(folder, name), bytes);
  const ended = spawnSync("/usr/bin/python3", ["-c", program], { cwd: folder, encoding: "utf8" });
  if (ended.status !== 0) throw new Error(ended.stderr);
  return JSON.parse(ended.stdout) as unknown;
}

/** How LibreOffice writes CSV here: UTF-8, every text in quotation marks and no number, formulas as such, all sheets. */
const shown = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,true,false,true,false,false,-1";

/**
 * The cells of a file as LibreOffice has them, sheet by sheet: a text is a JSON string, a number or a truth a bare word.
 * `reads` says how it is to read CSV.
 */
export function libreOffice(name: string, bytes: Uint8Array, reads?: string): Map<string, string[][]> {
  const folder = mkdtempSync(join(tmpdir(), "burin-office-"));
  writeFileSync(join(folder, name), bytes);
  const profile = `-env:UserInstallation=file://${folder}/profile`;
  const filter = reads === undefined ? [] : [`--infilter=${reads}`];
  const ended = spawnSync(
    "soffice",
    [profile, "--headless", ...filter, "--convert-to", shown, "--outdir", "made", name],
    { cwd: folder, encoding: "utf8" },
  );
  const made = readdirSync(join(folder, "made"));
  if (ended.status !== 0 || made.length === 0) throw new Error(`${ended.stdout}${ended.stderr}`);
  return new Map(
    made.map((file) => [
      file.replace(/^.*?-|\.csv$/g, ""),
      records(readFileSync(join(folder, "made", file), "utf8")),
    ]),
  );
}

/** RFC 4180 with LibreOffice's quotation marks left on, as they tell text from numbers. */
function records(csv: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  for (const [, cell = "", end] of csv.matchAll(/("(?:[^"]|"")*"|[^,\n]*)(,|\n|$)/g)) {
    row.push(cell.startsWith('"') ? JSON.stringify(cell.slice(1, -1).replaceAll('""', '"')) : cell);
    if (end === ",") continue;
    if (row.length > 1 || cell !== "" || end === "\n") rows.push(row);
    row = [];
  }
  return rows;
}

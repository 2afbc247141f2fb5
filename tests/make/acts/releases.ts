import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect } from "vitest";
import { releaseOrder, releasesDue } from "../../../src/intake/release.ts";
import { takeDue } from "../../../src/intake/take.ts";
import type { PackageFile } from "../../../src/release/release.ts";
import { PackageThere, writePackage } from "../../../src/store/package-folder.ts";
import { changedSince, type Ledger, type Number, numbers, openIn, pieceOf } from "./ledger.ts";
import { note, recordOf, type Story } from "./world.ts";

/** "itself" is the next day, without anybody; "torn" is by a person, and the disk fails on the way. */
export type ReleaseStep =
  | { readonly kind: "release"; readonly order: Number; readonly how: "person" | "itself" | "torn" }
  | { readonly kind: "cut"; readonly order: Number; readonly mark?: "S-1" | "K-40" | "T-9" | "L-60" };

export const counts = { released: 0, anew: 0, refused: 0, torn: 0, cut: 0 };

class Torn extends Error {}

function* tornAfter(files: readonly PackageFile[], whole: number): Generator<PackageFile> {
  yield* files.slice(0, whole);
  throw new Torn("the disk failed");
}

export async function release(
  story: Story,
  { order, how }: Extract<ReleaseStep, { kind: "release" }>,
): Promise<void> {
  if (how !== "itself") return releaseOne(story, order, how);
  const { desk, ledger } = story;
  ledger.minute += 25 * 60;
  const due = await releasesDue(desk);
  for (const { number } of due) {
    // What is released anew is released by a person.
    expect(ledger.released[number as Number]).toBeUndefined();
    await releaseOne(story, number as Number, how);
  }
}

async function releaseOne(
  { desk, ledger, packages }: Story,
  order: Number,
  how: "person" | "itself" | "torn",
): Promise<void> {
  const had = readdirSync(packages);
  let isPut = false;
  const put = (name: string, files: readonly PackageFile[]): Promise<string> => {
    isPut = true;
    return writePackage(packages, name, how === "torn" ? tornAfter(files, 3) : files);
  };
  const by = how === "itself" ? "Burin" : "Rosa Imhoff";
  const open = openIn(ledger, order);
  try {
    const released = await releaseOrder(desk, order, by, put);
    expect(released.ok).toBe(isPut);
    if (released.ok) expect(existsSync(join(released.path, "manifest.json"))).toBe(true);
  } catch (cause) {
    if (cause instanceof PackageThere) expect(readdirSync(packages)).toEqual(had);
    else if (!(cause instanceof Torn)) throw cause;
    if (cause instanceof Torn) counts.torn++;
  }
  while (await takeDue(desk));
  if (!isPut) {
    counts.refused++;
    expect(readdirSync(packages)).toEqual(had);
    return;
  }
  expect(open).toEqual([]);
  expect(ledger.orders[order].size).toBeGreaterThan(0);
  const before = ledger.released[order];
  if (before !== undefined && changedSince(ledger, order) === "") return;
  counts[before === undefined ? "released" : "anew"]++;
  const engraved = new Set(before?.flatMap((one) => (one.engraved ? one.is : [])));
  ledger.released[order] = [...ledger.orders[order].values()].map((sheet) => {
    const is = pieceOf(sheet);
    return { file: sheet.file, is, engraved: engraved.has(is) };
  });
}

export async function cut(
  story: Story,
  { order, mark }: Extract<ReleaseStep, { kind: "cut" }>,
): Promise<void> {
  const { ledger } = story;
  const there = (await recordOf(story.desk, order)) !== undefined;
  const released = ledger.released[order];
  const keys = released?.map(({ is }) => is).filter((is) => mark === undefined || is.startsWith(`${mark} `));
  const can = there && released !== undefined && (mark === undefined || (keys?.length ?? 0) > 0);
  const done = await note(story, order, { kind: "cut", stations: mark === undefined ? [] : [mark] });
  expect(done).toBe(can);
  if (!can) return;
  counts.cut++;
  for (const piece of released) if (keys?.includes(piece.is)) piece.engraved = true;
}

/** The record has the ledger's pieces, and each package on disk is whole. */
export async function releasesHold({ desk, ledger, packages }: Story): Promise<void> {
  for (const number of numbers) {
    const { released } = (await recordOf(desk, number)) ?? {};
    const sheets = await desk.store.orders.sheets(released?.pieces.map(({ sheet }) => sheet) ?? []);
    const files = new Map(sheets.map(({ id, file }) => [id, file]));
    const has = released?.pieces.map(({ sheet, engraved }) => `${files.get(sheet)} ${engraved}`);
    const should = ledger.released[number]?.map(({ file, engraved }) => `${file} ${engraved}`);
    expect(has?.toSorted()).toEqual(should?.toSorted());
    const folder = join(packages, `${number} revision ${released?.revision}`);
    if (released !== undefined && existsSync(folder)) agrees(folder, number, ledger);
  }
  for (const name of readdirSync(packages)) isWhole(join(packages, name));
}

/** All that the manifest lists is there, as it says. */
function isWhole(folder: string): void {
  const { files } = JSON.parse(readFileSync(join(folder, "manifest.json"), "utf8")) as {
    readonly files: readonly { readonly path: string; readonly sha256: string }[];
  };
  for (const { path, sha256 } of files)
    expect(
      createHash("sha256")
        .update(readFileSync(join(folder, path)))
        .digest("hex"),
    ).toBe(sha256);
  const there = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
  expect(there).toHaveLength(files.length + 1);
}

/** Each released piece has its cut path, by its place, with what was typed; nothing else has one. */
function agrees(folder: string, number: Number, ledger: Ledger): void {
  const names = readdirSync(join(folder, "cut")).filter((name) => name.endsWith(".svg"));
  const should = (ledger.released[number] ?? []).map(({ is }) => {
    const [mark = "", what = ""] = is.split(" ");
    return `${mark} ${what === "alone" ? "device" : what === "plate" ? "plate" : `position ${what}`}.svg`;
  });
  // A device alone has a plate of its own, and a plate that is plain is not cut.
  const devices = (some: readonly string[]) => some.filter((name) => !name.endsWith("plate.svg")).toSorted();
  expect(devices(names)).toEqual(devices(should));
  const schedule = readFileSync(join(folder, "schedule.csv"), "utf8");
  for (const { is } of ledger.released[number] ?? []) {
    const [mark = "", what = "", ...legend] = is.split(" ");
    expect(schedule).toContain(mark);
    if (what !== "plate") expect(schedule).toContain(legend.join(" "));
  }
}

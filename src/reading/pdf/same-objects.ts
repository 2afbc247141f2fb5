import { type PDFDocument, PDFRawStream, PDFRef } from "pdf-lib";
import { assignmentsIn } from "./assignments.ts";
import { objectsPackedAt, type Place, tablesOf } from "./object-tables.ts";

/** Files beyond this are not looked at. */
const mostBytes = 4_000_000;

/**
 * Whether every reader finds the same objects in a file. Our own walk takes the last object of each number that stands
 * in the file. Others go by the tables. So every object must be named by a table, and the last of a number by the
 * newest table that names it. Whatever is not as plain as common programs write it says no.
 */
export function hasSameObjects(bytes: Uint8Array, walked: PDFDocument): boolean {
  if (bytes.length > mostBytes) return false;
  try {
    return isNamedThroughout(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength), walked);
  } catch {
    return false;
  }
}

function isNamedThroughout(file: Buffer, walked: PDFDocument): boolean {
  if (file.subarray(0, 5).toString("latin1") !== "%PDF-") return false;
  const tables = tablesOf(file);
  const root = String(walked.context.trailerInfo.Root);
  if (tables.some((table) => table.root !== undefined && `${table.root} R` !== root)) return false;
  // The places of all objects that are not packed.
  const standing = new Map<number, number>();
  const packs = new Set<number>();
  const newest = new Map<number, Place | "free">();
  for (const { places, self } of tables) {
    for (const [number, place] of places) {
      if (!newest.has(number)) newest.set(number, place);
      if (place === "free") continue;
      if ("within" in place) packs.add(place.within);
      else if (numberAt(file, place.at) !== number || !stand(standing, place.at, number)) return false;
    }
    if (self !== undefined && !stand(standing, self, numberAt(file, self))) return false;
  }
  if (standing.size !== wordsObj(file)) return false;
  // Where the last object of each number is, as our walk finds it.
  const last = new Map<number, number>();
  const isAt = (number: number, at: number): void => {
    last.set(number, Math.max(at, last.get(number) ?? 0));
  };
  let count = standing.size;
  const packedIn = new Map<number, number[]>();
  for (const [at, number] of standing) {
    isAt(number, at);
    if (!packs.has(number)) continue;
    const packed = objectsPackedAt(file, at);
    packedIn.set(at, packed);
    count += packed.length;
    for (const one of packed) isAt(one, at);
    // §7.5.7: no stream is packed. Our walk would take one all the same.
    if (packed.some((one) => walked.context.lookup(PDFRef.of(one, 0)) instanceof PDFRawStream)) return false;
  }
  // A stream of objects that no table speaks of would have given the walk more.
  if (assignmentsIn(walked) !== count) return false;
  return [...last].every(([number, at]) => {
    const place = newest.get(number);
    if (place === undefined) return tables.some(({ self }) => self === at);
    if (place === "free") return false;
    if (!("within" in place)) return place.at === at;
    const pack = newest.get(place.within);
    return (
      pack !== undefined &&
      pack !== "free" &&
      "at" in pack &&
      pack.at === at &&
      packedIn.get(at)?.[place.index] === number &&
      packedIn.get(at)?.filter((one) => one === number).length === 1
    );
  });
}

/** Whether one place has one number. */
function stand(standing: Map<number, number>, at: number, number: number): boolean {
  const before = standing.get(at);
  standing.set(at, number);
  return before === undefined || before === number;
}

const head = /^(\d{1,10}) 0 obj(?![A-Za-z])/;

function numberAt(file: Buffer, at: number): number {
  return Number(head.exec(file.toString("latin1", at, at + 20))?.[1]);
}

/** How often `obj` stands in a file, without `endobj`. An object begins at each. */
function wordsObj(file: Buffer): number {
  let count = 0;
  for (let at = file.indexOf("obj"); at !== -1; at = file.indexOf("obj", at + 3))
    if (at < 3 || file[at - 1] !== 100 || file[at - 2] !== 110 || file[at - 3] !== 101) count++;
  return count;
}

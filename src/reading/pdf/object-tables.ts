import { inflateSync } from "node:zlib"; // a pure function of bytes

/** Where an object stands: at a place of the file, or packed in a stream of objects. */
export type Place = { readonly at: number } | { readonly within: number; readonly index: number };

/** One table of objects: where each is, "free" for what there is none of. */
export interface ObjectTable {
  readonly places: ReadonlyMap<number, Place | "free">;
  /** The catalog, as the trailer names it. */
  readonly root?: string;
  /** The place of the table itself, if it is an object. */
  readonly self?: number;
}

/** A stream as it stands in a file. */
interface PlainStream {
  readonly dictionary: string;
  readonly bytes: Buffer;
}

/** So many revisions and objects are looked at. */
const most = { tables: 50, objects: 20_000, bytes: 16_000_000 };

/**
 * The tables of a file, the newest first. Throws for whatever is not as plain as common programs write it, since
 * readers may differ about that. ISO 32000-1:2008 §7.5.4 to §7.5.8
 */
export function tablesOf(file: Buffer): ObjectTable[] {
  const end = /startxref\s+(\d+)\s+%%EOF\s*$/.exec(file.subarray(-64).toString("latin1"))?.[1];
  const tables: ObjectTable[] = [];
  const seen = new Set<number>();
  for (let at = Number(must(end)); ; ) {
    if (seen.has(at) || seen.size >= most.tables) throw new Error("endless tables");
    seen.add(at);
    const { table, trailer } = tableAt(file, at);
    if (/\/Encrypt|\/XRefStm|#/.test(trailer)) throw new Error("no plain trailer");
    // §F.2: only the newest trailer of a linearized file has to name the catalog.
    const isNamed = tables.length === 0 || trailer.includes("/Root");
    const root = isNamed ? only(trailer, /\/Root\s+(\d+\s+\d+)\s+R/g).replace(/\s+/, " ") : undefined;
    tables.push({ ...table, ...(root === undefined ? {} : { root }) });
    if (!trailer.includes("/Prev")) return tables;
    at = Number(only(trailer, /\/Prev\s+(\d+)(?!\s+\d+\s+R)/g));
  }
}

function tableAt(
  file: Buffer,
  at: number,
): { readonly table: Omit<ObjectTable, "root">; readonly trailer: string } {
  return file.subarray(at, at + 4).toString("latin1") === "xref" ? writtenOut(file, at) : packed(file, at);
}

/** A table in lines of 20 bytes. §7.5.4 */
function writtenOut(file: Buffer, at: number): ReturnType<typeof tableAt> {
  const end = file.indexOf("startxref", at);
  const text = file.subarray(at, end).toString("latin1");
  const places = new Map<number, Place | "free">();
  const section = /\s*(\d+) (\d+)\s*?\r?\n|\s*trailer/y;
  section.lastIndex = 4;
  for (;;) {
    const [all, first, count] = must(section.exec(text));
    if (first === undefined || count === undefined)
      return { table: { places }, trailer: text.slice(section.lastIndex - (all?.length ?? 0)) };
    const start = section.lastIndex;
    if (Number(count) > most.objects) throw new Error("too many objects");
    for (let i = 0; i < Number(count); i++) {
      const line = text.slice(start + 20 * i, start + 20 * (i + 1));
      const [, offset, free] = must(/^(\d{10}) (?:\d{5} (f)|00000 n)[ \r][\r\n]$/.exec(line));
      addTo(places, Number(first) + i, free === undefined ? { at: Number(offset) } : "free");
    }
    section.lastIndex = start + 20 * Number(count);
  }
}

/** A table as a stream. §7.5.8 */
function packed(file: Buffer, at: number): ReturnType<typeof tableAt> {
  const { dictionary, bytes } = streamAt(file, at);
  if (!/\/Type\s*\/XRef\b/.test(dictionary)) throw new Error("no table");
  const widths = numbersIn(only(dictionary, /\/W\s*\[([\d\s]*)\]/g));
  const [kinds = 0, middle = 0, last = 0] = widths;
  const row = kinds + middle + last;
  if (widths.length !== 3 || kinds > 1 || row === 0 || row > 24) throw new Error("no plain table");
  const rows = /\/Predictor\s+(?!1\b)/.test(dictionary) ? unpredicted(bytes, row, dictionary) : bytes;
  const index = dictionary.includes("/Index")
    ? numbersIn(only(dictionary, /\/Index\s*\[([\d\s]*)\]/g))
    : [0, Number(only(dictionary, /\/Size\s+(\d+)/g))];
  const places = new Map<number, Place | "free">();
  let from = 0;
  const next = (width: number, usual: number): number => {
    if (width === 0) return usual;
    let value = 0;
    for (let i = 0; i < width; i++) value = value * 256 + must(rows[from++]);
    return value;
  };
  for (let pair = 0; pair < index.length; pair += 2)
    for (let i = 0; i < (index[pair + 1] ?? 0); i++) {
      const [kind, second, third] = [next(kinds, 1), next(middle, 0), next(last, 0)];
      if (kind > 2 || (kind === 1 && third !== 0)) throw new Error("no plain place");
      const place = kind === 0 ? "free" : kind === 1 ? { at: second } : { within: second, index: third };
      addTo(places, (index[pair] ?? 0) + i, place);
    }
  return { table: { places, self: at }, trailer: dictionary };
}

function addTo(places: Map<number, Place | "free">, number: number, place: Place | "free"): void {
  if (places.has(number) || places.size >= most.objects) throw new Error("no plain table");
  places.set(number, place);
}

/** Rows of which each says how it differs from the one above. PNG's filters 0 and 2 are known. §7.4.4.4 */
function unpredicted(bytes: Buffer, row: number, dictionary: string): Buffer {
  if (Number(only(dictionary, /\/Columns\s+(\d+)/g)) !== row) throw new Error("no plain table");
  const plain = Buffer.alloc(Math.floor(bytes.length / (row + 1)) * row);
  for (let y = 0; y * row < plain.length; y++) {
    const filter = bytes[y * (row + 1)];
    if (filter !== 0 && filter !== 2) throw new Error("an unknown filter");
    for (let x = 0; x < row; x++) {
      const above = filter === 0 || y === 0 ? 0 : (plain[(y - 1) * row + x] ?? 0);
      plain[y * row + x] = (bytes[y * (row + 1) + 1 + x] ?? 0) + above;
    }
  }
  return plain;
}

/** The numbers of the objects in a stream of objects, in their order. §7.5.7 */
export function objectsPackedAt(file: Buffer, at: number): number[] {
  const { dictionary, bytes } = streamAt(file, at);
  if (!/\/Type\s*\/ObjStm\b/.test(dictionary) || dictionary.includes("/Extends"))
    throw new Error("no plain stream of objects");
  const first = Number(only(dictionary, /\/First\s+(\d+)/g));
  const count = Number(only(dictionary, /\/N\s+(\d+)/g));
  const head = numbersIn(bytes.subarray(0, first).toString("latin1"));
  if (head.length !== 2 * count || count > most.objects) throw new Error("no plain stream of objects");
  return head.filter((_, i) => i % 2 === 0);
}

/** A stream whose length stands in its own dictionary, and which ends where that says. */
function streamAt(file: Buffer, at: number): PlainStream {
  const start = file.indexOf("stream", at);
  const dictionary = file.subarray(at, start).toString("latin1");
  if (start === -1 || dictionary.includes("endobj") || dictionary.includes("#"))
    throw new Error("no plain stream");
  const length = Number(only(dictionary, /\/Length\s+(\d+)(?!\s+\d+\s+R|\d)/g));
  const begins = start + "stream".length + (file[start + "stream".length] === 13 ? 2 : 1);
  const bytes = file.subarray(begins, begins + length);
  if (!/^\s*endstream/.test(file.subarray(begins + length, begins + length + 12).toString("latin1")))
    throw new Error("a stream ends elsewhere");
  if (!dictionary.includes("/Filter")) return { dictionary, bytes };
  only(dictionary, /\/Filter\s*(\[\s*\/FlateDecode\s*\]|\/FlateDecode\b)/g);
  return { dictionary, bytes: inflateSync(bytes, { maxOutputLength: most.bytes }) };
}

function numbersIn(text: string): number[] {
  const words = text.split(/[\0\s]+/).filter((word) => word !== "");
  if (words.some((word) => !/^\d{1,10}$/.test(word))) throw new Error("no plain numbers");
  return words.map(Number);
}

/** What a pattern finds, if it finds that once. */
function only(text: string, pattern: RegExp): string {
  const [found, ...more] = text.matchAll(pattern);
  if (more.length > 0) throw new Error("said more than once");
  return must(found?.[1]);
}

function must<T>(value: T | null | undefined): T {
  if (value === undefined || value === null) throw new Error("not as programs write it");
  return value;
}

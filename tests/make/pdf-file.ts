import { deflateSync } from "node:zlib";

/** A small PDF, written by hand, so that every byte of its tables is known. */
export interface WrittenPdf {
  readonly text: string;
  /** Where the objects stand, by their numbers. */
  readonly at: ReadonlyMap<number, number>;
}

export const header = "%PDF-1.5\n";
export const catalog = "<</Type /Catalog /Pages 2 0 R>>";
export const pages = "<</Type /Pages /Kids [] /Count 0>>";

/** Objects one after the other, behind what is written already. */
export function withObjects(
  objects: readonly (readonly [number: number, content: string])[],
  before: WrittenPdf = { text: header, at: new Map() },
): WrittenPdf {
  let { text } = before;
  const at = new Map(before.at);
  for (const [number, content] of objects) {
    at.set(number, text.length);
    text += `${number} 0 obj\n${content}\nendobj\n`;
  }
  return { text, at };
}

/** ISO 32000-1:2008 §7.5.8: a stream of these bytes, as the content of an object. */
export function streamOf(entries: string, bytes: Uint8Array, isPacked = false): string {
  const stored = Buffer.from(isPacked ? deflateSync(bytes) : bytes);
  const filter = isPacked ? " /Filter /FlateDecode" : "";
  return `<<${entries}${filter} /Length ${stored.length}>>\nstream\n${stored.toString("latin1")}\nendstream`;
}

/** §7.5.7: some objects packed in a stream. */
export function packOf(objects: readonly (readonly [number: number, content: string])[]): string {
  let body = "";
  const head = objects.map(([number, content]) => {
    const from = body.length;
    body += `${content} `;
    return `${number} ${from} `;
  });
  const first = head.join("");
  const entries = `/Type /ObjStm /N ${objects.length} /First ${first.length}`;
  return streamOf(entries, Buffer.from(first + body, "latin1"));
}

/** §7.5.4: a line of a table, 20 bytes long. */
export function line(at: number | "free", end = " \n"): string {
  return at === "free" ? `0000000000 65535 f${end}` : `${String(at).padStart(10, "0")} 00000 n${end}`;
}

export function ending(at: number): string {
  return `startxref\n${at}\n%%EOF\n`;
}

/** A table in lines, of the objects 0 to the last that stands, and the end of the file. */
export function closed({ text, at }: WrittenPdf, trailer = "/Root 1 0 R", end?: string): WrittenPdf {
  const size = Math.max(...at.keys()) + 1;
  const lines = Array.from({ length: size }, (_, number) => line(at.get(number) ?? "free", end));
  const table = `xref\n0 ${size}\n${lines.join("")}trailer\n<</Size ${size} ${trailer}>>\n`;
  return { text: `${text}${table}${ending(text.length)}`, at };
}

/** Big-endian numbers of so many bytes each. */
export function rowOf(widths: readonly number[], values: readonly number[]): number[] {
  return widths.flatMap((width, i) =>
    Array.from(
      { length: width },
      (_, byte) => Math.floor((values[i] ?? 0) / 256 ** (width - 1 - byte)) % 256,
    ),
  );
}

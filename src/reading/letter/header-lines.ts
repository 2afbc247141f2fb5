import type { HeaderLine } from "../../trade/header.ts";

/** Where the header of a letter ends, in bytes. */
export function headerEnd(raw: Buffer): number {
  const ends = [raw.indexOf("\r\n\r\n"), raw.indexOf("\n\n")].filter((at) => at >= 0);
  return ends.length === 0 ? raw.length : Math.min(...ends);
}

/** The fields of a letter's header, top first, each unfolded to one line. RFC 5322 §2.2 */
export function headerLines(bytes: Uint8Array): HeaderLine[] {
  const raw = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return raw
    .subarray(0, headerEnd(raw))
    .toString("latin1")
    .replace(/\r?\n(?=[ \t])/g, "") // §2.2.3: a line that begins with a blank continues the one before
    .split(/\r?\n/)
    .flatMap((line) => {
      const colon = line.indexOf(":");
      if (colon < 1) return [];
      return [{ name: line.slice(0, colon).trim().toLowerCase(), value: line.slice(colon + 1).trim() }];
    });
}

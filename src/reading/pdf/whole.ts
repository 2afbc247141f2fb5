import { inflateSync } from "node:zlib"; // a pure function of bytes

/**
 * Whether a PDF has arrived as it was written, as far as the file itself can tell: its end is there and
 * leads to its table of objects, and the packed objects have the checksums they were packed with. Readers
 * mend or pass over all of these in silence, and may then show an earlier revision or other letters.
 */
export function isWhole(bytes: Uint8Array): boolean {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const table = tableOf(file);
  return table !== undefined && leadsToTable(file, table) && isSound(file);
}

/**
 * Where the end of a file says that its table of objects is; undefined where the end is missing, be it that
 * of the last revision alone. ISO 32000-1:2008 §7.5.5: a file ends in `startxref`, a number and `%%EOF`.
 */
function tableOf(file: Buffer): number | undefined {
  const tail = file.subarray(-2048).toString("latin1");
  const end = /startxref\s+(\d+)\s+%%EOF(?!\s*\d|[\s\S]*(?:%%EOF|\bobj\b))/.exec(tail)?.[1];
  return end === undefined ? undefined : Number(end);
}

// Annex H, note 13: offsets may count from the header, which need not be the first thing in the file.
function leadsToTable(file: Buffer, table: number): boolean {
  const header = Math.max(0, file.indexOf("%PDF-"));
  return [table, table + header].some((at) =>
    /^\s*(?:xref\s+\d+\s+\d+\s|\d+\s+\d+\s+obj\b[^]*\/W\s*\[)/.test(
      file.subarray(at, at + 2048).toString("latin1"),
    ),
  );
}

/** Bytes that packed objects may unpack to before they are no longer looked at: far beyond any sheet. */
const mostBytes = 64_000_000;

/** Whether streams that hold objects or tables end in their checksum (RFC 1950: Adler-32). */
function isSound(file: Buffer): boolean {
  if (file.includes("/Encrypt")) return true; // what is locked is no zlib stream
  let left = mostBytes;
  for (const start of packedStreams(file)) {
    if (left <= 0) return true;
    try {
      left -= inflateSync(file.subarray(start), { maxOutputLength: left }).length;
    } catch (error) {
      // More than can be looked at proves nothing.
      return (error as { readonly code?: string }).code === "ERR_BUFFER_TOO_LARGE";
    }
  }
  return true;
}

const deflated = /\/Filter\s*(?:\/FlateDecode\b|\[\s*\/FlateDecode\s*\])/;

/** Where the bytes of deflated object streams and cross-reference streams begin. */
function* packedStreams(file: Buffer): Generator<number> {
  for (const type of ["/ObjStm", "/XRef"])
    for (let at = file.indexOf(type); at !== -1; at = file.indexOf(type, at + 1)) {
      const begins = file.lastIndexOf("obj", at);
      const keyword = file.indexOf("stream", at + type.length);
      const dictionary = file.subarray(begins, keyword).toString("latin1");
      // The word may stand elsewhere, and filters may come in a row.
      if (keyword - begins > 2048 || dictionary.includes("endobj") || !deflated.test(dictionary)) continue;
      const [blank = ""] = /^\r?\n?/.exec(file.subarray(keyword + 6, keyword + 8).toString("latin1")) ?? [];
      yield keyword + 6 + blank.length;
    }
}

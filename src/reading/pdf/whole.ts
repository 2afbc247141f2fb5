import { inflateSync } from "node:zlib"; // a pure function of bytes

/**
 * Whether a PDF has arrived as it was written, as far as the file can tell. Its end is there and leads to its table
 * of objects. Its packed objects have their checksums. Readers silently repair or skip what is damaged, and may then
 * show an earlier revision or other letters.
 */
export function isWhole(bytes: Uint8Array): boolean {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const table = tableOf(file);
  return table !== undefined && leadsToTable(file, table) && isSound(file);
}

/**
 * Where the table of objects is, as the end of the file says. Undefined if the end is missing, even that of the last
 * revision alone. ISO 32000-1:2008 §7.5.5: a file ends in `startxref`, a number and `%%EOF`.
 */
function tableOf(file: Buffer): number | undefined {
  const tail = file.subarray(-2048).toString("latin1");
  const end = /startxref\s+(\d+)\s+%%EOF(?!\s*\d|[\s\S]*(?:%%EOF|\bobj\b))/.exec(tail)?.[1];
  return end === undefined ? undefined : Number(end);
}

// Adobe PDF Reference 1.7, Appendix H, note 13: the header need not be the first thing in the file. Offsets may then
// count from the header: common practice, no source.
function leadsToTable(file: Buffer, table: number): boolean {
  const header = Math.max(0, file.indexOf("%PDF-"));
  return [table, table + header].some((at) =>
    /^\s*(?:xref\s+\d+\s+\d+\s|\d+\s+\d+\s+obj\b[^]*\/W\s*\[)/.test(
      file.subarray(at, at + 2048).toString("latin1"),
    ),
  );
}

/** How many PDFs stand one behind the other in a file. No revision has a header of its own (ISO 32000-1:2008 §7.5.6). */
export function filesIn(bytes: Uint8Array): number {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let count = 1;
  for (let at = file.indexOf("%PDF-", 1); at !== -1; at = file.indexOf("%PDF-", at + 1))
    if (/%%EOF\s*$/.test(file.subarray(Math.max(0, at - 64), at).toString("latin1"))) count++;
  return count;
}

/** Bytes of packed objects that are looked at, packed and unpacked. It is far more than any sheet has. */
const mostBytes = 64_000_000;

/** Whether streams that hold objects or tables end in their checksum (RFC 1950: Adler-32). */
function isSound(file: Buffer): boolean {
  if (file.includes("/Encrypt")) return true; // locked streams are no zlib streams
  let left = mostBytes;
  for (const start of packedStreams(file)) {
    if (left <= 0) return true;
    try {
      left -= workOf(file.subarray(start), left);
    } catch (error) {
      // A stream that is too large to look at proves nothing.
      return (error as { readonly code?: string }).code === "ERR_BUFFER_TOO_LARGE";
    }
  }
  return true;
}

/** How many bytes unpacking has read and written. Throws for a stream that is not sound, or too large. */
function workOf(stream: Buffer, most: number): number {
  const { buffer, engine } = inflateSync(stream, { maxOutputLength: most, info: true }) as unknown as {
    readonly buffer: Buffer;
    readonly engine: { readonly bytesWritten: number };
  };
  return buffer.length + engine.bytesWritten;
}

const isPacked = /\/(?:ObjStm|XRef)(?![A-Za-z])/;
const deflated = /\/Filter\s*(?:\/FlateDecode\b|\[\s*\/FlateDecode\s*\])/;

/** Bytes before a stream in which its dictionary is looked for. */
const mostDictionary = 2048;

/**
 * Where the bytes of deflated object streams and cross-reference streams begin. Every byte of the file is looked at
 * once only, since a stranger may fill it with any word.
 */
function* packedStreams(file: Buffer): Generator<number> {
  let after = 0;
  for (let at = file.indexOf("stream"); at !== -1; at = file.indexOf("stream", after)) {
    const before = file.subarray(Math.max(after, at - mostDictionary), at).toString("latin1");
    after = at + "stream".length;
    if (before.endsWith("end")) continue;
    const begins = before.lastIndexOf("obj");
    const dictionary = before.slice(begins);
    if (begins === -1 || before.slice(0, begins).endsWith("end")) continue;
    if (!isPacked.test(dictionary) || !deflated.test(dictionary)) continue;
    const [blank = ""] = /^\r?\n?/.exec(file.subarray(after, after + 2).toString("latin1")) ?? [];
    yield after + blank.length;
  }
}

/** A file in a zip archive, as the archive's directory has it. */
export interface ZipEntry {
  readonly name: string;
  /** Opens only with a password. */
  readonly locked: boolean;
  /** 0: stored. 8: deflated. Others are rare. APPNOTE 6.3.10 §4.4.5 */
  readonly method: number;
  readonly crc: number;
  readonly size: number;
  /** As it lies in the archive. */
  readonly packed: Buffer;
}

const entry = 0x02014b50;
const endOfDirectory = "PK\x05\x06";
const endOfDirectory64 = "PK\x06\x06";
/** Stands in place of a number that needs more than 32 bits. The number is then in the extra field. */
const elsewhere = 0xffffffff;

/**
 * The entries of a zip archive by its central directory, which other programs go by too. Undefined when it has none,
 * or when its offsets lead out of the file. APPNOTE 6.3.10 §4.3
 */
export function entriesOf(raw: Buffer): ZipEntry[] | undefined {
  const end = raw.lastIndexOf(endOfDirectory, undefined, "latin1");
  if (end < 0) return undefined;
  try {
    const entries: ZipEntry[] = [];
    for (let at = directoryOf(raw, end); raw.readUInt32LE(at) === entry; ) {
      entries.push(entryAt(raw, at));
      at += 46 + raw.readUInt16LE(at + 28) + raw.readUInt16LE(at + 30) + raw.readUInt16LE(at + 32);
    }
    return entries;
  } catch {
    return undefined;
  }
}

function directoryOf(raw: Buffer, end: number): number {
  const at = raw.readUInt32LE(end + 16);
  if (at !== elsewhere) return at;
  return Number(raw.readBigUInt64LE(raw.lastIndexOf(endOfDirectory64, end, "latin1") + 48));
}

function entryAt(raw: Buffer, at: number): ZipEntry {
  const flags = raw.readUInt16LE(at + 8);
  const nameEnd = at + 46 + raw.readUInt16LE(at + 28);
  const extra = raw.subarray(nameEnd, nameEnd + raw.readUInt16LE(at + 30));
  const large = numbersIn64(extra);
  const number = (offset: number): number => {
    const value = raw.readUInt32LE(at + offset);
    return value === elsewhere ? (large.shift() ?? value) : value;
  };
  const size = number(24);
  const packedSize = number(20);
  const local = number(42);
  const from = local + 30 + raw.readUInt16LE(local + 26) + raw.readUInt16LE(local + 28);
  return {
    name: nameOf(raw.subarray(at + 46, nameEnd)),
    locked: (flags & 1) !== 0,
    method: raw.readUInt16LE(at + 10),
    crc: raw.readUInt32LE(at + 16),
    size,
    packed: raw.subarray(from, from + packedSize),
  };
}

/** Size, packed size and offset, as far as they need more than 32 bits. §4.5.3 */
function numbersIn64(extra: Buffer): number[] {
  const numbers: number[] = [];
  for (let at = 0; at + 4 <= extra.length; at += 4 + extra.readUInt16LE(at + 2))
    if (extra.readUInt16LE(at) === 1)
      for (let next = at + 4; next + 8 <= at + 4 + extra.readUInt16LE(at + 2); next += 8)
        numbers.push(Number(extra.readBigUInt64LE(next)));
  return numbers;
}

/** A name as UTF-8, whether or not the entry says so. What is not UTF-8 is shown as well as can be. §4.4.4, bit 11 */
function nameOf(bytes: Buffer): string {
  const text = bytes.toString("utf8");
  return text.includes("\uFFFD") ? bytes.toString("latin1") : text;
}

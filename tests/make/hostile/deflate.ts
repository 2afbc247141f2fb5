import { constants, deflateRawSync, deflateSync } from "node:zlib";

const chunk = 1 << 24;

/**
 * zlib data (RFC 1950) that unpacks to `size` times the same byte, without ever making it: a packed piece
 * that needs nothing before it, repeated. Only whole multiples of 16 MB. A gigabyte comes to a megabyte.
 */
export function bomb(size: number, byte: string): Buffer {
  return Buffer.concat([Buffer.from([0x78, 0x9c]), rawBomb(size, byte), adler32(byte.charCodeAt(0), size)]);
}

/** The same without zlib's frame, as it stands in a zip (RFC 1951). */
export function rawBomb(size: number, byte: string): Buffer {
  if (size % chunk !== 0) throw new Error(`${size} is no multiple of 16 MB`);
  const piece = deflateRawSync(Buffer.alloc(chunk, byte), { finishFlush: constants.Z_FULL_FLUSH, level: 9 });
  const last = Buffer.from([0x03, 0x00]);
  return Buffer.concat([...Array.from({ length: size / chunk }, () => piece), last]);
}

/** A bomb packed once more for every layer above the first: a gigabyte under two comes to a few hundred bytes. */
export function layered(size: number, byte: string, layers: number): Buffer {
  let packed = bomb(size, byte);
  for (let i = 1; i < layers; i++) packed = deflateSync(packed, { level: 9 });
  return packed;
}

/** RFC 1950 §8.2, for `n` times the same byte. */
function adler32(byte: number, n: number): Buffer {
  const [c, count, base] = [BigInt(byte), BigInt(n), 65521n];
  const a = (1n + count * c) % base;
  const b = (count + (c * count * (count + 1n)) / 2n) % base;
  const sum = Buffer.alloc(4);
  sum.writeUInt32BE(Number(b * 65536n + a));
  return sum;
}

/** zlib data of `before`, what a bomb holds, and `after`. Its check sum is wrong, which PDF readers forgive. */
export function between(before: string, packed: Buffer, after: string): Buffer {
  const blocks = packed.subarray(2, -6); // without header, the last empty block and the check sum
  return Buffer.concat([
    packed.subarray(0, 2),
    stored(before, false),
    blocks,
    stored(after, true),
    Buffer.alloc(4),
  ]);
}

/** A block that holds its text as it is. RFC 1951 §3.2.4 */
function stored(text: string, last: boolean): Buffer {
  const head = Buffer.from([last ? 1 : 0, 0, 0, 0, 0]);
  head.writeUInt16LE(text.length, 1);
  head.writeUInt16LE(0xffff - text.length, 3);
  return Buffer.concat([head, Buffer.from(text, "latin1")]);
}

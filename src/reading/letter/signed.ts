/**
 * Where an element lies in BER; its content begins at `from`. An undefined length lasts up to the end-of-contents.
 */
interface Element {
  readonly tag: number;
  readonly from: number;
  readonly length: number | undefined;
}

const tags = { octets: 0x04, octetsInPieces: 0x24, sequence: 0x30, zero: 0xa0 } as const;
const deepest = 20;

/**
 * The content of PKCS #7 signed data. Undefined when the content lies elsewhere, or when it is no signed data.
 * Whether the signature is good does not matter. RFC 5652 §5.1: ContentInfo { signedData, [0] { version,
 * digestAlgorithms, { eContentType, [0] OCTET STRING } … } }.
 */
export function signedContent(bytes: Uint8Array): Uint8Array | undefined {
  try {
    const raw = fromPem(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength));
    const enter = (at: number, tag: number): number => element(raw, at, tag).from;
    const signedData = enter(after(raw, enter(0, tags.sequence)), tags.zero);
    const version = enter(signedData, tags.sequence);
    const contentType = enter(after(raw, after(raw, version)), tags.sequence);
    return octets(raw, enter(after(raw, contentType), tags.zero));
  } catch {
    return undefined; // an element is missing, or is not where its length says
  }
}

function fromPem(raw: Buffer): Buffer {
  const base64 = /-----BEGIN [^-]+-----([^-]+)-----END/.exec(raw.toString("latin1"))?.[1];
  return base64 === undefined ? raw : Buffer.from(base64, "base64");
}

/** ITU-T X.690 §8.1. Throws for anything but a `tag`. */
function element(raw: Buffer, at: number, tag?: number): Element {
  const found = raw.readUInt8(at);
  if (tag !== undefined && found !== tag) throw new RangeError(`no element of tag ${tag}`);
  const first = raw.readUInt8(at + 1);
  if (first < 0x80) return { tag: found, from: at + 2, length: first };
  if (first === 0x80) return { tag: found, from: at + 2, length: undefined };
  const size = first - 0x80;
  return { tag: found, from: at + 2 + size, length: raw.readUIntBE(at + 2, size) };
}

/** Where the next element begins. */
function after(raw: Buffer, at: number, depth = 0): number {
  const { from, length } = element(raw, at);
  if (length !== undefined) return from + length;
  if (depth > deepest) throw new RangeError("elements lie too deep");
  let next = from;
  while (raw.readUInt16BE(next) !== 0) next = after(raw, next, depth + 1);
  return next + 2;
}

/** An octet string, whole or in pieces. §8.7 */
function octets(raw: Buffer, at: number): Uint8Array {
  const { tag, from, length } = element(raw, at);
  if (tag === tags.octets) return raw.subarray(from, from + (length ?? 0));
  if (tag !== tags.octetsInPieces) throw new RangeError("no octet string");
  const pieces: Buffer[] = [];
  const end = length === undefined ? raw.length : from + length;
  for (let next = from; next < end && raw.readUInt8(next) === tags.octets; next = after(raw, next)) {
    const piece = element(raw, next);
    pieces.push(raw.subarray(piece.from, piece.from + (piece.length ?? 0)));
  }
  return Buffer.concat(pieces);
}

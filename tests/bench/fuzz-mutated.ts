/** Numbers from 0 to below 1 that look like chance and are the same for the same seed and number. */
export type Chance = () => number;

/** Mulberry32, public domain. */
export function chanceOf(seed: number, number: number): Chance {
  let state = (seed ^ Math.imul(number + 1, 0x9e3779b1)) >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** One to eight slips: bytes changed, pieces cut out, put in, doubled or moved. */
export function mutated(bytes: Uint8Array, chance: Chance): Buffer {
  let changed: Buffer = Buffer.from(bytes);
  for (let left = 1 + below(8, chance); left > 0; left--) {
    const slip = slips[below(slips.length, chance)];
    if (slip !== undefined) changed = slip(changed, chance);
  }
  return changed;
}

function below(most: number, chance: Chance): number {
  return Math.floor(chance() * most);
}

/** A place, and a length that is mostly short. */
function piece(bytes: Buffer, chance: Chance): readonly [number, number] {
  const from = below(bytes.length + 1, chance);
  const longest = [4, 40, 400, bytes.length][below(4, chance)] ?? 4;
  return [from, Math.min(bytes.length, from + below(longest, chance))];
}

function without(bytes: Buffer, [from, to]: readonly [number, number]): Buffer {
  return Buffer.concat([bytes.subarray(0, from), bytes.subarray(to)]);
}

function withPiece(bytes: Buffer, at: number, put: Uint8Array): Buffer {
  return Buffer.concat([bytes.subarray(0, at), put, bytes.subarray(at)]);
}

/** Bytes that begin, end or count something in PDFs and letters. */
const telling = Buffer.from("()<>[]{}/%\\ \r\n\0\xff\x80019-=:;\"'.R", "latin1");

type Slip = (bytes: Buffer, chance: Chance) => Buffer;

const slips: readonly Slip[] = [
  (bytes, chance) => {
    const changed = Buffer.from(bytes);
    for (let left = 1 + below(10, chance); left > 0; left--)
      changed[below(bytes.length, chance)] = below(256, chance);
    return changed;
  },
  (bytes, chance) => {
    const changed = Buffer.from(bytes);
    for (let left = 1 + below(10, chance); left > 0; left--)
      changed[below(bytes.length, chance)] = telling[below(telling.length, chance)] ?? 0;
    return changed;
  },
  (bytes, chance) => without(bytes, piece(bytes, chance)),
  (bytes, chance) =>
    withPiece(
      bytes,
      below(bytes.length + 1, chance),
      Buffer.from(Array.from({ length: below(40, chance) }, () => below(256, chance))),
    ),
  (bytes, chance) => {
    const [from, to] = piece(bytes, chance);
    return withPiece(bytes, to, bytes.subarray(from, Math.min(to, from + 100_000)));
  },
  (bytes, chance) => {
    const [from, to] = piece(bytes, chance);
    const rest = without(bytes, [from, to]);
    return withPiece(rest, below(rest.length + 1, chance), bytes.subarray(from, to));
  },
];

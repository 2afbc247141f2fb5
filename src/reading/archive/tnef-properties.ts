/** One MAPI property: its bytes, and what they say if they are text. */
export interface Property {
  readonly bytes: Buffer;
  readonly text: string;
  readonly isObject: boolean;
}

const types = { unicode: 0x1f, object: 0x0d } as const;
const several = 0x1000;
/** Bytes of a value, where a type has values of one size. MS-OXCDATA §2.11.1 */
const sizes = new Map([
  [0x02, 2],
  [0x03, 4],
  [0x04, 4],
  [0x05, 8],
  [0x06, 8],
  [0x07, 8],
  [0x0a, 4],
  [0x0b, 2],
  [0x14, 8],
  [0x40, 8],
  [0x48, 16],
]);

/**
 * MAPI properties by their ids, up to where they can be read. Of several values the last counts. MS-OXTNEF §2.1.3.4
 */
export function readProperties(raw: Buffer): ReadonlyMap<number, Property> {
  const found = new Map<number, Property>();
  let at = 0;
  const word = (): number => raw.readUInt32LE((at += 4) - 4);
  const take = (size: number): Buffer => {
    const bytes = raw.subarray(at, at + size);
    if (bytes.length < size) throw new RangeError("the property ends too early");
    at += Math.ceil(size / 4) * 4; // values are padded to four bytes
    return bytes;
  };
  try {
    for (let left = word(); left > 0; left--) {
      const tag = word();
      const [id, type] = [tag >>> 16, tag & 0xffff & ~several];
      if (id >= 0x8000) skipName(word, take);
      const size = sizes.get(type);
      const hasCount = size === undefined || (tag & several) !== 0;
      for (let values = hasCount ? word() : 1; values > 0; values--) {
        const bytes = take(size ?? word());
        found.set(id, { bytes, text: propertyText(type, bytes), isObject: type === types.object });
      }
    }
  } catch {
    // What was found so far counts, since a container may lie about its lengths.
  }
  return found;
}

/** Properties with ids from 0x8000 on carry a GUID and a number or a name. */
function skipName(word: () => number, take: (size: number) => Buffer): void {
  take(16);
  const isNamed = word() !== 0;
  const length = word();
  if (isNamed) take(length);
}

function propertyText(type: number, bytes: Buffer): string {
  const text = type === types.unicode ? bytes.toString("utf16le") : bytes.toString("latin1");
  return text.replace(/\0.*$/s, "");
}

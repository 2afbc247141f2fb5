import { crc32, deflateRawSync } from "node:zlib";

/** A file to be packed. */
export interface Packed {
  readonly file: string;
  readonly bytes: Uint8Array;
}

/** A zip archive as any program makes it. APPNOTE 6.3.10 §4.3 */
export function zipOf(files: readonly Packed[]): Buffer {
  const locals: Buffer[] = [];
  const entries: Buffer[] = [];
  let offset = 0;
  for (const { file, bytes } of files) {
    const name = Buffer.from(file);
    const packed = deflateRawSync(bytes);
    // Version 2.0, names in UTF-8, deflated, 1 January 2026.
    const common = numbers([20, 2], [0x0800, 2], [8, 2], [0, 2], [0x5c21, 2], [crc32(bytes), 4]);
    const sizes = numbers([packed.length, 4], [bytes.length, 4], [name.length, 2], [0, 2]);
    const local = Buffer.concat([numbers([0x04034b50, 4]), common, sizes, name, packed]);
    const rest = numbers([0, 2], [0, 2], [0, 2], [0, 4], [offset, 4]);
    entries.push(Buffer.concat([numbers([0x02014b50, 4], [20, 2]), common, sizes, rest, name]));
    locals.push(local);
    offset += local.length;
  }
  const directory = Buffer.concat(entries);
  const counts = numbers([0, 4], [files.length, 2], [files.length, 2], [directory.length, 4], [offset, 4]);
  return Buffer.concat([...locals, directory, numbers([0x06054b50, 4]), counts, numbers([0, 2])]);
}

/** Numbers with their sizes in bytes, the lowest byte first. */
export function numbers(...given: readonly (readonly [value: number, bytes: number])[]): Buffer {
  return Buffer.concat(
    given.map(([value, bytes]) => {
      const written = Buffer.alloc(bytes);
      written.writeUIntLE(value, 0, bytes);
      return written;
    }),
  );
}

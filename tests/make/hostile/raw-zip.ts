import { crc32, deflateRawSync } from "node:zlib";

/** A file in a zip, packed already. */
interface Entry {
  readonly name: string;
  readonly packed: Uint8Array;
  /** Unpacked, as the entry says. */
  readonly size: number;
  readonly crc?: number;
  /** Encrypted, it says. */
  readonly locked?: boolean;
}

/** Entries → a zip in which nothing is checked. APPNOTE.TXT 6.3 §4.3 */
export function rawZip(entries: readonly Entry[]): Buffer {
  const pieces: Buffer[] = [];
  const list: Buffer[] = [];
  let at = 0;
  for (const entry of entries) {
    const local = localHeader(entry);
    pieces.push(local, Buffer.from(entry.packed));
    list.push(listed(entry, at));
    at += local.length + entry.packed.length;
  }
  return Buffer.concat([...pieces, ...list, endOf(list, at)]);
}

/** All entries of the list lead to the same packed bytes. */
export function overlapping(entry: Entry, times: number): Buffer {
  const local = localHeader(entry);
  const list = Array.from({ length: times }, (_, i) => listed({ ...entry, name: `${i}` }, 0));
  return Buffer.concat([local, entry.packed, ...list, endOf(list, local.length + entry.packed.length)]);
}

export function zipped(name: string, bytes: Uint8Array): Entry {
  return { name, packed: deflateRawSync(bytes), size: bytes.length, crc: crc32(bytes) };
}

const common = ({ name, packed, size, crc = 0, locked = false }: Entry): Buffer => {
  const head = Buffer.alloc(26);
  head.writeUInt16LE(20, 0);
  head.writeUInt16LE(locked ? 1 : 0, 2);
  head.writeUInt16LE(8, 4);
  head.writeUInt32LE(crc, 10);
  head.writeUInt32LE(packed.length, 14);
  head.writeUInt32LE(size % 2 ** 32, 18);
  head.writeUInt16LE(Buffer.byteLength(name), 22);
  return head;
};

function localHeader(entry: Entry): Buffer {
  return Buffer.concat([Buffer.from("PK\x03\x04"), common(entry), Buffer.from(entry.name)]);
}

function listed(entry: Entry, at: number): Buffer {
  const tail = Buffer.alloc(14);
  tail.writeUInt32LE(at, 10);
  return Buffer.concat([Buffer.from("PK\x01\x02\x14\x00"), common(entry), tail, Buffer.from(entry.name)]);
}

function endOf(list: readonly Buffer[], at: number): Buffer {
  const end = Buffer.alloc(22);
  end.write("PK\x05\x06", "latin1");
  end.writeUInt16LE(list.length % 65_536, 8);
  end.writeUInt16LE(list.length % 65_536, 10);
  end.writeUInt32LE(
    list.reduce((sum, { length }) => sum + length, 0),
    12,
  );
  end.writeUInt32LE(at, 16);
  return end;
}

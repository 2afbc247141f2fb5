/** [MS-OXTNEF] §2.1.3.1: signature and key. */
export const tnefHead = Buffer.from([0x78, 0x9f, 0x3e, 0x22, 0x01, 0x00]);

/** A container with one attachment whose data says it has `length` bytes. */
export function tnef(length: number, data: Buffer, id = 0x0006800f): Buffer {
  return Buffer.concat([
    tnefHead,
    attribute(0x00069002, 14, Buffer.alloc(14)), // attAttachRenddata
    attribute(0x00018010, 6, Buffer.from("a.pdf\0")), // attAttachTitle
    attribute(id, length, data),
  ]);
}

/** Level, id, length, data and checksum. §2.1.3.1 */
function attribute(name: number, size: number, bytes: Buffer): Buffer {
  const head = Buffer.alloc(9);
  head.writeUInt8(2, 0);
  head.writeUInt32LE(name, 1);
  head.writeUInt32LE(size, 5);
  const sum = bytes.reduce((all, byte) => (all + byte) & 0xffff, 0);
  return Buffer.concat([head, bytes, Buffer.from([sum & 0xff, sum >> 8])]);
}

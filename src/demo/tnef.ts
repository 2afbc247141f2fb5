import { numbers, type Packed } from "./zip.ts";

/**
 * Files as Outlook packs them into winmail.dat when it sends to somebody in its own format: version and
 * code page, then for every file where it shows, its short name, its bytes and its properties. MS-OXTNEF §2.1.3
 */
export function winmailOf(files: readonly Packed[]): Buffer {
  const attributes = files.flatMap(({ file, bytes }, i) => [
    attribute(2, 0x00069002, Buffer.concat([numbers([1, 2], [0xffffffff, 4]), Buffer.alloc(8)])),
    attribute(2, 0x00018010, Buffer.from(`${shortName(file, i)}\0`, "latin1")),
    attribute(2, 0x0006800f, bytes),
    attribute(2, 0x00069005, propertiesOf(file)),
  ]);
  return Buffer.concat([
    numbers([0x223e9f78, 4], [1, 2]),
    attribute(1, 0x00089006, numbers([0x00010000, 4])),
    attribute(1, 0x00069007, numbers([1252, 4], [0, 4])),
    ...attributes,
  ]);
}

/** Level (1 the letter, 2 an attachment), id, length, data and the sum of its bytes. §2.1.3.1 */
export function attribute(level: 1 | 2, id: number, data: Uint8Array): Buffer {
  const sum = data.reduce((all, byte) => (all + byte) & 0xffff, 0);
  return Buffer.concat([numbers([level, 1], [id, 4], [data.length, 4]), data, numbers([sum, 2])]);
}

/** PidTagAttachMethod: by value; PidTagAttachLongFilename, in Unicode. §2.1.3.4 */
function propertiesOf(file: string): Buffer {
  const name = Buffer.from(`${file}\0`, "utf16le");
  const padding = Buffer.alloc(-name.length & 3);
  const method = numbers([0x37050003, 4], [1, 4]);
  return Buffer.concat([
    numbers([2, 4]),
    method,
    numbers([0x3707001f, 4], [1, 4], [name.length, 4]),
    name,
    padding,
  ]);
}

/** Eight letters, a dot, three more, as names once were. */
function shortName(file: string, i: number): string {
  const ending = /\.(\w{1,3})\w*$/.exec(file)?.[1] ?? "DAT";
  return `${file.replace(/\W/g, "").slice(0, 6)}~${i + 1}.${ending}`.toUpperCase();
}

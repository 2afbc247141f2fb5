import type { Left, Part } from "../facts.ts";
import { isSmallPicture } from "../picture.ts";
import { readProperties } from "./tnef-properties.ts";

/** Attributes of an attachment, in the order in which they come. MS-OXTNEF §2.1.3.3 */
const attributes = {
  /** Begins the next attachment. */
  renderData: 0x9002,
  /** Its bytes. */
  data: 0x800f,
  /** Its name in the old style: eight letters, a dot, three more. */
  title: 0x8010,
  /** Its MAPI properties, among them its whole name. */
  properties: 0x9005,
} as const;

interface TnefFile {
  title: string;
  longName: string;
  bytes?: Uint8Array;
  whole: boolean;
  hidden: boolean;
}

/** The files in Outlook's winmail.dat, and the names of those that its checksums prove damaged. MS-OXTNEF §2.1.3 */
export function readTnef(bytes: Uint8Array): { files: Part[]; left: Left[] } {
  const found = filesOf(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength));
  const named = found.map(({ title, longName, ...file }) => ({ ...file, name: longName || title }));
  return {
    files: named
      .filter(({ whole }) => whole)
      .map(({ name, bytes = new Uint8Array(), hidden }) => ({
        name,
        bytes,
        looks: hidden && isSmallPicture(bytes),
      })),
    left: named.filter(({ whole }) => !whole).map(({ name }) => ({ name, kind: "damaged" })),
  };
}

function filesOf(raw: Buffer): TnefFile[] {
  const files: TnefFile[] = [];
  for (const { id, data, whole } of attributesOf(raw)) {
    const last = files.at(-1);
    const begins = id === attributes.renderData || (id === attributes.data && last?.bytes !== undefined);
    const file =
      begins || last === undefined ? { title: "", longName: "", whole: true, hidden: false } : last;
    if (id === attributes.data) Object.assign(file, { bytes: data, whole });
    else if (id === attributes.title) file.title = text(data);
    else if (id === attributes.properties) addProperties(file, data);
    else if (id !== attributes.renderData) continue;
    if (file !== last) files.push(file);
  }
  return files;
}

/** Signature and key; then level, id, length, data and the sum of its bytes for each attribute. §2.1.3.1 */
function* attributesOf(raw: Buffer): Generator<{ id: number; data: Buffer; whole: boolean }> {
  for (let at = 6; at + 9 <= raw.length; ) {
    const id = raw.readUInt16LE(at + 1); // two bytes of type follow
    const data = raw.subarray(at + 9, at + 9 + raw.readUInt32LE(at + 5));
    at += 9 + data.length + 2;
    yield { id, data, whole: at <= raw.length && sumOf(data) === raw.readUInt16LE(at - 2) };
  }
}

function sumOf(data: Buffer): number {
  let sum = 0;
  for (const byte of data) sum = (sum + byte) & 0xffff;
  return sum;
}

/** MS-OXPROPS: PidTagAttachLongFilename, PidTagDisplayName and others beside them. */
function addProperties(file: TnefFile, data: Buffer): void {
  const properties = readProperties(data);
  const { attachLongFilename, displayName, attachFilename, attachmentHidden, attachData } = ids;
  const name = [attachLongFilename, displayName, attachFilename].flatMap((id) => properties.get(id) ?? [])[0];
  if (name !== undefined) file.longName = name.text;
  file.hidden = properties.get(attachmentHidden)?.bytes.some((byte) => byte !== 0) ?? false;
  // An embedded letter or document is an object: sixteen bytes that tell its kind, then its own bytes.
  const within = properties.get(attachData);
  if (within !== undefined && file.bytes === undefined)
    file.bytes = within.bytes.subarray(within.isObject ? 16 : 0);
}

const ids = {
  attachLongFilename: 0x3707,
  displayName: 0x3001,
  attachFilename: 0x3704,
  attachmentHidden: 0x7ffe,
  attachData: 0x3701,
} as const;

function text(data: Buffer): string {
  return data.toString("latin1").replace(/\0.*$/s, "");
}

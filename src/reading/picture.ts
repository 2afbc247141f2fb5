import { contentOf } from "./content.ts";

/** Pixels. A photographed or scanned page is at least so large, and it is no narrow strip such as a banner. */
const page = { shortSide: 600, proportion: 2.2 };
/** Bytes, if the size in pixels is not known. */
const pageBytes = 100_000;

/** Whether it is a picture that is too small to show a sheet, or too narrow. Logos and banners are. */
export function isSmallPicture(bytes: Uint8Array): boolean {
  if (contentOf(bytes) !== "picture") return false;
  const size = pixelsOf(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength));
  if (size === undefined) return bytes.length < pageBytes;
  const [short, long] = [Math.min(...size), Math.max(...size)];
  return short < page.shortSide || long > short * page.proportion;
}

/** Width and height of a PNG, GIF or JPEG. */
function pixelsOf(bytes: Buffer): [number, number] | undefined {
  const head = bytes.toString("latin1", 0, 4);
  // ISO/IEC 15948 §11.2.2; GIF89a §18
  if (head === "\x89PNG" && bytes.length >= 24) return [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
  if (head === "GIF8" && bytes.length >= 10) return [bytes.readUInt16LE(6), bytes.readUInt16LE(8)];
  return head.startsWith("\xFF\xD8") ? pixelsOfJpeg(bytes) : undefined;
}

/** ITU-T T.81 §B.1.1.4, B.2.2: segments follow each other, and the first frame header has the size. */
function pixelsOfJpeg(bytes: Buffer): [number, number] | undefined {
  for (let at = 2; at + 9 <= bytes.length && bytes[at] === 0xff; at += 2 + bytes.readUInt16BE(at + 2)) {
    const marker = bytes[at + 1] ?? 0;
    if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker))
      return [bytes.readUInt16BE(at + 7), bytes.readUInt16BE(at + 5)];
  }
  return undefined;
}

import { crc32, deflateSync } from "node:zlib"; // pure functions of bytes

/** A page as a picture: one number a pixel, blue in its lowest byte, then green and red. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly pixels: Int32Array;
}

/** A part of a picture, in pixels from its upper left corner. The right and lower edges lie outside. */
export interface Area {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** How far apart two colours are: the differences of red, green and blue added up, 0 to 765. */
export function apart(one: number, other: number): number {
  return (
    Math.abs((one & 255) - (other & 255)) +
    Math.abs(((one >> 8) & 255) - ((other >> 8) & 255)) +
    Math.abs(((one >> 16) & 255) - ((other >> 16) & 255))
  );
}

/** Colours that are at least so far apart are different. */
export const leastApart = 36;

/** How bright a colour is, 0 to 255. ITU-R BT.601 */
export function brightness(colour: number): number {
  return 0.114 * (colour & 255) + 0.587 * ((colour >> 8) & 255) + 0.299 * ((colour >> 16) & 255);
}

/** Whether two rows of pixels are the same, each from a place on. */
export function sameRun(
  one: Int32Array,
  from: number,
  other: Int32Array,
  start: number,
  count: number,
): boolean {
  const [first, second] = [bytesOf(one), bytesOf(other)];
  return first.compare(second, start * 4, (start + count) * 4, from * 4, (from + count) * 4) === 0;
}

const views = new WeakMap<Int32Array, Buffer>();

/** Pixels as bytes. A machine compares many of them at a time. */
export function bytesOf(pixels: Int32Array): Buffer {
  const known = views.get(pixels);
  if (known !== undefined) return known;
  const view = Buffer.from(pixels.buffer, pixels.byteOffset, pixels.byteLength);
  views.set(pixels, view);
  return view;
}

/** Whether a part of two pictures of one size is the same. */
export function samePart(one: Picture, other: Picture, { left, top, right, bottom }: Area): boolean {
  for (let y = top; y < bottom; y++) {
    const start = y * one.width + left;
    if (!sameRun(one.pixels, start, other.pixels, start, right - left)) return false;
  }
  return true;
}

/** The area that two areas have in common. */
export function shared(one: Area, other: Area): Area {
  return {
    left: Math.max(one.left, other.left),
    top: Math.max(one.top, other.top),
    right: Math.min(one.right, other.right),
    bottom: Math.min(one.bottom, other.bottom),
  };
}

export function isEmpty({ left, top, right, bottom }: Area): boolean {
  return right <= left || bottom <= top;
}

export function grown({ left, top, right, bottom }: Area, by: number): Area {
  return { left: left - by, top: top - by, right: right + by, bottom: bottom + by };
}

/** The smallest area around some. */
export function aroundAll(areas: readonly Area[]): Area {
  return {
    left: Math.min(...areas.map(({ left }) => left)),
    top: Math.min(...areas.map(({ top }) => top)),
    right: Math.max(...areas.map(({ right }) => right)),
    bottom: Math.max(...areas.map(({ bottom }) => bottom)),
  };
}

/** The whole of a picture. */
export function wholeOf({ width, height }: Picture): Area {
  return { left: 0, top: 0, right: width, bottom: height };
}

/**
 * A part of a picture as a PNG (ISO/IEC 15948). It is made smaller by a whole number until it has no more than `most`
 * pixels.
 */
export function pngOf(picture: Picture, part: Area, most: number): Uint8Array {
  const { left, top, right, bottom } = shared(part, wholeOf(picture));
  const by = Math.max(1, Math.ceil(Math.sqrt(((right - left) * (bottom - top)) / most)));
  const width = Math.max(1, Math.floor((right - left) / by));
  const height = Math.max(1, Math.floor((bottom - top) / by));
  const line = 1 + 3 * width;
  const rows = Buffer.alloc(height * line);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      rows.set(averageOf(picture, left + x * by, top + y * by, by), y * line + 1 + 3 * x);
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 2, 0, 0, 0], 8); // eight bits for each of red, green and blue
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk("IHDR", head),
    chunk("IDAT", deflateSync(rows, { level: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

/**
 * Red, green and blue are rounded to steps of this size. The picture packs into half the bytes, and nobody sees it.
 */
const step = 15;

/** The mean colour of a square: red, green, blue. */
function averageOf(
  { width, height, pixels }: Picture,
  left: number,
  top: number,
  side: number,
): [number, number, number] {
  let [red, green, blue, count] = [0, 0, 0, 0];
  for (let y = top; y < Math.min(top + side, height); y++)
    for (let x = left; x < Math.min(left + side, width); x++) {
      const colour = pixels[y * width + x] ?? 0;
      blue += colour & 255;
      green += (colour >> 8) & 255;
      red += (colour >> 16) & 255;
      count++;
    }
  const part = (sum: number): number => Math.round(sum / count / step) * step;
  return [part(red), part(green), part(blue)];
}

function chunk(name: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, "latin1"), data]);
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, check]);
}

import { expect, test } from "vitest";
import { isSmallPicture } from "../../src/reading/picture.ts";

function png(width: number, height: number): Buffer {
  const bytes = Buffer.from("\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\0\0\0\0\0\0", "latin1");
  bytes.writeUInt32BE(width, 16);
  bytes.writeUInt32BE(height, 20);
  return bytes;
}

function gif(width: number, height: number): Buffer {
  const bytes = Buffer.from("GIF89a\0\0\0\0", "latin1");
  bytes.writeUInt16LE(width, 6);
  bytes.writeUInt16LE(height, 8);
  return bytes;
}

/** A JPEG with a comment and a Huffman table before its frame header. */
function jpeg(width: number, height: number): Buffer {
  const before = Buffer.from("\xff\xd8\xff\xfe\0\x06abcd\xff\xc4\0\x04ab\xff\xc0\0\x11\x08", "latin1");
  const size = Buffer.alloc(4);
  size.writeUInt16BE(height, 0);
  size.writeUInt16BE(width, 2);
  return Buffer.concat([before, size, Buffer.alloc(12)]);
}

test.each([png, gif, jpeg])("a picture is small when a page could not be read in it: %o", (make) => {
  expect(isSmallPicture(make(599, 900))).toBe(true);
  expect(isSmallPicture(make(600, 900))).toBe(false);
  expect(isSmallPicture(make(900, 600))).toBe(false);
  expect(isSmallPicture(make(2000, 600))).toBe(true); // a banner
});

test("a picture of which the size is not known is small when it has few bytes", () => {
  const heic = Buffer.from("\0\0\0\x18ftypheic", "latin1");
  expect(isSmallPicture(heic)).toBe(true);
  expect(isSmallPicture(Buffer.concat([heic, Buffer.alloc(100_000)]))).toBe(false);
  expect(isSmallPicture(Buffer.from("\xff\xd8\xff\xe0\0\0", "latin1"))).toBe(true); // ends before its size
});

test("a JPEG that ends right behind its size has one, and none before", () => {
  const ending = (left: number): Uint8Array => jpeg(600, 900).subarray(0, -12 - left);
  expect([0, 1].map((left) => isSmallPicture(ending(left)))).toEqual([false, true]);
});

test("what is no picture is no small one", () => {
  expect(isSmallPicture(Buffer.from("%PDF-1.7"))).toBe(false);
});

import { PDFDocument } from "pdf-lib";
import { expect, test } from "vitest";
import { pagePicture } from "../../../src/reading/page/page-picture.ts";

async function pdfOf(...pages: [number, number][]): Promise<Uint8Array> {
  const pdf = await PDFDocument.create();
  for (const size of pages) pdf.addPage(size).drawRectangle({ x: 0, y: 0, width: 9, height: 9 });
  return pdf.save();
}

/** How many pages there are, and how large the picture is. ISO/IEC 15948 §11.2.2 */
async function made(bytes: Uint8Array, page: number, width: number) {
  const { pages, png } = await pagePicture(bytes, { page, width });
  return [pages, ...(png === undefined ? [] : [16, 20].map((at) => Buffer.from(png).readUInt32BE(at)))];
}

test("a page is as high as it is against its width", async () => {
  const bytes = await pdfOf([100, 100], [200, 300]);
  expect(await made(bytes, 1, 50)).toEqual([2, 50, 50]);
  expect(await made(bytes, 2, 50)).toEqual([2, 50, 75]);
});

test("a page that is not there has no picture, nor has a file that cannot be opened", async () => {
  const bytes = await pdfOf([100, 100]);
  expect(await made(bytes, 0, 50)).toEqual([1]);
  expect(await made(bytes, 2, 50)).toEqual([1]);
  expect(await made(Buffer.from("no PDF"), 1, 50)).toEqual([0]);
});

test("a picture has four million pixels at most, and one line at least", async () => {
  const bytes = await pdfOf([100, 400], [1000, 3], [1, 1]);
  expect(await made(bytes, 1, 1000)).toEqual([3, 1000, 4000]);
  expect(await made(bytes, 1, 1001)).toEqual([3]);
  expect(await made(bytes, 2, 10)).toEqual([3, 10, 1]);
  expect(await made(bytes, 3, 10)).toEqual([3, 10, 10]);
});

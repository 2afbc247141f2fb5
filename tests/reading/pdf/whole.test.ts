import { expect, test } from "vitest";
import { isWhole } from "../../../src/reading/pdf/whole.ts";
import { sampleSheets } from "../../make/odd-sheets/sheets.ts";

const [sample] = await sampleSheets();
if (sample === undefined) throw new Error("no sheet");
const sheet = Buffer.from(sample.filled);
const text = sheet.toString("latin1");

/** The sheet with a revision behind it that changes nothing. */
const table = Number(/startxref\s+(\d+)/.exec(text)?.[1]);
const revision = `\n999 0 obj\nnull\nendobj\nxref\n0 0\ntrailer\n<</Prev ${table}>>\nstartxref\n`;
const revised = Buffer.concat([
  sheet,
  Buffer.from(`${revision}${sheet.length + revision.indexOf("xref")}\n%%EOF\n`),
]);

test.each<[string, Uint8Array]>([
  ["as it was saved", sheet],
  ["with a revision", revised],
  ["with line ends and noughts behind it", Buffer.concat([sheet, Buffer.from("\r\n\0\0\r\n")])],
  ["with other bytes before it", Buffer.concat([Buffer.from("\r\n\r\n"), sheet])],
])("a sheet %s is whole", (_, bytes) => {
  expect(isWhole(bytes)).toBe(true);
});

/** The sheet with a byte changed near the end of its n-th packed stream of objects. */
function spoilt(n: number): Uint8Array {
  const ends = [...text.matchAll(/\/ObjStm[\s\S]*?endstream/g)].map(
    ({ index, 0: all }) => index + all.length,
  );
  const at = (ends[n] ?? 0) - "endstream".length - 40;
  const bytes = Buffer.from(sheet);
  bytes[at] = (bytes[at] ?? 0) ^ 1;
  return bytes;
}

test.each<[string, Uint8Array]>([
  ["without its end", sheet.subarray(0, -20)],
  ["cut within its last revision", revised.subarray(0, -60)],
  ["cut at the very beginning of its last revision", revised.subarray(0, sheet.length + 4)],
  ["whose end leads elsewhere", Buffer.from(text.replace(/startxref\s+\d+/, "startxref\n123"), "latin1")],
  ["with a changed byte in packed objects", spoilt(0)],
  ["that is nothing", new Uint8Array()],
])("a sheet %s is not", (_, bytes) => {
  expect(isWhole(bytes)).toBe(false);
});

import { deflateSync } from "node:zlib";
import { expect, test } from "vitest";
import { isPdf } from "../../../src/reading/pdf/is-pdf.ts";
import { filesIn, isWhole } from "../../../src/reading/pdf/whole.ts";
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

/** A file with these bytes at its beginning. Its end leads to its table, or so many bytes before or behind it. */
function withStart(start: Uint8Array | string, { beside = 0, tail = "", before = "" } = {}): Uint8Array {
  const head = Buffer.concat([
    Buffer.from(`${before}%PDF-1.5\n`),
    typeof start === "string" ? Buffer.from(start) : start,
    Buffer.from("\n"),
  ]);
  return Buffer.concat([
    head,
    Buffer.from(
      `xref\n0 1\n0000000000 65535 f \ntrailer\n<<>>\nstartxref\n${head.length + beside}\n%%EOF\n${tail}`,
    ),
  ]);
}

/** An object of packed objects; its entries may be others, and so may its bytes. */
function packed(
  bytes: Uint8Array,
  entries = "/Type/ObjStm/Filter/FlateDecode",
  end = "endstream\nendobj",
): Uint8Array {
  return Buffer.concat([Buffer.from(`1 0 obj\n<<${entries}>>stream\r\n`), bytes, Buffer.from(end)]);
}
const sound = deflateSync("objects");
const broken = Buffer.from(sound.map((byte, i) => (i === sound.length - 1 ? byte ^ 1 : byte)));
const types = "/Type/ObjStm";

test.each<[string, Uint8Array, boolean]>([
  ["whose end leads to its table", withStart(""), true],
  ["whose end leads a line end before its table", withStart("", { beside: -1 }), true],
  ["whose end leads two bytes before its table", withStart("x", { beside: -2 }), false],
  ["whose end leads into its table", withStart("", { beside: 1 }), false],
  ["whose end counts from its header", withStart("", { before: "\n".repeat(50), beside: -50 }), true],
  [
    "whose end counts from elsewhere",
    withStart("x".repeat(100), { before: "\n".repeat(50), beside: -60 }),
    false,
  ],
  ["with its end within the last 2048 bytes", withStart("", { tail: " ".repeat(2_029) }), true],
  ["with its end before the last 2048 bytes", withStart("", { tail: " ".repeat(2_030) }), false],
  ["with a number behind its end", withStart("", { tail: "7" }), false],
  ["with an object behind its end", withStart("", { tail: "x\n7 0 obj" }), false],
  ["with other words behind its end", withStart("", { tail: "objects" }), true],
  ["with sound packed objects", withStart(packed(sound)), true],
  ["with broken packed objects", withStart(packed(broken)), false],
  ["with a broken table", withStart(packed(broken, "/Type/XRef/Filter [ /FlateDecode ]")), false],
  [
    "with broken objects, locked",
    withStart(packed(broken, `${types}/Filter/FlateDecode/Encrypt 9 0 R`)),
    true,
  ],
  ["with broken objects in another packing", withStart(packed(broken, `${types}/Filter/LZWDecode`)), true],
  [
    "with broken objects, packed twice",
    withStart(packed(broken, `${types}/Filter[/FlateDecode/FlateDecode]`)),
    true,
  ],
  ["with a broken picture", withStart(packed(broken, "/Subtype/Image/Filter/FlateDecode")), true],
  [
    "with something of a longer name, broken",
    withStart(packed(broken, "/ObjStmX 1/Filter/FlateDecode")),
    true,
  ],
  [
    "with broken objects whose entries take up to 2048 bytes",
    withStart(packed(broken, `/N ${"1".repeat(2_006)}${types}/Filter/FlateDecode`)),
    false,
  ],
  [
    "with broken objects whose entries are endless",
    withStart(packed(broken, `/N ${"1".repeat(2_007)}${types}/Filter/FlateDecode`)),
    true,
  ],
  [
    "with a broken picture behind sound objects",
    withStart(Buffer.concat([packed(sound), Buffer.from("\n"), packed(broken, "/Filter/FlateDecode")])),
    true,
  ],
  [
    "with broken objects behind sound ones",
    withStart(Buffer.concat([packed(sound), Buffer.from("\n"), packed(broken)])),
    false,
  ],
  [
    "with what looks like broken objects, and stands in none",
    withStart(`1 0 obj\nnull\nendobj\n<<${types}/Filter/FlateDecode>>stream\r\nnonsense`),
    true,
  ],
  [
    "with more packed objects than are looked at",
    withStart(packed(deflateSync(Buffer.alloc(65_000_000)))),
    true,
  ],
])("a file %s is whole: %s", (_, bytes, whole) => {
  expect(isWhole(bytes)).toBe(whole);
});

test.each([
  ["one", "%PDF-1.7\n%%EOF\n", 1],
  ["two", "%PDF-1.7\n%%EOF\n%PDF-1.7\n%%EOF\n", 2],
  ["three", "%PDF-1.7\n%%EOF%PDF-1.7\n%%EOF\n \n%PDF-1.7", 3],
  ["one that speaks of another", "%PDF-1.7\n%PDF-1.4\n%%EOF", 1],
  ["one, with other words before its second header", "%PDF-1.7\n%%EOF\nwords %PDF-1.7", 1],
  ["two, 59 blanks apart", `%PDF-1.7\n%%EOF${" ".repeat(59)}%PDF-1.7`, 2],
  ["one, and another far behind", `%PDF-1.7\n%%EOF${" ".repeat(60)}%PDF-1.7`, 1],
  ["nothing", "", 1],
])("in %s stand so many files", (_, content, count) => {
  expect(filesIn(Buffer.from(content))).toBe(count);
});

// Adobe PDF Reference 1.7, Appendix H, note 13
test("a PDF has its header within the first 1024 bytes", () => {
  const at = (before: number): Uint8Array => Buffer.from(`${" ".repeat(before)}%PDF-1.7`);
  expect([0, 1_019, 1_020, 3_000].map((before) => isPdf(at(before)))).toEqual([true, true, false, false]);
});

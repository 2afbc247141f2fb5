import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { attribute, winmailOf } from "../../../src/demo/tnef.ts";
import { numbers } from "../../../src/demo/zip.ts";
import { readTnef } from "../../../src/reading/archive/tnef.ts";
import { temporaryFolder } from "../../make/desk.ts";
import { hasProgram } from "../../make/program.ts";

const files = [
  { file: "S-104 plate sheet, corrected.pdf", bytes: Buffer.from("%PDF-1.7 one") },
  { file: "Büro.pdf", bytes: Buffer.from("%PDF-1.7 two") },
  { file: "empty", bytes: Buffer.alloc(0) },
];
const head = numbers([0x223e9f78, 4], [1, 2]);
const begin = attribute(2, 0x00069002, Buffer.alloc(14));
const data = attribute(2, 0x0006800f, Buffer.from("%PDF-1.7 one"));
const title = attribute(2, 0x00018010, Buffer.from("ONE.PDF\0"));

/** A property of an id and a type, with one value of any length. MS-OXTNEF §2.1.3.4 */
const property = (tag: number, value: Uint8Array): Buffer =>
  Buffer.concat([numbers([tag, 4], [1, 4], [value.length, 4]), value, Buffer.alloc(-value.length & 3)]);
const properties = (...all: Buffer[]): Buffer =>
  attribute(2, 0x00069005, Buffer.concat([numbers([all.length, 4]), ...all]));

const read = (...attributes: Buffer[]): unknown[] =>
  readTnef(Buffer.concat([head, ...attributes])).files.map(({ name, bytes }) => [name, String(bytes)]);

test("files come out with their long names", () => {
  expect(readTnef(winmailOf(files))).toEqual({
    files: files.map(({ file, bytes }) => ({ name: file, bytes, looks: false })),
    left: [],
  });
});

test("a letter without files has none", () => {
  expect(readTnef(winmailOf([]))).toEqual({ files: [], left: [] });
  expect(readTnef(head)).toEqual({ files: [], left: [] });
});

test("a file has its short name where there is no long one, and none where there is neither", () => {
  expect(read(begin, title, data, begin, data)).toEqual([
    ["ONE.PDF", "%PDF-1.7 one"],
    ["", "%PDF-1.7 one"],
  ]);
});

test("a file counts even where nothing says that it begins", () => {
  expect(read(data, data)).toEqual([
    ["", "%PDF-1.7 one"],
    ["", "%PDF-1.7 one"],
  ]);
});

test("a long name stands in 8-bit letters or Unicode, among properties of every kind", () => {
  const others = [
    numbers([0x37050003, 4], [1, 4]), // a number
    numbers([0x0e1b000b, 4], [1, 4]), // true, two bytes and two to fill up
    numbers([0x30070040, 4], [0, 6], [0, 2]), // a time
    numbers([0x00001003, 4], [2, 4], [1, 4], [2, 4]), // two numbers
    // A property with a name of its own: GUID, kind, length, name. 0x80000000 is beyond what ids are signed for.
    Buffer.concat([
      numbers([0x80000003, 4]),
      Buffer.alloc(16),
      numbers([1, 4], [6, 4]),
      Buffer.from("a\0b\0\0\0\0\0"),
      numbers([7, 4]),
    ]),
    Buffer.concat([numbers([0x80010003, 4]), Buffer.alloc(16), numbers([0, 4], [5, 4], [7, 4])]),
  ];
  const name = property(0x3707001e, Buffer.from("long name.pdf\0"));
  expect(read(begin, title, data, properties(...others, name))).toEqual([["long name.pdf", "%PDF-1.7 one"]]);
});

// MS-OXCDATA §2.11.1: bytes of a value, for types whose values have one size.
test.each([
  [0x02, 2],
  [0x03, 4],
  [0x04, 4],
  [0x05, 8],
  [0x06, 8],
  [0x07, 8],
  [0x0a, 4],
  [0x0b, 2],
  [0x14, 8],
  [0x40, 8],
  [0x48, 16],
])("a name stands behind a property of type %i, whose value has %i bytes", (type, size) => {
  const name = property(0x3707001e, Buffer.from("long.pdf\0"));
  const value = Buffer.alloc(Math.ceil(size / 4) * 4, 9);
  const one = Buffer.concat([numbers([0x0e1b_0000 + type, 4]), value]);
  const two = Buffer.concat([numbers([0x0e1b_1000 + type, 4], [2, 4]), value, value]);
  for (const before of [one, two])
    expect(read(begin, data, properties(before, name))).toEqual([["long.pdf", "%PDF-1.7 one"]]);
});

test("a file whose bytes are missing is left, and one of which not even its length came is none", () => {
  const left = (length: number): number =>
    readTnef(Buffer.concat([head, begin, data.subarray(0, length)])).left.length;
  expect([left(8), left(9), left(10)]).toEqual([0, 1, 1]);
});

test("a forwarded letter comes out as a container of its own", () => {
  const inner = winmailOf(files);
  const object = property(0x3701000d, Buffer.concat([Buffer.alloc(16, 9), inner]));
  const name = property(0x3001001e, Buffer.from("FW: sheets\0"));
  const [letter] = readTnef(Buffer.concat([head, begin, properties(object, name)])).files;
  expect(letter?.name).toBe("FW: sheets");
  expect(readTnef(letter?.bytes ?? inner).files).toHaveLength(3);
});

test("a hidden logo belongs to the looks, a hidden sheet does not", () => {
  const hidden = properties(numbers([0x7ffe000b, 4], [1, 4]));
  const logo = attribute(2, 0x0006800f, Buffer.from("GIF89a\x09\0\x09\0"));
  const found = readTnef(Buffer.concat([head, begin, logo, hidden, begin, data, hidden])).files;
  expect(found.map(({ looks }) => looks)).toEqual([true, false]);
});

test.each([
  ["says that it is not hidden", properties(numbers([0x7ffe000b, 4], [0, 4]))],
  // MS-OXTNEF §2.1.3.4: true and false are two bytes; what fills up to four says nothing.
  ["says so, with anything to fill up", properties(numbers([0x7ffe000b, 4], [0, 2], [0xffff, 2]))],
  ["says nothing of it", properties(numbers([0x37050003, 4], [1, 4]))],
])("a logo is a file of the sender's where the letter %s", (_, said) => {
  const logo = attribute(2, 0x0006800f, Buffer.from("GIF89a\x09\0\x09\0"));
  const found = readTnef(Buffer.concat([head, begin, logo, said])).files;
  expect(found.map(({ looks }) => looks)).toEqual([false]);
});

test("a document that lies in its properties comes out as it is, beside no bytes of its own", () => {
  const bytes = property(0x37010102, Buffer.from("%PDF-1.7 two"));
  const name = property(0x3704001e, Buffer.from("TWO.PDF\0"));
  expect(read(begin, properties(bytes, name))).toEqual([["TWO.PDF", "%PDF-1.7 two"]]);
  expect(read(begin, data, properties(bytes, name))).toEqual([["TWO.PDF", "%PDF-1.7 one"]]);
});

test("the longest name is taken, whichever comes first", () => {
  const long = property(0x3707001e, Buffer.from("long.pdf\0"));
  const shown = property(0x3001001e, Buffer.from("shown.pdf\0"));
  const short = property(0x3704001e, Buffer.from("SHORT.PDF\0"));
  expect(read(begin, data, properties(short, shown, long))).toEqual([["long.pdf", "%PDF-1.7 one"]]);
  expect(read(begin, data, properties(short, shown))).toEqual([["shown.pdf", "%PDF-1.7 one"]]);
});

test("a file whose checksum is wrong, or that ends before its length, is left", () => {
  const wrong = Buffer.from(data);
  wrong.writeUInt8(data.readUInt8(10) ^ 1, 10);
  const bytes = Buffer.concat([head, begin, title, wrong, begin, data]);
  expect(readTnef(bytes)).toMatchObject({ files: [{}], left: [{ name: "ONE.PDF", kind: "damaged" }] });
  expect(readTnef(bytes.subarray(0, -3)).left).toHaveLength(2);
});

test("lengths that lie end the reading and nothing else", () => {
  const lying = numbers([0x00001003, 4], [0xffffffff, 4]); // four thousand million numbers
  const nothings = numbers([0x00011001, 4], [0xffffffff, 4]); // as many values of no size
  for (const lie of [lying, nothings, numbers([0x3707001f, 4], [1, 4], [0xfffffff0, 4])])
    expect(read(begin, title, data, properties(lie))).toEqual([["ONE.PDF", "%PDF-1.7 one"]]);
  const endless = Buffer.concat([numbers([2, 1], [0x0006800f, 4], [0xffffffff, 4])]);
  expect(readTnef(Buffer.concat([head, begin, data, endless])).files).toHaveLength(1);
});

test("a container cut short anywhere neither throws nor gives half a file", () => {
  const whole = winmailOf(files);
  for (let length = 0; length < whole.length; length++)
    for (const { bytes } of readTnef(whole.subarray(0, length)).files)
      expect([0, 12]).toContain(bytes.length);
});

test.skipIf(!hasProgram("tnef"))("the program tnef finds the same in what we make", () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, "winmail.dat"), winmailOf(files));
  expect(spawnSync("tnef", ["-C", folder, join(folder, "winmail.dat")]).status).toBe(0);
  const found = readdirSync(folder).filter((name) => name !== "winmail.dat");
  expect(found.map((name) => readFileSync(join(folder, name), "latin1")).toSorted()).toEqual(
    files.map(({ bytes }) => bytes.toString("latin1")).toSorted(),
  );
});

import { deflateSync } from "node:zlib";
import { PDFDict, PDFDocument, PDFHexString, PDFName, type PDFObject, PDFString } from "pdf-lib";
import { expect, test } from "vitest";
import { contentKey, objectKey } from "../../../src/reading/page/content-key.ts";
import type { Entries } from "../../make/odd-pdf.ts";

const { context } = await PDFDocument.create();
const obj = (value: unknown): PDFObject => context.obj(value as Entries);
const registered = (value: unknown) => context.register(obj(value));
const stream = (content: string | Uint8Array, entries: Entries = {}) => context.stream(content, entries);

function circle(): PDFObject {
  const dict = context.obj({ Kids: [] });
  dict.set(PDFName.of("Self"), context.register(dict));
  return dict;
}
const chain = (length: number): PDFObject =>
  obj(Array.from({ length: length - 1 }, (_, i) => context.obj({ N: i })));

test.each<[string, PDFObject, PDFObject]>([
  ["a string however it is written", PDFString.of("A"), PDFHexString.of("41")],
  ["a reference and what it leads to", obj([registered([1])]), obj([[1]])],
  ["entries in another order", obj({ A: 1, B: 2 }), obj({ B: 2, A: 1 })],
  ["what leads up", obj({ A: 1, Parent: registered({}) }), obj({ A: 1 })],
  ["packing", stream("text"), stream(deflateSync("text"), { Filter: "FlateDecode" })],
  ["a page, whatever is on it", obj([{ Type: "Page", Rotate: 90 }]), obj([{ Type: "Page" }])],
  [
    "a field of one name",
    obj([{ FT: "Tx", T: PDFString.of("a"), Ff: 1 }]),
    obj([{ FT: "Tx", T: PDFString.of("a") }]),
  ],
  ["a circle", circle(), circle()],
])("%s makes no difference", (_, one, other) => {
  expect(objectKey(one)).toBe(objectKey(other));
  expect(objectKey(one)).toMatch(/^[0-9a-f]{64}$/);
});

test.each<[string, PDFObject, PDFObject]>([
  ["a letter", PDFString.of("A"), PDFString.of("B")],
  ["a number", obj([1]), obj([2])],
  ["a string and a name", obj([PDFString.of("A")]), obj(["A"])],
  ["an entry's name", obj({ A: 1 }), obj({ B: 1 })],
  ["the order of a list", obj([1, 2]), obj([2, 1])],
  ["a list and two", obj([[1], [2]]), obj([[1, [2]]])],
  ["what a stream holds", stream("one"), stream("two")],
  ["what a stream says of itself", stream("one", { A: 1 }), stream("one", { A: 2 })],
  ["how a dictionary that is no stream is packed", obj({ Filter: "A" }), obj({ Filter: "B" })],
  [
    "fields of two names",
    obj([{ FT: "Tx", T: PDFString.of("a") }]),
    obj([{ FT: "Tx", T: PDFString.of("b") }]),
  ],
  ["a page and a dictionary", obj([{ Type: "Page" }]), obj([{ Type: "Pages" }])],
])("%s does", (_, one, other) => {
  expect(objectKey(one)).not.toBe(objectKey(other));
});

test("which of two alike is met again makes a difference", () => {
  const [one, two] = [registered([1]), registered([1])];
  expect(objectKey(obj([one, two, one]))).not.toBe(objectKey(obj([one, two, two])));
  expect(objectKey(undefined)).toBe(objectKey(undefined));
});

test("what is endless has no key", () => {
  expect([2_000, 2_001].map((length) => objectKey(chain(length)) !== undefined)).toEqual([true, false]);
  const file = (bytes: number) => stream(deflateSync(Buffer.alloc(bytes)), { Filter: "FlateDecode" });
  expect([8_000_000, 8_000_001].map((bytes) => objectKey(file(bytes)) !== undefined)).toEqual([true, false]);
  expect(objectKey(stream("x", { Filter: "Unknown" }))).toBeUndefined();
});

test("the key of a page is that of its content and of what that draws with, up to a size", () => {
  const key = (content: string, resources: Entries | undefined) =>
    contentKey({
      dict: obj({ Contents: context.register(stream(content)) }) as PDFDict,
      resources: resources && (obj(resources) as PDFDict),
    });
  expect(key("q", { A: 1 })).toBe(key("q", { A: 1 }));
  expect(
    new Set([key("q", { A: 1 }), key("Q", { A: 1 }), key("q", { A: 2 }), key("q", undefined)]).size,
  ).toBe(4);
  expect([400_000, 400_001].map((length) => typeof key("q".repeat(length), {}))).toEqual([
    "string",
    "undefined",
  ]);
  const font = (bytes: number): Entries => ({
    F: context.register(stream(deflateSync(Buffer.alloc(bytes)), { Filter: "FlateDecode" })),
  });
  expect([200_000, 200_001].map((bytes) => typeof key("q", font(bytes)))).toEqual(["string", "undefined"]);
});

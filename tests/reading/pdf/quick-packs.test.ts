import { PDFDict, type PDFDocument, PDFName, PDFRef } from "pdf-lib";
import { expect, test } from "vitest";
import { openForWalking } from "../../../src/reading/pdf/walked-pdf.ts";
import { catalog, ending, packOf, pages, rowOf, streamOf, withObjects } from "../../make/pdf-file.ts";

/** A file whose object 3 is packed, as an element of its tree of tags is. */
function withElement(content: string): Uint8Array {
  const begun = withObjects([
    [1, catalog],
    [2, pages],
    [4, packOf([[3, content]])],
  ]);
  const at = (number: number): number => begun.at.get(number) ?? 0;
  const rows = [
    [0, 0, 0],
    [1, at(1), 0],
    [1, at(2), 0],
    [2, 4, 0],
    [1, at(4), 0],
  ].flatMap((row) => rowOf([1, 2, 1], row));
  const table = streamOf("/Type /XRef /W [1 2 1] /Size 5 /Root 1 0 R", Buffer.from(rows));
  return Buffer.from(withObjects([[5, table]], begun).text + ending(begun.text.length), "latin1");
}

const element = "<<\n/Type /StructElem\n/S /P\n/K [0 1]\n>>";

const kindOf = ({ context }: PDFDocument): string | undefined => {
  const dict = context.lookup(PDFRef.of(3));
  return dict instanceof PDFDict ? dict.get(PDFName.of("S"))?.toString() : undefined;
};

test("an element of the tree of tags is read when it is asked for, and a broken one is empty", async () => {
  expect(kindOf(await openForWalking(withElement(element)))).toBe("/P");
  expect(kindOf(await openForWalking(withElement("<<\n/Type /StructElem\n/S ]")))).toBeUndefined();
});

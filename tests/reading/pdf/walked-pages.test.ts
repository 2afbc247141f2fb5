import { PDFDict, PDFDocument, PDFName } from "pdf-lib";
import { expect, test } from "vitest";
import { contentOfPage, firstPages } from "../../../src/reading/pdf/walked-pages.ts";
import { traitsOf } from "../../../src/reading/pdf/walked-pdf.ts";
import type { Entries } from "../../make/odd-pdf.ts";

async function documentOf(pages: number) {
  const pdf = await PDFDocument.create();
  for (let n = 1; n <= pages; n++) pdf.addPage().node.set(PDFName.of("N"), pdf.context.obj(n));
  await pdf.flush();
  const numbers = (count: number) =>
    firstPages(pdf, count).map(({ dict }) => Number(String(dict.get(PDFName.of("N")))));
  return { pdf, numbers };
}

test("the first pages come in their order, and no more than are asked for", async () => {
  const { numbers } = await documentOf(5);
  expect([numbers(3), numbers(9)]).toEqual([
    [1, 2, 3],
    [1, 2, 3, 4, 5],
  ]);
});

test("2,000 nodes of the tree of pages are looked at", async () => {
  // the root is one of them
  expect((await documentOf(2_100)).numbers(9_999)).toHaveLength(1_999);
});

test("pages have the resources of the branch that they stand on, unless they have their own", async () => {
  const { pdf } = await documentOf(0);
  const resources = (name: string) =>
    pdf.context.obj({ Resources: { [name]: {} } }).get(PDFName.of("Resources"));
  const [above, own] = [resources("Above") as PDFDict, resources("Own") as PDFDict];
  const leaf = pdf.context.register(pdf.context.obj({ Type: "Page" }));
  const other = pdf.context.register(pdf.context.obj({ Type: "Page", Resources: own }));
  const branch = pdf.context.obj({ Resources: above, Kids: [leaf, other, leaf] });
  pdf.catalog.set(PDFName.of("Pages"), pdf.context.obj({ Kids: [branch, 7] }));
  // A page that stands there twice is one page.
  expect(firstPages(pdf, 9).map((page) => page.resources)).toEqual([above, own]);
  pdf.catalog.set(PDFName.of("Pages"), pdf.context.obj(7));
  expect(firstPages(pdf, 9)).toEqual([]);
});

test("the streams of a page are read as one, up to as many bytes as are asked for", async () => {
  const { pdf } = await documentOf(1);
  const [page] = firstPages(pdf, 1);
  if (page === undefined) throw new Error("no page");
  const streams = ["0123", "45"].map((text) => pdf.context.register(pdf.context.stream(text)));
  page.dict.set(PDFName.of("Contents"), pdf.context.obj([...streams, 7]));
  expect(contentOfPage(page, 7)).toBe("0123\n45\n");
  expect(() => contentOfPage(page, 6)).toThrow("endless");
});

// ISO 32000-1:2008 tables 28 and 218
test.each<[Entries, object]>([
  [{}, {}],
  [{ AcroForm: { XFA: [] } }, { xfa: true }],
  [{ AcroForm: { NeedAppearances: "true" } }, {}],
  [{ AcroForm: 7, NeedsRendering: "true", Collection: 7 }, {}],
  [{ Collection: {} }, { portfolio: true }],
])("a document with %j is %j", async (entries, traits) => {
  const { pdf } = await documentOf(1);
  for (const [key, value] of Object.entries(entries))
    pdf.catalog.set(PDFName.of(key), pdf.context.obj(value as never));
  expect(traitsOf(pdf)).toEqual({
    xfa: false,
    needsRendering: false,
    portfolio: false,
    redrawn: false,
    ...traits,
  });
});

test("a document says by a plain yes that it is laid out anew, and its fields drawn anew", async () => {
  const { pdf } = await documentOf(1);
  for (const yes of [true, false]) {
    pdf.catalog.set(PDFName.of("NeedsRendering"), pdf.context.obj(yes));
    pdf.catalog.set(PDFName.of("AcroForm"), pdf.context.obj({ NeedAppearances: yes }));
    expect(traitsOf(pdf)).toMatchObject({ needsRendering: yes, redrawn: yes, xfa: false });
  }
});

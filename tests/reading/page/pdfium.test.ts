import { degrees, PDFDocument, PDFName, PDFString } from "pdf-lib";
import { expect, test } from "vitest";
import { type Rendering, withRendered } from "../../../src/reading/page/pdfium.ts";
import type { Entries } from "../../make/odd-pdf.ts";

const box = { Type: "XObject", Subtype: "Form", BBox: [0, 0, 10, 10] };

/** A page of 100 by 50 points: ink of its own at the left, a field in the middle, two marks at the right. */
async function made(): Promise<Uint8Array> {
  const pdf = await PDFDocument.create();
  const page = pdf.addPage([100, 50]);
  page.drawRectangle({ x: 0, y: 0, width: 10, height: 10 });
  const field = pdf.getForm().createTextField("a");
  field.setText("X");
  field.addToPage(page, { x: 40, y: 10, width: 10, height: 10, borderWidth: 0 });
  const look = pdf.context.register(pdf.context.stream("0 0 10 10 re f", box));
  for (const x of [70, 85]) {
    const mark = { Type: "Annot", Subtype: "Stamp", Rect: [x, 20, x + 10, 30], F: 4, AP: { N: look } };
    page.node.addAnnot(pdf.context.register(pdf.context.obj(mark as Entries)));
  }
  return pdf.save();
}
const bytes = await made();

/** The columns of ten pixels that have any ink. */
async function inked(rendering: Partial<Rendering>, file = bytes): Promise<number[] | undefined> {
  return withRendered(file, (pdf) => {
    const { pixels, width } = pdf.render({ page: 1, width: 100, height: 50, ...rendering });
    const columns = [...pixels].flatMap((colour, at) =>
      (colour & 0xffffff) === 0xffffff ? [] : [Math.floor((at % width) / 10) * 10],
    );
    return [...new Set(columns)].toSorted((a, b) => a - b);
  });
}

test.each<[string, Partial<Rendering>, number[]]>([
  ["alone", { layers: "page" }, [0]],
  ["with its fields", {}, [0, 40]],
  ["with all that lies on it", { layers: "all" }, [0, 40, 70, 80, 90]],
  ["without one mark", { layers: "all", without: [2] }, [0, 40, 70]],
  ["without its first annotation and its last", { layers: "all", without: [0, 2] }, [0, 70]],
  ["in a part", { part: [35, 0, 85, 50], layers: "all" }, [10, 20, 70, 80]],
])("a page is drawn %s", async (_, rendering, columns) => {
  expect(await inked(rendering)).toEqual(columns);
});

test("a page and its fields are drawn where they are, to the pixel", async () => {
  const pdf = await PDFDocument.create();
  const page = pdf.addPage([100, 50]);
  page.drawRectangle({ x: 10, y: 20, width: 5, height: 6 });
  const [on, off] = ["0 0 7 8 re f", ""].map((content) =>
    pdf.context.register(pdf.context.stream(content, { ...box, BBox: [0, 0, 7, 8] })),
  );
  const tick = {
    Type: "Annot",
    Subtype: "Widget",
    FT: "Btn",
    F: 4,
    AS: "Yes",
    AP: { N: { Yes: on, Off: off } },
  };
  const widget = pdf.context.register(
    pdf.context.obj({ ...tick, T: PDFString.of("a"), Rect: [60, 30, 67, 38] } as Entries),
  );
  page.node.addAnnot(widget);
  pdf.catalog.set(PDFName.of("AcroForm"), pdf.context.obj({ Fields: [widget] }));
  const dark = await withRendered(await pdf.save(), ({ render }) => {
    const { pixels } = render({ page: 1, width: 100, height: 50 });
    return [...pixels].flatMap((colour, at) =>
      (colour & 0xffffff) === 0 ? [[at % 100, Math.floor(at / 100)]] : [],
    );
  });
  const block = (left: number, top: number, right: number, bottom: number) =>
    Array.from({ length: bottom - top }, (_, y) =>
      Array.from({ length: right - left }, (_, x) => [left + x, top + y]),
    ).flat();
  // The first is drawn from the bottom of a page of 50 points up.
  expect(dark).toEqual([...block(60, 12, 67, 20), ...block(10, 24, 15, 30)]);
});

test("a page that is turned is as wide as it is seen, and upright in a part", async () => {
  const pdf = await PDFDocument.load(bytes);
  pdf.getPage(0).setRotation(degrees(90));
  const turned = await pdf.save();
  expect(await withRendered(turned, ({ sizeOf }) => sizeOf(1))).toEqual([50, 100]);
  expect(await withRendered(bytes, ({ sizeOf }) => sizeOf(1))).toEqual([100, 50]);
  expect(await inked({ part: [0, 0, 100, 50], layers: "page" }, turned)).toEqual([0]);
});

test("pixels are written over those that are given, if they are as many", async () => {
  const over = (count: number) =>
    withRendered(bytes, (pdf) => {
      const given = new Int32Array(count);
      return pdf.render({ page: 1, width: 100, height: 50, over: given }).pixels === given;
    });
  expect([await over(5_000), await over(4_999)]).toEqual([true, false]);
});

test("a page with the objects that are known is taken as it is known to look, and its fields are drawn", async () => {
  const known = (change: (objects: Float32Array) => Float32Array, layers?: Rendering["layers"]) =>
    withRendered(bytes, (pdf) => {
      const picture = { width: 100, height: 50, pixels: new Int32Array(5_000).fill(-1) };
      const objects = change(pdf.objectsOn(1));
      const one = pdf.render({
        page: 1,
        width: 100,
        height: 50,
        known: { picture, objects },
        ...(layers === undefined ? {} : { layers }),
      });
      // The known picture has no ink at the left.
      return [
        (one.pixels[49 * 100 + 2] ?? 0) === -1,
        one.pixels.some((colour, at) => at % 100 >= 40 && colour !== -1),
      ];
    });
  expect(await known((objects) => objects)).toEqual([true, true]);
  expect(await known((objects) => objects.map((number, i) => (i === 4 ? number + 1 : number)))).toEqual([
    false,
    true,
  ]);
  expect(await known((objects) => objects.subarray(1))).toEqual([false, true]);
  expect(await known((objects) => Float32Array.of(...objects, 1))).toEqual([false, true]);
  expect(await known((objects) => objects, "page")).toEqual([false, false]);
});

test("the objects of a page are told by their kinds and places, up to 5,000", async () => {
  const objects = await withRendered(bytes, (pdf) => pdf.objectsOn(1));
  // fpdf_edit.h: a path is of kind 2.
  expect([...(objects ?? [])]).toEqual([2, 0, 0, 10, 10]);
  const pdf = await PDFDocument.create();
  const two = pdf.context.stream("1 2 3 4 re f 10 20 30 40 re f");
  pdf.addPage().node.addContentStream(pdf.context.register(two));
  const many = pdf.context.stream("0 0 1 1 re f ".repeat(5_001));
  pdf.addPage().node.addContentStream(pdf.context.register(many));
  const found = await withRendered(await pdf.save(), (open) => [1, 2].map((page) => open.objectsOn(page)));
  expect([...(found?.[0] ?? [])]).toEqual([2, 1, 2, 4, 6, 2, 10, 20, 40, 60]);
  expect(found?.[1]).toHaveLength(25_000);
});

test("a file that cannot be opened is not, and a page that is not there throws", async () => {
  expect(await withRendered(Buffer.from("no PDF"), () => 1)).toBeUndefined();
  await expect(withRendered(bytes, (pdf) => pdf.sizeOf(2))).rejects.toThrow("page 2");
  // The next call has a fresh one.
  expect(await withRendered(bytes, (pdf) => pdf.pageCount)).toBe(1);
});

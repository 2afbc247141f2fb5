import { PDFDocument, PDFName, type PDFRef } from "pdf-lib";
import { expect, test } from "vitest";
import { isDrawn, paintedOn } from "../../../src/reading/pdf/painted.ts";
import { firstPages } from "../../../src/reading/pdf/walked-pages.ts";
import { openForWalking } from "../../../src/reading/pdf/walked-pdf.ts";

interface Making {
  readonly image: PDFRef;
  /** A drawing with others in it. */
  readonly form: (content: string, objects: Readonly<Record<string, PDFRef>>, entries?: object) => PDFRef;
}

/** What is painted on a page with this content and these objects. */
async function painted(content: string, objects: (making: Making) => Record<string, PDFRef>) {
  const pdf = await PDFDocument.create();
  const page = pdf.addPage([612, 792]);
  const { context } = pdf;
  const image = context.register(
    context.stream("x", { Type: "XObject", Subtype: "Image", Width: 1, Height: 1 }),
  );
  const form: Making["form"] = (content, objects, entries = {}) =>
    context.register(
      context.stream(content, {
        Type: "XObject",
        Subtype: "Form",
        BBox: [0, 0, 1, 1],
        Resources: { XObject: objects },
        ...entries,
      }),
    );
  page.node.set(PDFName.of("Resources"), context.obj({ XObject: objects({ image, form }) }));
  page.node.addContentStream(context.register(context.flateStream(content)));
  const [first] = firstPages(await openForWalking(await pdf.save()), 1);
  if (first === undefined) throw new Error("no page");
  return paintedOn(first);
}

test("an image fills the unit square, wherever that has been moved to", async () => {
  expect(await painted("q 200 0 0 100 50 60 cm /A Do Q", ({ image }) => ({ A: image }))).toEqual([
    { what: "image", box: [50, 60, 250, 160] },
  ]);
});

test("an image that stands on its side", async () => {
  expect(await painted("q 0 200 -100 0 150 0 cm /A Do Q", ({ image }) => ({ A: image }))).toEqual([
    { what: "image", box: [50, 0, 150, 200] },
  ]);
});

test("an image that stands on its corner", async () => {
  expect(await painted("q 200 100 -50 150 300 10 cm /A Do Q", ({ image }) => ({ A: image }))).toEqual([
    { what: "image", box: [250, 10, 500, 260] },
  ]);
});

test("an image within drawings that are turned, one in the other", async () => {
  const marks = await painted("1 2 3 5 10 20 cm 2 1 -1 4 5 6 cm /F Do", ({ image, form }) => ({
    F: form("3 1 -2 2 8 9 cm /A Do", { A: image }, { Matrix: [1, 3, -1, 2, 3, 4] }),
  }));
  // By hand: its corner comes to 549, 906; its edges run 131, 216 and -42, -72 from there.
  expect(marks).toEqual([{ what: "image", box: [507, 834, 680, 1122] }]);
});

test("an image within a drawing that has a matrix of its own", async () => {
  const marks = await painted("2 0 0 2 10 10 cm /F Do", ({ image, form }) => ({
    F: form("5 0 0 5 0 0 cm /A Do", { A: image }, { Matrix: [1, 0, 0, 1, 3, 4] }),
  }));
  expect(marks).toEqual([{ what: "image", box: [16, 18, 26, 28] }]);
});

test("an image within a drawing whose matrix is not all of numbers, or not whole", async () => {
  const marks = await painted("/F Do /G Do", ({ image, form }) => ({
    F: form("/A Do", { A: image }, { Matrix: [1, 0, 0, 1, "x", 4] }),
    G: form("/A Do", { A: image }, { Matrix: [2] }),
  }));
  expect(marks.map(({ box }) => box)).toEqual([
    [0, 4, 1, 5],
    [0, 0, 2, 1],
  ]);
});

test("an image whose bytes stand in the page itself", async () => {
  const marks = await painted("q 10 0 0 20 0 0 cm BI /W 1 /H 1 ID x\nEI Q", () => ({}));
  expect(marks).toEqual([{ what: "image", box: [0, 0, 10, 20] }]);
});

test("Chromium's pen, and no other marked content or path", async () => {
  const content = "0 0 9 9 re f /Artifact BMC 1 1 m 2 2 l S EMC /GOOG:INKIsInker BMC 10 20 m 30 5 l S EMC";
  expect(await painted(content, () => ({}))).toEqual([{ what: "ink", box: [10, 5, 30, 20] }]);
});

test.each<[string, (making: Making) => Record<string, PDFRef>]>([
  [
    "drawings that use each other a million times over",
    ({ form }) => {
      let inner = form("", {});
      for (let depth = 0; depth < 6; depth++) inner = form("/F Do ".repeat(10), { F: inner });
      return { F: inner };
    },
  ],
  [
    "drawings nested beyond measure",
    ({ form }) => {
      let inner = form("", {});
      for (let depth = 0; depth < 20; depth++) inner = form("/F Do", { F: inner });
      return { F: inner };
    },
  ],
])("%s end the looking", async (_, objects) => {
  await expect(painted("/F Do", objects)).rejects.toThrow("endless");
});

test("content that unpacks to more than anybody draws ends the looking", async () => {
  await expect(painted("q Q ".repeat(3_000_000), () => ({}))).rejects.toThrow("endless");
});

test("a page of 2,000 images and a drawing is looked at, and of one more is not", async () => {
  const images = (count: number) =>
    painted(`${"/A Do ".repeat(count)}/F Do`, ({ image, form }) => ({ A: image, F: form("", {}) }));
  expect(await images(2_000)).toHaveLength(2_000);
  await expect(images(2_001)).rejects.toThrow("endless");
});

test.each([
  ["of 12 is looked at", 12, 1],
  ["of 13 is not", 13, "endless"],
])("an image within drawings within drawings %s", async (_, depth, comes) => {
  const looking = painted("/F Do", ({ image, form }) => {
    let inner = form("/A Do", { A: image });
    for (let level = 1; level < depth; level++) inner = form("/F Do", { F: inner });
    return { F: inner };
  });
  if (typeof comes === "number") expect(await looking).toHaveLength(comes);
  else await expect(looking).rejects.toThrow(comes);
});

test("what names no object, or no stream, is not painted; a drawing without resources has its page's", async () => {
  expect(await painted("/B Do /P Do Do", ({ form }) => ({ P: form("/A Do", {}) }))).toEqual([]);
  const inherited = await painted("/P Do", ({ image, form }) => ({
    A: image,
    P: form("/A Do", {}, { Resources: null }),
  }));
  expect(inherited).toEqual([{ what: "image", box: [0, 0, 1, 1] }]);
});

// ISO 32000-1:2008 table 59
test.each([
  ["a curve", "1 2 m 3 4 5 9 8 7 c", [1, 2, 8, 9]],
  ["a curve that begins straight", "1 2 m 5 9 8 7 v", [1, 2, 8, 9]],
  ["a curve that ends straight", "1 2 m 5 9 8 7 y", [1, 2, 8, 9]],
  ["a rectangle", "3 4 10 20 re", [3, 4, 13, 24]],
  ["a rectangle without a size", "3 4 re", [3, 4, 3, 4]],
  ["a rectangle of which nothing is known", "re", [0, 0, 0, 0]],
  ["a point that lacks its height", "5 m", [5, 0, 5, 0]],
  ["a line on paper that was to be moved, nobody knows how", "cm 1 2 m 3 4 l", [1, 2, 3, 4]],
  ["a line on paper that has been moved", "1 0 0 1 100 200 cm 1 2 m 3 4 l", [101, 202, 103, 204]],
  ["nothing", "9 9 w", [0, 0, 1, 1]],
])("the pen draws %s", async (_, path, box) => {
  expect(await painted(`/GOOG:INKIsInker BMC ${path} EMC 50 50 m EMC`, () => ({}))).toEqual([
    { what: "ink", box },
  ]);
});

test("the pen ends where its own mark ends, whatever is marked within", async () => {
  const content = "/GOOG:INK BMC 1 1 m /GOOG:INK BMC 2 2 l EMC 3 3 l EMC q 9 9 m Q /P BMC EMC";
  expect(await painted(content, () => ({}))).toEqual([{ what: "ink", box: [1, 1, 3, 3] }]);
});

test("paper that was moved is put back, as often as it was kept", async () => {
  const content = "q 2 0 0 2 0 0 cm q 5 0 0 5 0 0 cm Q /A Do Q Q /A Do";
  expect((await painted(content, ({ image }) => ({ A: image }))).map(({ box }) => box)).toEqual([
    [0, 0, 2, 2],
    [0, 0, 1, 1],
  ]);
});

test.each([
  ["twenty shapes", "0 0 9 9 re f ".repeat(20), true],
  ["nineteen", "0 0 9 9 re f ".repeat(19), false],
  ["lines and shades of every kind", "s S b B f F b* B* f* sh ".repeat(2), true],
  ["words", "BT (S) Tj (f) Tj ET ".repeat(30), false],
  ["paths that are not drawn", "0 0 9 9 re n W ".repeat(30), false],
  ["a drawing of its own", "/X Do", true],
  ["nothing", "", false],
])("a page of %s is drawn or not", async (_, content, drawn) => {
  const pdf = await PDFDocument.create();
  pdf.addPage().node.addContentStream(pdf.context.register(pdf.context.stream(content)));
  const [page] = firstPages(pdf, 1);
  expect(page && isDrawn(page)).toBe(drawn);
});

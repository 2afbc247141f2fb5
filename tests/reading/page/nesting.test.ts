import { PDFDict, PDFDocument, PDFName, type PDFRef } from "pdf-lib";
import { expect, test } from "vitest";
import { drawsBeyond } from "../../../src/reading/page/nesting.ts";
import { firstPages } from "../../../src/reading/pdf/walked-pages.ts";
import type { Entries } from "../../make/odd-pdf.ts";

const pdf = await PDFDocument.create();
const { context } = pdf;

const form = (content: string, objects: Readonly<Record<string, PDFRef>> = {}, more: Entries = {}): PDFRef =>
  context.register(
    context.stream(content, {
      Subtype: "Form",
      ...(Object.keys(objects).length === 0 ? {} : { Resources: { XObject: objects } }),
      ...more,
    }),
  );
const imageOf = (size: Entries): PDFRef =>
  context.register(context.stream("x", { Subtype: "Image", ...size }));
const image = (Width: number, Height: number): PDFRef => imageOf({ Width, Height });
/** A drawing so many levels deep. */
function nested(depth: number, content = "/F Do"): PDFRef {
  let inner = form("0 0 9 9 re f");
  for (let level = 1; level < depth; level++) inner = form(content, { F: inner });
  return inner;
}
/** A drawing that draws itself. */
function endless(): PDFRef {
  const ref = form("/F Do", { F: image(1, 1) });
  const { dict } = context.lookup(ref) as unknown as { readonly dict: PDFDict };
  const objects = dict.lookup(PDFName.of("Resources"), PDFDict).lookup(PDFName.of("XObject"), PDFDict);
  objects.set(PDFName.of("F"), ref);
  return ref;
}

/** Whether a page with this content, these objects and these annotations is beyond a viewer's means. */
function beyond(
  content: string,
  objects: Readonly<Record<string, PDFRef>>,
  annots: readonly Entries[] = [],
  own?: boolean,
) {
  const page = pdf.addPage();
  page.node.set(PDFName.of("Contents"), context.register(context.stream(content)));
  page.node.set(PDFName.of("Resources"), context.obj({ XObject: objects }));
  page.node.set(PDFName.of("Annots"), context.obj(annots.map((one) => context.obj(one))));
  const walked = firstPages(pdf, 999).at(-1);
  if (walked === undefined) throw new Error("no page");
  return drawsBeyond(walked, own);
}

test.each<[string, string, () => Record<string, PDFRef>, boolean]>([
  ["nothing", "", () => ({}), false],
  ["drawings 21 deep", "/F Do", () => ({ F: nested(21) }), false],
  ["drawings 22 deep", "/F Do", () => ({ F: nested(22) }), true],
  ["a drawing that draws itself", "/F Do", () => ({ F: endless() }), true],
  ["such a drawing, and does not draw it", "/G Do q", () => ({ F: endless(), G: form("") }), false],
  ["an image of 50 million pixels", "/I Do", () => ({ I: image(50_000, 1_000) }), false],
  ["a larger one", "/I Do", () => ({ I: image(50_000_001, 1) }), true],
  ["such a one, and does not draw it", "/I gs", () => ({ I: image(50_001, 1_000) }), false],
  ["a larger one in a drawing", "/F Do", () => ({ F: form("/I Do", { I: image(50_001, 1_000) }) }), true],
  [
    "an image without a size",
    "/I Do",
    () => ({ I: context.register(context.stream("", { Subtype: "Image" })) }),
    false,
  ],
  ["one without a width", "/I Do", () => ({ I: imageOf({ Height: 50_000_001 }) }), false],
  ["one without a height", "/I Do", () => ({ I: imageOf({ Width: 50_000_001 }) }), false],
  ["drawings of which each draws the next twice", "/F Do", () => ({ F: nested(21, "/F Do /F Do") }), false],
  ["what is not there", "/X Do Do", () => ({ I: image(50_001, 1_000) }), false],
  [
    "a drawing with its page's objects",
    "/F Do",
    () => ({ F: form("/I Do", {}), I: image(50_001, 1_000) }),
    true,
  ],
  ["one drawing many times", "/F Do ".repeat(500), () => ({ F: nested(10) }), false],
  [
    "a drawing that cannot be unpacked",
    "/F Do",
    () => ({ F: form("x", { I: image(1, 1) }, { Filter: "Unknown" }) }),
    true,
  ],
])("a page that holds %s", (_, content, objects, is) => {
  expect(beyond(content, objects())).toBe(is);
});

test("a page that cannot be unpacked may draw anything, if there is anything to draw", () => {
  const unknown = (XObject: Entries): boolean => {
    const dict = context.obj({ Contents: context.register(context.stream("x", { Filter: "Unknown" })) });
    return drawsBeyond({ dict, resources: context.obj({ XObject }) });
  };
  expect([unknown({ I: image(1, 1) }), unknown({})]).toEqual([true, false]);
  const bare = {
    dict: context.obj({ Contents: context.register(context.stream("x")) }),
    resources: undefined,
  };
  expect(drawsBeyond(bare)).toBe(false);
});

test("drawings of 8 MB together are looked at, and more are not", () => {
  const large = (bytes: number) => form(" ".repeat(bytes), { I: image(1, 1) });
  const two = (last: number) => beyond("/A Do /B Do ", { A: large(4_000_000), B: large(last) });
  // the page's own content and its line end count too
  expect([two(4_000_000 - 13), two(4_000_000 - 12)]).toEqual([false, true]);
});

test("the drawings of fields are looked at, in all their states, and with `own` nothing else", () => {
  const [deep, fine] = [endless(), nested(3)];
  const annots = (look: unknown): Entries[] => [{ AP: look as Entries }];
  expect(beyond("", {}, annots({ N: deep }))).toBe(true);
  expect(beyond("", {}, annots({ N: { Off: fine, Yes: deep } }), true)).toBe(true);
  expect(beyond("", {}, annots({ N: { Off: fine, Yes: fine } }), true)).toBe(false);
  expect(beyond("", {}, annots({ D: deep }))).toBe(false);
  expect(beyond("", {}, [{ AP: 7 }, {}])).toBe(false);
  expect(beyond("/F Do", { F: deep }, [], true)).toBe(false);
  expect(beyond("/F Do", { F: deep }, annots({ N: fine }), true)).toBe(false);
});

import { PDFDocument, PDFName, type PDFRef, PDFString } from "pdf-lib";
import { expect, onTestFinished, test, vi } from "vitest";
import type { FileFacts, PdfFacts } from "../../../src/reading/facts.ts";
import { openPdf } from "../../../src/reading/pdf/open-pdf.ts";
import { oddForm } from "../../make/odd-pdf.ts";

interface Change {
  readonly form?: boolean;
  readonly change?: (pdf: PDFDocument) => void;
}

/** A PDF of so many pages, with a form or without, and what is known of it. */
async function made(pages: number, { form = false, change }: Change = {}) {
  const pdf = await PDFDocument.create();
  for (let n = 1; n <= pages; n++) pdf.addPage([300, 300]).drawText(`Page ${n}`, { x: 20, y: 200, size: 10 });
  if (form) {
    const box = { x: 50, y: 50, width: 100, height: 20 };
    pdf.getForm().createTextField("a").addToPage(pdf.getPage(0), box);
  }
  change?.(pdf);
  return opened(await pdf.save({ updateFieldAppearances: false }));
}

async function opened(bytes: Uint8Array): Promise<PdfFacts> {
  const facts = await openPdf(bytes);
  if (facts.kind !== "pdf") throw new Error(`it is ${facts.kind}`);
  return facts;
}

test.each([
  [4, false, 4],
  [5, false, 4],
  [20, true, 20],
  [21, true, 20],
])("of %d pages, with a form: %s, the first %d are looked at", async (count, form, looked) => {
  const { pages, pageCount } = await made(count, { form });
  expect([pageCount, pages?.length]).toEqual([count, looked]);
  expect(pages?.at(-1)?.text).toBe(`Page ${looked}`);
});

test.each([
  ["shapes and 29 letters", 20, "x".repeat(29), true],
  ["shapes and 30 letters", 20, "x".repeat(30), undefined],
  ["few shapes", 2, "x", undefined],
])("a page of %s is drawn, or not", async (_, shapes, text, drawn) => {
  const pdf = await PDFDocument.create();
  const page = pdf.addPage([300, 300]);
  page.drawText(text, { x: 20, y: 200, size: 8 });
  for (let n = 0; n < shapes; n++) page.drawRectangle({ x: 9 * n, y: 9, width: 5, height: 5 });
  const [first] = (await opened(await pdf.save())).pages ?? [];
  expect([first?.text, first?.drawn]).toEqual([text, drawn]);
});

test("what stands on a page is told from the corner of its visible part", async () => {
  const { pages, widgets } = await made(1, {
    form: true,
    change: (pdf) => {
      const page = pdf.getPage(0);
      page.setMediaBox(10, 20, 300, 300);
      page.drawText("TYPED", { x: 60, y: 55, size: 10 });
      const ink = {
        Type: "Annot",
        Subtype: "Ink",
        Rect: [110, 120, 150, 160],
        InkList: [[110, 120, 150, 160]],
      };
      page.node.addAnnot(pdf.context.register(pdf.context.obj(ink)));
    },
  });
  expect(widgets.map(({ field, page, box }) => [field, page, ...box.slice(0, 2).map(Math.round)])).toEqual([
    ["a", 1, 40, 30],
  ]);
  expect(pages).toMatchObject([{ width: 300, height: 300 }]);
  expect(pages?.[0]?.marks.map(({ what, box }) => [what, ...box.slice(0, 2).map(Math.round)])).toEqual([
    ["ink", 100, 100],
    ["text", 50, 35],
  ]);
});

test("a field of the second page is told with its page", async () => {
  const { widgets } = await made(2, {
    change: (pdf) => {
      pdf.getForm().createTextField("a").addToPage(pdf.getPage(1), { x: 9, y: 9, width: 90, height: 20 });
    },
  });
  expect(widgets).toMatchObject([{ field: "a", page: 2 }]);
});

test("fields of the first twenty pages are told with their places, and those of later ones without", async () => {
  const { fields, widgets } = await made(21, {
    change: (pdf) => {
      for (const page of [20, 21])
        pdf
          .getForm()
          .createTextField(`on ${page}`)
          .addToPage(pdf.getPage(page - 1), { x: 9, y: 9, width: 90, height: 20 });
    },
  });
  expect(fields.map(({ name }) => name)).toEqual(["on 20", "on 21"]);
  expect(widgets.map(({ field }) => field)).toEqual(["on 20"]);
});

// One reader looks for fields that no form lists on the first 20 pages, the other on 200.
test.each([
  ["text field", true, { FT: "Tx" }],
  // ISO 32000-1:2008 table 226
  ["push button", false, { FT: "Btn", Ff: 1 << 16 }],
])("a %s that one reader alone sees has the file count as damaged: %s", async (_, expected, entries) => {
  const { recovered } = await made(21, {
    form: true,
    change: (pdf) => {
      const widget = {
        Type: "Annot",
        Subtype: "Widget",
        T: PDFString.of("b"),
        Rect: [9, 9, 99, 29],
        ...entries,
      };
      pdf.getPage(20).node.addAnnot(pdf.context.register(pdf.context.obj(widget)));
    },
  });
  expect(recovered).toBe(expected);
});

test("what a reader finds odd in a file is printed nowhere", async () => {
  const said = vi.spyOn(console, "warn").mockReturnValue();
  onTestFinished(() => said.mockRestore());
  const bytes = await oddForm(({ widget }) => [widget({ FT: "Tx", T: PDFString.of("a") })]);
  expect((await opened(bytes.subarray(0, -12))).recovered).toBe(true);
  expect(said).not.toHaveBeenCalled();
});

// ISO 32000-1:2008 §12.7.8
test.each([
  ["XFA with a form beside it", true, true, false, false],
  ["XFA with a form beside it, laid out when it is opened", true, true, true, true],
  ["XFA alone", true, false, false, true],
  ["a form alone, laid out when it is opened", false, true, true, false],
])("%s is laid out by some viewers alone, or not", async (_, xfa, form, late, dynamic) => {
  const facts = await made(1, {
    form,
    change: (pdf) => {
      pdf.catalog.set(PDFName.of("NeedsRendering"), pdf.context.obj(late));
      if (xfa) pdf.catalog.getOrCreateAcroForm().dict.set(PDFName.of("XFA"), PDFString.of("<x/>"));
    },
  });
  expect(facts.dynamic).toBe(dynamic);
});

test("a whole file is not recovered, one without its end is, and one behind another is counted", async () => {
  const bytes = await oddForm(({ widget }) => [widget({ FT: "Tx", T: PDFString.of("a") })]);
  const file = await opened(bytes);
  expect([file.recovered, file.together]).toEqual([false, undefined]);
  expect((await opened(bytes.subarray(0, -12))).recovered).toBe(true);
  expect((await opened(Buffer.concat([bytes, Buffer.from("\n"), bytes]))).together).toBe(2);
});

test("what is known before the pages are looked at counts as damaged, and its files as left inside, until it is known", async () => {
  const pdf = await PDFDocument.create();
  pdf.addPage();
  await pdf.attach(Buffer.from("x"), "inside.pdf");
  const told: FileFacts[] = [];
  const facts = await openPdf(await pdf.save(), (early) => Promise.resolve(void told.push(early)));
  expect(told).toMatchObject([
    { recovered: true, attached: { files: [], left: [{ name: "inside.pdf", kind: "too-large" }] } },
    { recovered: false, attached: { files: [{ name: "inside.pdf" }], left: [] } },
  ]);
  expect(told.every((early) => !("pages" in early))).toBe(true);
  expect(facts).toMatchObject({ recovered: false, pages: [{ text: "" }] });
});

test("pages that are endless cost the look at them, and nothing else", async () => {
  const { fields, pages } = await made(1, {
    form: true,
    change: (pdf) => {
      const endless = pdf.context.register(pdf.context.flateStream("q Q ".repeat(3_000_000)));
      pdf.getPage(0).node.addContentStream(endless);
    },
  });
  expect([fields.length, pages]).toEqual([1, undefined]);
});

test.each([
  [false, "SHOWN"],
  [true, undefined],
])("drawings in a file whose fields are drawn anew (%s) mean nothing", async (anew, shown) => {
  const { widgets } = await made(1, {
    form: true,
    change: (pdf) => {
      const field = pdf.getForm().getTextField("a");
      field.setText("SHOWN");
      field.updateAppearances(pdf.getForm().getDefaultFont());
      pdf.catalog.getOrCreateAcroForm().dict.set(PDFName.of("NeedAppearances"), pdf.context.obj(anew));
    },
  });
  expect(widgets.map((widget) => widget.shown)).toEqual([shown]);
});

test("a file that one reader alone can read tells its fields, but not if half of it is missing", async () => {
  const pdf = await PDFDocument.create();
  const box = { x: 50, y: 50, width: 100, height: 20 };
  pdf.getForm().createTextField("a").addToPage(pdf.addPage(), box);
  await pdf.attach(Buffer.from("x"), "inside.pdf");
  await pdf.flush();
  // pdf.js gives up at pages that lead in a circle.
  const pages = pdf.catalog.Pages();
  pages.set(PDFName.of("Count"), pdf.context.obj(2));
  pages.Kids().push(pdf.catalog.get(PDFName.of("Pages")) as PDFRef);
  const bytes = await pdf.save({ updateFieldAppearances: false });
  expect(await opened(bytes)).toMatchObject({
    fields: [{ name: "a" }],
    widgets: [],
    pageCount: 0,
    recovered: true,
    attached: { files: [{ name: "inside.pdf" }] },
  });
  expect(await openPdf(bytes.subarray(0, -12))).toEqual({ kind: "damaged-pdf" });
});

test.each([
  ["a field", "Tx", 1],
  ["a knot that is no field", undefined, 0],
])("%s nested so deep that the walk gives up makes no sheet of another kind", async (_, type, count) => {
  const bytes = await oddForm(({ widget, field }) => {
    let ref = widget({ T: PDFString.of("a"), ...(type === undefined ? {} : { FT: type }) });
    for (let level = 0; level < 60; level++) ref = field({}, [ref]);
    return [ref];
  });
  const facts = await opened(bytes);
  expect(facts).toMatchObject({ dynamic: false, portfolio: false, recovered: true, pageCount: 1 });
  expect([facts.fields.length, facts.pages]).toEqual([count, undefined]);
  expect(await openPdf(bytes.subarray(0, -12))).toEqual({ kind: "damaged-pdf" });
});

import { readFileSync } from "node:fs";
import { PDFDocument, PDFName, type PDFRef } from "pdf-lib";
import { describe, expect, test } from "vitest";
import { fillSheet } from "../../../src/drawing/fill-sheet.ts";
import type { Sheet } from "../../../src/trade/sheet.ts";
import { editions, maker } from "../../make/config.ts";
import { offset } from "../../make/odd-sheets/by-hand.ts";
import { pdfjsFill, pdftkFill } from "../../make/odd-sheets/by-programs.ts";
import { type SampleSheet, sampleSheets } from "../../make/odd-sheets/sheets.ts";
import { forgeries } from "../../make/pages/forged.ts";
import { slippedThrough } from "../../make/pages/slipped.ts";
import { hasProgram } from "../../make/program.ts";
import { readPdf } from "../../make/read-pdf.ts";

const samples = (await sampleSheets()).filter(({ edition }) => /^(device|plate)-26c$/.test(edition));

async function sheetIn(bytes: Uint8Array): Promise<Sheet | undefined> {
  return (await readPdf(bytes)).sheet;
}

async function doubtsIn(bytes: Uint8Array) {
  return (await sheetIn(bytes))?.doubts.map(({ what, kind, place }) =>
    [what, kind ?? "", place ?? ""].join(" ").trim(),
  );
}

describe("what a sheet shows besides what it holds is doubted", () => {
  // Every fourth, on one of the two forms; all of them: tests/bench/pages.ts.
  test.each(
    forgeries.flatMap((forgery, i) =>
      i % 4 === 0 ? [[forgery.how, forgery, samples[(i / 4) % 2] as SampleSheet] as const] : [],
    ),
  )("%s", async (_, { make }, sample) => {
    const { file, sheet } = await readPdf(await make(sample));
    expect(file.kind).toBe("sheet");
    expect(sheet?.doubts).not.toEqual([]);
    expect(sheet?.doubts).not.toContainEqual({ what: "unseen" });
  });
});

test.each([
  ["to the right", 20, 0],
  ["up", 0, 20],
])("fields that have all moved %s, away from their labels, are doubted", async (_, x, y) => {
  const { filled } = samples[0] as SampleSheet;
  const moved = await changed(filled, (pdf) => {
    for (const field of pdf.getForm().getFields())
      for (const widget of field.acroField.getWidgets()) {
        const box = widget.getRectangle();
        widget.setRectangle({ ...box, x: box.x + x, y: box.y + y });
      }
  });
  expect(await doubtsIn(moved)).not.toEqual([]);
});

describe.each(samples)("on a $edition", (sample) => {
  test.each(slippedThrough.map(({ how, make }) => [how, make] as const))("%s is seen", async (_, make) => {
    expect(await doubtsIn(await make(sample))).not.toEqual([]);
  });
});

describe("what PDFium may not draw as others do leaves the page unseen", () => {
  const entries = { Type: "XObject", Subtype: "Form", BBox: [0, 0, 800, 600] };
  const deep = ({ context }: PDFDocument): PDFRef => {
    let drawing = context.register(context.stream("0 0 99 99 re f", entries));
    for (let i = 0; i < 60; i++) {
      const Resources = context.obj({ XObject: { X: drawing } });
      drawing = context.register(context.stream("/X Do", { ...entries, Resources }));
    }
    return drawing;
  };
  const callingItself = ({ context }: PDFDocument): PDFRef => {
    const ref = context.nextRef();
    const Resources = context.obj({ XObject: { X: ref } });
    context.assign(ref, context.stream("0 0 99 99 re f /X Do", { ...entries, Resources }));
    return ref;
  };
  const huge = ({ context }: PDFDocument): PDFRef =>
    context.register(
      context.flateStream(new Uint8Array(60_000), {
        Type: "XObject",
        Subtype: "Image",
        Width: 60_000,
        Height: 60_000,
        BitsPerComponent: 8,
        ColorSpace: "DeviceGray",
      }),
    );
  const onPage = (pdf: PDFDocument, drawing: PDFRef): void => {
    const { node } = pdf.getPage(0);
    node.setXObject(PDFName.of("X"), drawing);
    node.addContentStream(pdf.context.register(pdf.context.stream("/X Do")));
  };
  const inField = (pdf: PDFDocument, drawing: PDFRef): void => {
    const [widget] = pdf.getForm().getTextField("notes").acroField.getWidgets();
    const Resources = pdf.context.obj({ XObject: { X: drawing } });
    const look = pdf.context.register(pdf.context.stream("/X Do", { ...entries, Resources }));
    widget?.dict.set(PDFName.of("AP"), pdf.context.obj({ N: look }));
  };

  test.for([
    ["drawings deep within each other, on the page", deep, onPage],
    ["drawings deep within each other, in a field", deep, inField],
    ["a drawing that draws itself, on the page", callingItself, onPage],
    ["a drawing that draws itself, in a field", callingItself, inField],
    ["an image of 60000 by 60000 pixels with one line of data", huge, onPage],
  ] as const)("%s", async ([, make, put]) => {
    const bytes = await changed((samples[0] as SampleSheet).filled, (pdf) => put(pdf, make(pdf)));
    expect(await doubtsIn(bytes)).toContain("unseen");
  });
});

const hasPdftk = hasProgram("pdftk");

describe.each(samples)("an honest $edition", ({ blank, filled, values }) => {
  test.for<[string, () => Uint8Array | Promise<Uint8Array>, boolean?]>([
    ["filled by us", () => filled],
    ["filled by pdf.js", () => pdfjsFill(blank, values)],
    ["filled by pdftk", () => pdftkFill(blank, values), !hasPdftk],
    ["to be drawn by its viewer", () => pdftkFill(blank, values, "need_appearances"), !hasPdftk],
    ["on a larger page", () => offset(filled)],
    [
      "turned",
      () => changed(filled, (pdf) => pdf.getPage(0).setRotation({ type: "degrees", angle: 90 } as never)),
    ],
    ["with an empty page behind it", () => changed(filled, (pdf) => pdf.addPage([612, 792]))],
    ["cropped by the margin alone", () => changed(filled, (pdf) => crop(pdf, 12))],
  ])("%s raises nothing", async ([, make, skipped], { skip }) => {
    if (skipped) skip("pdftk is not installed");
    expect(await doubtsIn(await make())).toEqual([]);
  });

  test("with long words, notes over several lines and letters of other languages raises nothing", async () => {
    const more = {
      contact_name: "Zoë Łuczak-Brañas",
      contact_email: "a.very.long.address.that.does.not.fit.into.its.frame@larkspur-library.example",
      bill_name: "Brightwire & Daughters “Electric”, Inc.",
      notes:
        "Please deliver to the back door before 7 a.m. and ring twice; the guard’s name is José.\nThe key is at the desk. Thank you!",
    };
    expect(await doubtsIn(await fillSheet(blank, { ...values, ...more }))).toEqual([]);
  });
});

test.each([
  ["letters whose feet are pale", "Vesperstead Electric", "Val Fabricate"],
  ["digits whose corners are pale", "27 Planeload Court", "443 Karina Court"],
  ["one letter below a long line", "22 Foundry Row", "Brindlebrook Library"],
])("%s, as a program of others draws them, raise nothing", async (_, ...texts) => {
  const { blank } = samples[0] as SampleSheet;
  const names = ["contact_name", "project", "bill_name", "bill_street", "bill_city", "ship_street"];
  for (const text of texts) {
    const typed = await changed(blank, (pdf) => {
      const form = pdf.getForm();
      for (const name of names) form.getTextField(name).setText(text);
      form.updateFieldAppearances();
    });
    expect(await doubtsIn(typed)).toEqual([]);
  }
});

async function changed(bytes: Uint8Array, change: (pdf: PDFDocument) => unknown): Promise<Uint8Array> {
  const pdf = await PDFDocument.load(bytes, { updateMetadata: false });
  change(pdf);
  return pdf.save({ updateFieldAppearances: false });
}

function crop(pdf: PDFDocument, by: number): void {
  const { width, height } = pdf.getPage(0).getSize();
  pdf.getPage(0).setCropBox(by, by, width - 2 * by, height - 2 * by);
}

test.each(["kestrel-left-qpdf", "kestrel-plate-pdftk", "kestrel-right-pdfjs", "kirkmere-desk-chromium"])(
  "%s, as that program saved it, raises nothing",
  async (file) => {
    const { sheet } = await readPdf(readFileSync(`fixtures/raw/${file}.pdf`), undefined, maker);
    expect(sheet?.doubts).toEqual([]);
  },
);

test("a form that is not ours is compared with the blank that its edition names", async () => {
  const theirs = (await sampleSheets()).find(({ edition }) => edition === "marrowby-device-1") as SampleSheet;
  const known = { editions, blanks: new Map([[theirs.edition, theirs.blank]]) };
  const doubts = async (bytes: Uint8Array) =>
    (await readPdf(bytes, undefined, { forms: () => Promise.resolve(known) })).sheet?.doubts.map(
      ({ what }) => what,
    );
  const remark = await changed(theirs.filled, (pdf) => {
    pdf.getPage(0).drawText("row 2: EXIT", { x: 40, y: 6, size: 8 });
  });
  expect(await doubts(theirs.filled)).toEqual([]);
  expect(await doubts(remark)).toEqual(["something-more"]);
  // Without it nobody knows what else the form prints.
  expect((await readPdf(remark)).sheet?.doubts).toEqual([]);
});

describe("a difference is told once, with its place and a picture", () => {
  const doubtOf = async (how: string) => {
    const { make } = forgeries.find((one) => one.how === how) ?? {
      make: () => Promise.reject(new Error(how)),
    };
    const { sheet, pictures } = await readPdf(await make(samples[0] as SampleSheet));
    return { doubts: sheet?.doubts ?? [], pictures };
  };

  test.for([
    ["curves in an empty row", { what: "value-hidden", place: "row.1.2" }],
    ["an old legend in a field's drawing", { what: "value-hidden", place: "row.1.1", shown: "EXIT" }],
    ["a ticked box that looks empty", { what: "value-hidden", place: "ship.same" }],
    ["a remark at the foot", { what: "something-more", kind: "drawn", where: "in the lower left, beside" }],
    ["a circle around a label", { what: "value-hidden", place: "project" }],
    ["a cross over the sheet", { what: "something-more", kind: "drawn", where: "all over it" }],
    ["Highlight with a comment, in the margin", { what: "something-more", text: "must read EXIT" }],
    ["StrikeOut with a drawing over a legend", { what: "something-more", place: "row.1.1" }],
    ["a further page with words", { what: "something-more", kind: "page", seen: { page: 2 } }],
  ] as const)("%s", async ([how, wanted]) => {
    const { doubts, pictures } = await doubtOf(how);
    expect(doubts).toMatchObject([wanted]);
    const png = pictures?.get(doubts[0]?.seen?.picture ?? "");
    // ISO/IEC 15948 §5.2
    expect(
      Buffer.from(png ?? [])
        .subarray(1, 4)
        .toString(),
    ).toBe("PNG");
    expect(png?.length).toBeLessThan(20_000);
  });

  test("two remarks apart are two, and a choice that is crossed out at two of its buttons is one", async () => {
    const { filled } = samples[0] as SampleSheet;
    const remarks = await changed(filled, (pdf) => {
      for (const x of [40, 480]) pdf.getPage(0).drawText("row 2: EXIT", { x, y: 6, size: 8 });
    });
    expect(await doubtsIn(remarks)).toEqual([
      "something-more drawn contact.phone",
      "something-more drawn edition",
    ]);
    const crossed = await changed(filled, (pdf) => {
      const [choice] = pdf
        .getForm()
        .getFields()
        .filter((field) => field.acroField.getWidgets().length > 1);
      for (const widget of choice?.acroField.getWidgets().slice(0, 2) ?? [])
        pdf.getPage(0).drawRectangle({ ...widget.getRectangle(), opacity: 1 });
    });
    expect(await doubtsIn(crossed)).toHaveLength(1);
  });

  test("a form rebuilt with our fields is told as a whole", async () => {
    const pdf = await PDFDocument.create();
    const page = pdf.addPage([612, 792]);
    const names = Object.keys(samples[0]?.values ?? {});
    const { blank } = samples[0] as SampleSheet;
    const form = (await PDFDocument.load(blank)).getForm();
    for (const [i, field] of form.getFields().entries()) {
      const box = { x: 40, y: 760 - i * 15, width: 200, height: 12 };
      const text = pdf.getForm().createTextField(field.getName());
      text.addToPage(page, box);
      if (names.includes(field.getName())) text.setText("X");
    }
    expect(await doubtsIn(await pdf.save())).toContain("something-more other-page");
  });
});

import { PDFDict, PDFDocument, PDFHexString, PDFName, PDFString } from "pdf-lib";
import { describe, expect, test } from "vitest";
import { type Attached, attachedTo, leftIn, takenOut } from "../../../src/reading/pdf/attached.ts";

const { context } = await PDFDocument.create();
const file = (name: string, bytes: Uint8Array | string = name, entries = {}): Attached => ({
  name,
  stream: context.stream(typeof bytes === "string" ? Buffer.from(bytes) : bytes, entries),
});

/** What came out, by name, and what did not. */
const told = (taken: ReturnType<typeof takenOut>): unknown[] | undefined =>
  taken && [
    ...taken.files.map(({ name, bytes }) => [name, bytes.length]),
    ...taken.left.map(({ name, kind }) => [name, kind]),
  ];

describe("of the files inside a PDF", () => {
  test("all come out with their names", () => {
    expect(takenOut([])).toBeUndefined();
    expect(told(takenOut([file("a.pdf", "one"), file("b.pdf", "")]))).toEqual([
      ["a.pdf", 3],
      ["b.pdf", 0],
    ]);
  });

  test("two hundred come out, and the rest is counted", () => {
    const some = (count: number): Attached[] => Array.from({ length: count }, (_, i) => file(`${i}`));
    expect(takenOut(some(200))).toMatchObject({ left: [] });
    const { files, left } = takenOut(some(203)) ?? {};
    expect(files).toHaveLength(200);
    expect(left).toEqual([{ name: "3 more files", kind: "too-large" }]);
  });

  test("what is more than 60 MB together stays inside, and so does what is damaged", () => {
    const large = (name: string, bytes: number): Attached => file(name, Buffer.alloc(bytes));
    expect(told(takenOut([large("a", 60_000_000), large("b", 1)]))).toEqual([
      ["a", 60_000_000],
      ["b", "too-large"],
    ]);
    expect(told(takenOut([file("a", "nonsense", { Filter: "Unknown" }), file("b")]))).toEqual([
      ["b", 1],
      ["a", "damaged"],
    ]);
    // One that does not unpack costs half of what is left.
    expect(told(takenOut([large("a", 60_000_001), large("b", 30_000_001), large("c", 15_000_000)]))).toEqual([
      ["c", 15_000_000],
      ["a", "too-large"],
      ["b", "too-large"],
    ]);
  });

  test("none is taken out where there is no room for any, and all are named", () => {
    expect(leftIn([])).toBeUndefined();
    expect(leftIn([file("a"), file("b")])).toEqual({
      files: [],
      left: [
        { name: "a", kind: "too-large" },
        { name: "b", kind: "too-large" },
      ],
    });
    const many = leftIn(Array.from({ length: 201 }, (_, i) => file(`${i}`)));
    expect(many?.left).toHaveLength(201);
    expect(many?.left.at(-1)?.name).toBe("1 more files");
    expect(leftIn(Array.from({ length: 200 }, (_, i) => file(`${i}`)))?.left).toHaveLength(200);
  });
});

test("files are found in the list, with the document, with a page and pinned to one, each once", async () => {
  const pdf = await PDFDocument.create();
  const page = pdf.addPage();
  const embedded = (name: object, stream = pdf.context.register(pdf.context.stream("x"))) =>
    pdf.context.register(pdf.context.obj({ Type: "Filespec", ...name, EF: { F: stream } }));
  const twice = embedded({ F: PDFString.of("listed.pdf") });
  const kid = pdf.context.obj({ Names: [PDFString.of("b"), embedded({ F: PDFString.of("in a kid.pdf") })] });
  const names = { EmbeddedFiles: { Names: [PDFString.of("a"), twice], Kids: [kid] } };
  pdf.catalog.set(PDFName.of("Names"), pdf.context.obj(names));
  pdf.catalog.set(
    PDFName.of("AF"),
    pdf.context.obj([twice, embedded({ F: PDFString.of("old"), UF: PDFHexString.fromText("Café.pdf") })]),
  );
  page.node.set(
    PDFName.of("AF"),
    pdf.context.obj([embedded({ UF: PDFString.of(""), F: PDFString.of("of a page.pdf") })]),
  );
  const pin = (Subtype: string, name: string) => ({
    Type: "Annot",
    Subtype,
    FS: embedded({ F: PDFString.of(name) }),
  });
  page.node.set(
    PDFName.of("Annots"),
    pdf.context.obj([pin("FileAttachment", "pinned.pdf"), pin("Link", "linked.pdf")]),
  );
  expect(attachedTo(pdf).map(({ name }) => name)).toEqual([
    "listed.pdf",
    "in a kid.pdf",
    "Café.pdf",
    "of a page.pdf",
    "pinned.pdf",
  ]);
});

/** A document, and a file in it that is not yet listed anywhere. */
async function emptyDocument() {
  const pdf = await PDFDocument.create();
  const stream = pdf.context.register(pdf.context.stream("x"));
  const spec = pdf.context.obj({ F: PDFString.of("a.pdf"), EF: { F: stream } });
  const pin = pdf.context.obj({ Subtype: "FileAttachment", FS: spec });
  return { pdf, spec, pin };
}

/** Finds the file as the last of so many things of its kind. */
type Place = (made: Awaited<ReturnType<typeof emptyDocument>>, count: number) => void;

const places: Readonly<Record<string, readonly [most: number, place: Place]>> = {
  pages: [
    200,
    ({ pdf, pin }, count) => {
      for (let n = 1; n <= count; n++) pdf.addPage();
      pdf.getPage(count - 1).node.set(PDFName.of("Annots"), pdf.context.obj([pin]));
    },
  ],
  "annotations of a page": [
    10_000,
    ({ pdf, pin }, count) => {
      const others = Array.from({ length: count - 1 }, () => pdf.context.obj({}));
      pdf.addPage().node.set(PDFName.of("Annots"), pdf.context.obj([...others, pin]));
    },
  ],
  "files of a document": [
    10_000,
    ({ pdf, spec }, count) => {
      const others = Array.from({ length: count - 1 }, () => pdf.context.obj({}));
      pdf.catalog.set(PDFName.of("AF"), pdf.context.obj([...others, spec]));
    },
  ],
  "names and files in a list": [
    10_000,
    ({ pdf, spec }, count) => {
      const others = Array.from({ length: count - 1 }, () => PDFString.of("x"));
      const EmbeddedFiles = { Names: [...others, spec] };
      pdf.catalog.set(PDFName.of("Names"), pdf.context.obj({ EmbeddedFiles }));
    },
  ],
  "branches of a list": [
    2_000,
    ({ pdf, spec }, count) => {
      // the root is one of them
      const others = Array.from({ length: count - 2 }, () => pdf.context.obj({}));
      const Kids = [...others, pdf.context.obj({ Names: [PDFString.of("x"), spec] })];
      pdf.catalog.set(PDFName.of("Names"), pdf.context.obj({ EmbeddedFiles: { Kids } }));
    },
  ],
};

test.each(Object.entries(places))(
  "files are looked for in so many %s and no more",
  async (_, [most, place]) => {
    const found = async (count: number) => {
      const made = await emptyDocument();
      place(made, count);
      return attachedTo(made.pdf).map(({ name }) => name);
    };
    expect(await found(most)).toEqual(["a.pdf"]);
    // Names and files alternate, so the next file is two further.
    expect(await found(most + 2)).toEqual([]);
  },
);

test("a list that leads in a circle ends, and what is no file is none", async () => {
  const { pdf, spec } = await emptyDocument();
  const { context } = pdf;
  const root = context.register(context.obj({ Names: [PDFString.of("x"), spec] }));
  context.lookup(root, PDFDict).set(PDFName.of("Kids"), context.obj([root]));
  pdf.catalog.set(PDFName.of("Names"), context.obj({ EmbeddedFiles: root }));
  const nothing = [7, { F: PDFString.of("no files") }, { EF: 7 }, { EF: { F: 7 } }];
  pdf.catalog.set(PDFName.of("AF"), context.obj(nothing));
  expect(attachedTo(pdf)).toHaveLength(1);
  for (const names of [7, { EmbeddedFiles: 7 }]) {
    pdf.catalog.set(PDFName.of("Names"), context.obj(names as never));
    expect(attachedTo(pdf)).toEqual([]);
  }
});

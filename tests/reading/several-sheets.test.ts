import { describe, expect, test } from "vitest";
import { markedCopy } from "../../src/drawing/marked-copy.ts";
import { openParts } from "../../src/intake/open.ts";
import type { PdfFacts } from "../../src/reading/facts.ts";
import { judge } from "../../src/reading/judge.ts";
import { openFile } from "../../src/reading/open-file.ts";
import { openPdf } from "../../src/reading/pdf/open-pdf.ts";
import type { Place } from "../../src/trade/place.ts";
import type { Doubt } from "../../src/trade/sheet.ts";
import { catalogue, editions } from "../make/config.ts";
import { formFacts, pageFacts } from "../make/facts.ts";
import { portfolioOf, wrapped } from "../make/odd-sheets/by-hand.ts";
import { pdftkFlatten, picture } from "../make/odd-sheets/by-programs.ts";
import {
  behindByPdfLib,
  byGhostscript,
  byMutool,
  byPdfLib,
  byPdftk,
  byPdfunite,
  byPikepdf,
  byPymupdf,
  byPypdf,
  byPypdfPages,
  byQpdf,
  type Merge,
  renamed,
  withBelonging,
  withInside,
  withOutlines,
  withPage,
  withPinned,
} from "../make/odd-sheets/merged.ts";
import { sampleSheets } from "../make/odd-sheets/sheets.ts";
import { flattened, plainPdf } from "../make/pdf.ts";
import { hasLibrary, hasProgram } from "../make/program.ts";
import { readPdf } from "../make/read-pdf.ts";
import { directReader } from "../make/reader.ts";

const samples = await sampleSheets();
const sample = (edition: string) => {
  const found = samples.find((one) => one.edition === edition);
  if (found === undefined) throw new Error(`no ${edition}`);
  return found;
};
const [device, plate, theirs] = ["device-26c", "plate-26c", "marrowby-device-1"].map(sample);
if (device === undefined || plate === undefined || theirs === undefined) throw new Error("no sheets");

/** Each way of putting files together: whether its program is there, and whether the fields survive. */
const merges: readonly (readonly [how: string, there: boolean, merge: Merge])[] = [
  ["qpdf", hasProgram("qpdf"), byQpdf],
  ["pdftk", hasProgram("pdftk"), byPdftk],
  ["pdfunite", hasProgram("pdfunite", "-v"), byPdfunite],
  ["pdf-lib", true, byPdfLib],
  ["pdf-lib, behind the first", true, behindByPdfLib],
  // What stands above was known while this was made; what stands below was tried only afterwards.
  ["pypdf", hasLibrary("pypdf"), byPypdf],
  ["pypdf, page by page", hasLibrary("pypdf"), byPypdfPages],
  ["pikepdf", hasLibrary("pikepdf"), byPikepdf],
];

async function kindOf(bytes: Uint8Array): Promise<readonly [string, number?]> {
  const { file } = await readPdf(bytes);
  return file.sheets === undefined ? [file.kind] : [file.kind, file.sheets];
}

describe.each(merges)("put together by %s", (_, there, merge) => {
  test.skipIf(!there).each([
    ["a device sheet and a plate sheet", [device.filled, plate.filled], 2],
    ["a plate sheet and a device sheet", [plate.filled, device.filled], 2],
    ["two device sheets", [device.filled, device.filled], 2],
    ["a filled sheet and a blank one", [device.filled, device.blank], 2],
    ["two device sheets and their plate", [device.filled, device.filled, plate.filled], 3],
    ["two sheets of another form, of two pages each", [theirs.filled, theirs.filled], 2],
    ["two forms", [theirs.filled, plate.filled], 2],
  ])("%s are counted and none is read", async (_what, files, sheets) => {
    expect(await kindOf(await merge(...files))).toEqual(["several-sheets", sheets]);
  });

  test.skipIf(!there)("a sheet alone is that sheet", async () => {
    const { file, sheet } = await readPdf(await merge(device.filled));
    expect(file.kind).toBe("sheet");
    // Some drop the buttons of a choice, and then it is asked about.
    expect(sheet?.unsure).toEqual([]);
    expect(sheet?.legends).toEqual((await readPdf(device.filled)).sheet?.legends);
  });
});

test.skipIf(!hasProgram("qpdf"))("more sheets than pages are looked at are all counted", async () => {
  const many = Array.from({ length: 26 }, () => device.filled);
  expect(await kindOf(await byQpdf(...many))).toEqual(["several-sheets", 26]);
});

test.skipIf(!hasLibrary("fitz"))(
  "sheets that PyMuPDF puts behind another lose their fields and are counted",
  async () => {
    expect(await kindOf(await byPymupdf(device.filled, plate.filled))).toEqual(["several-sheets", 2]);
  },
);

test.skipIf(!hasProgram("mutool", "-v"))("sheets that mutool puts together are printed ones", async () => {
  expect(await kindOf(await byMutool(device.filled, plate.filled))).toEqual(["printed"]);
});

test.skipIf(!hasProgram("gs"))("sheets that Ghostscript puts together are printed ones", async () => {
  expect(await kindOf(await byGhostscript(device.filled, plate.filled))).toEqual(["printed"]);
});

test.each<[string, (name: string, n: number) => string]>([
  ["a number behind", (name) => `${name}_2`],
  ["a number in brackets behind", (name) => `${name} (2)`],
  ["a sign and a number behind", (name) => `${name}#1`],
  ["a group before", (name) => `page2 ${name}`.replace(" ", "_x")],
  ["names that say nothing", (_, n) => `dummyFieldName${n}`],
])("a second sheet whose fields got %s is counted", async (_, rename) => {
  const bytes = await behindByPdfLib(device.filled, await renamed(device.filled, rename));
  expect(await kindOf(bytes)).toEqual(["several-sheets", 2]);
});

const flatPlate = await flattened(plate.filled);

describe("files written one behind the other", () => {
  const behind: Merge = (...files) => Buffer.concat(files);

  test.each([
    ["a device sheet and a plate sheet", [device.filled, plate.filled], 2],
    ["a plate sheet and a device sheet", [plate.filled, device.filled], 2],
    ["a sheet and itself, whose end leads to the first", [device.filled, device.filled], 2],
    ["three sheets", [device.filled, plate.filled, device.filled], 3],
    ["two sheets and a blank line", [device.filled, Buffer.from("\r\n\r\n"), plate.filled], 2],
    ["a printed sheet and one with fields", [flatPlate, device.filled], 2],
  ])("%s are counted and none is read", async (_, files, sheets) => {
    expect(await kindOf(await behind(...files))).toEqual(["several-sheets", sheets]);
  });

  test("are no sheets where none of them is", async () => {
    expect(await kindOf(await behind(await plainPdf("Terms"), await plainPdf("Terms")))).toEqual(["no-form"]);
  });

  test("are none in a file with revisions or with a file inside", async () => {
    const inner = { name: "terms.pdf", bytes: await plainPdf("Terms") };
    for (const bytes of [device.filled, await withInside(device.filled, [inner])])
      expect(await openPdf(bytes)).not.toHaveProperty("together");
  });
});

describe("a page beside a sheet", () => {
  const doubts = async (bytes: Uint8Array): Promise<readonly Doubt[] | undefined> =>
    (await readPdf(bytes)).sheet?.doubts;
  /** Where the sheet's pages are compared with its blank form, each further page is something more. */
  const furtherPages = async (bytes: Uint8Array) =>
    (await doubts(bytes))?.map(({ what, kind, seen, pages }) => [what, kind ?? pages, seen?.page]);

  test("that is a flattened sheet is counted with it", async () => {
    expect(await kindOf(await behindByPdfLib(device.filled, await flattened(plate.filled)))).toEqual([
      "several-sheets",
      2,
    ]);
    const flat = await flattened(plate.filled);
    const two = await byPdfLib(flat, flat);
    expect(await kindOf(await behindByPdfLib(device.filled, two))).toEqual(["several-sheets", 3]);
  });

  test.skipIf(!hasProgram("pdftk") || !hasProgram("qpdf"))(
    "that pdftk flattened and qpdf packed is too",
    async () => {
      expect(await kindOf(await byQpdf(device.filled, pdftkFlatten(plate.filled)))).toEqual([
        "several-sheets",
        2,
      ]);
    },
  );

  test.skipIf(!hasProgram("pdftocairo", "-v"))(
    "that is a scan is asked about, wherever it lies",
    async () => {
      const scan = await wrapped(picture(plate.filled, "jpeg"));
      expect(await furtherPages(await behindByPdfLib(device.filled, scan))).toEqual([
        ["something-more", "page", 2],
      ]);
      expect(await furtherPages(await behindByPdfLib(scan, device.filled))).toEqual([
        ["something-more", "page", 1],
      ]);
    },
  );

  test("that is nothing but lines is asked about", async () => {
    expect(await furtherPages(await withOutlines(device.filled))).toEqual([["something-more", "page", 2]]);
  });

  test("that holds words is asked about, and of a form without a blank is named", async () => {
    expect(await furtherPages(await withPage(device.filled, "Terms of business"))).toEqual([
      ["something-more", "page", 2],
    ]);
    // An empty page shows nothing.
    expect(await furtherPages(await withPage(device.filled))).toEqual([]);
    const [beside] = (await doubts(await withPage(theirs.filled, "Terms of business"))) ?? [];
    expect(beside?.what).toBe("pages-beside");
  });

  test("that is one of too many is asked about", async () => {
    let bytes = device.filled;
    for (let n = 0; n < 21; n++) bytes = await withPage(bytes, "Terms");
    const found = (await furtherPages(bytes)) ?? [];
    expect(found).toContainEqual(["pages-beyond", [21, 22], undefined]);
    expect(found).toContainEqual(["something-more", "page", 2]);
  });

  test("that is the second of the sheet's own is none", async () => {
    expect(await doubts(theirs.filled)).toEqual([]);
  });
});

describe("files inside a PDF", () => {
  const opened = async (bytes: Uint8Array): Promise<string[][]> => {
    const files = await openParts(directReader, [{ name: "host.pdf", bytes, looks: false }], "12");
    return files.map(({ attachment: { id, file }, facts }) => [
      id,
      file,
      typeof facts === "string" ? facts : facts.kind,
    ]);
  };
  const inside = [
    { name: "S-104.pdf", bytes: plate.filled },
    { name: "notes.txt", bytes: Buffer.from("Ring twice.") },
  ];

  test("are opened as files of their own", async () => {
    const bytes = await withInside(device.filled, inside);
    expect(await opened(bytes)).toEqual([
      ["12/1", "host.pdf", "pdf"],
      ["12/2", "S-104.pdf", "pdf"],
      ["12/3", "notes.txt", "text"],
    ]);
    expect(await kindOf(bytes)).toEqual(["sheet"]);
  });

  test.skipIf(!hasProgram("qpdf"))("are opened where they are pinned to a page", async () => {
    expect(await opened(await withPinned(device.filled, "S-104.pdf", plate.filled))).toEqual([
      ["12/1", "host.pdf", "pdf"],
      ["12/2", "S-104.pdf", "pdf"],
    ]);
  });

  // ISO 32000-2:2020 §14.13: associated files, of the document and of a page.
  test.each(["document", "page"] as const)("are opened where they belong to the %s alone", async (owner) => {
    const bytes = await withBelonging(device.filled, owner, inside);
    expect(await opened(bytes)).toEqual([
      ["12/1", "host.pdf", "pdf"],
      ["12/2", "S-104.pdf", "pdf"],
      ["12/3", "notes.txt", "text"],
    ]);
    expect(await kindOf(bytes)).toEqual(["sheet"]);
  });

  test("are opened once where they belong to a page and are listed too", async () => {
    const bytes = await withBelonging(await withInside(device.filled, inside), "page", "listed");
    expect((await opened(bytes)).map(([, file]) => file)).toEqual(["host.pdf", "S-104.pdf", "notes.txt"]);
  });

  test("are opened in a portfolio, whose cover is no file of the sender's", async () => {
    const bytes = await portfolioOf([device.filled, plate.filled]);
    expect(await kindOf(bytes)).toEqual(["archive"]);
    expect((await opened(bytes)).map(([, file]) => file)).toEqual(["host.pdf", "sheet 1.pdf", "sheet 2.pdf"]);
  });

  test("are named where they lie too deep", async () => {
    let bytes = plate.filled;
    for (const name of ["4.pdf", "3.pdf", "2.pdf", "1.pdf"])
      bytes = await withInside(device.filled, [{ name, bytes }]);
    expect((await opened(bytes)).map(([, file, kind]) => [file, kind])).toEqual([
      ["host.pdf", "pdf"],
      ["1.pdf", "pdf"],
      ["2.pdf", "pdf"],
      ["3.pdf", "pdf"],
      ["4.pdf", "unsafe"],
    ]);
  });

  test("are named as left inside until they are out", async () => {
    const told: unknown[] = [];
    await openFile(await withInside(device.filled, inside), (facts) => {
      told.push(facts.kind === "pdf" ? facts.attached : undefined);
      return Promise.resolve();
    });
    expect(told[0]).toEqual({
      files: [],
      left: [
        { name: "S-104.pdf", kind: "too-large" },
        { name: "notes.txt", kind: "too-large" },
      ],
    });
    expect(told[1]).toMatchObject({ files: [{ name: "S-104.pdf" }, { name: "notes.txt" }], left: [] });
  });
});

test("a sheet of which fields are gone is not taken for two, whatever is printed on it", () => {
  const edition = editions.find(({ name }) => name === "device-26c");
  if (edition === undefined) throw new Error("no edition");
  const labels = edition.fields.map(({ label }) => label).join("\n");
  for (const part of [1, 0.95, 0.8, 0.75, 0.7, 0.5]) {
    const facts = formFacts(edition, { order_number: "BW-2207" }, { pages: [pageFacts([], labels)] });
    const some = {
      ...facts,
      fields: facts.fields.slice(0, edition.fields.length * part),
      widgets: facts.widgets.slice(0, edition.fields.length * part),
    };
    expect(judge(some, { id: "1/1", file: "a.pdf" }, { catalogue, editions }).file.kind).toBe(
      part < 0.9 ? "unknown-form" : "sheet",
    );
  }
});

test("the page that a marked copy of ours has added is no page of the sender's", async () => {
  const before = (await readPdf(device.filled)).sheet;
  if (before === undefined) throw new Error("no sheet");
  const problems = Object.keys(before.prints).map((place, i) => ({
    number: i + 1,
    says: `${before.prints[place as Place]?.label} is wrong.`,
    fix: "Mend it.",
    kind: "fail" as const,
    places: [place as Place],
  }));
  const copy = await markedCopy(device.filled, before, problems);
  if (copy === undefined) throw new Error("no copy");
  const { pages = [] } = (await openPdf(copy)) as PdfFacts;
  expect(pages.length).toBeGreaterThan(1);
  expect(pages.map(({ ours }) => ours)).toEqual(pages.map((_, i) => (i === 0 ? undefined : true)));
  expect((await readPdf(copy)).sheet).toEqual(before);
});

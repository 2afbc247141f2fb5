import { PDFDocument, PDFName } from "pdf-lib";
import { describe, expect, test } from "vitest";
import { editions } from "../../make/config.ts";
import { qpdf } from "../../make/odd-sheets/by-programs.ts";
import { type SampleSheet, sampleSheets } from "../../make/odd-sheets/sheets.ts";
import { copyOf, forgedReturns, honestReturns } from "../../make/pages/copies.ts";
import { hasProgram } from "../../make/program.ts";
import { readPdf } from "../../make/read-pdf.ts";

const samples = await sampleSheets();
const drawn = samples.filter(({ edition }) => /^(device|plate)-26c$/.test(edition));
const theirs = samples.find(({ edition }) => edition === "marrowby-device-1") as SampleSheet;
/** Every form with its blank, that of another maker too. */
const known = { editions, blanks: new Map(samples.map(({ edition, blank }) => [edition, blank])) };

async function doubted(bytes: Uint8Array): Promise<string[]> {
  const { file, sheet } = await readPdf(bytes, undefined, { forms: () => Promise.resolve(known) });
  if (sheet === undefined) return [file.kind];
  return [...sheet.doubts.map(({ what }) => what), ...sheet.unsure.map(() => "unsure")];
}

/** On one form each, in turn; on all: tests/bench/pages.ts. */
const inTurn = (i: number): SampleSheet => drawn[i % drawn.length] as SampleSheet;

describe("a marked copy of ours that comes back raises nothing", () => {
  test.for(honestReturns.map((one, i) => [one.how, one, inTurn(i)] as const))(
    "%s",
    async ([, { make, needs }, sample], { skip }) => {
      if (needs !== undefined && !hasProgram(...needs)) skip(`${needs[0]} is not installed`);
      expect(await doubted(await make(sample))).toEqual([]);
    },
  );

  test("of another maker's form", async () => {
    expect(await doubted(await copyOf(theirs))).toEqual([]);
  });
});

describe("a marked copy of ours that shows other than it holds is doubted", () => {
  test.each(forgedReturns.map((one, i) => [one.how, one, inTurn(i)] as const))(
    "%s",
    async (_, { make }, sample) => {
      const found = await doubted(await make(sample));
      expect(found).not.toEqual([]);
      expect(found).not.toContain("unseen");
    },
  );

  test("and a remark on its list is told once", async () => {
    const comment = forgedReturns.find(({ how }) => how === "a comment on the list");
    expect(await doubted((await comment?.make(inTurn(0))) ?? new Uint8Array())).toEqual(["typed-over"]);
  });
});

describe("a form of several pages with a blank of its own", () => {
  const changed = async (change: (pdf: PDFDocument) => unknown): Promise<string[]> => {
    const pdf = await PDFDocument.load(theirs.filled, { updateMetadata: false });
    change(pdf);
    return doubted(await pdf.save({ updateFieldAppearances: false }));
  };

  test.skipIf(!hasProgram("qpdf"))("may have its pages in another order", async () => {
    expect(await doubted(qpdf(theirs.filled, "--pages", ".", "2,1", "--"))).toEqual([]);
  });

  test.each<[string, (pdf: PDFDocument) => unknown]>([
    ["without its second page", (pdf) => pdf.removePage(1)],
    ["without its first page", (pdf) => pdf.removePage(0)],
    ["with a white page instead of the second", (pdf) => (pdf.removePage(1), pdf.addPage([612, 792]))],
    [
      "with words on its second page",
      (pdf) => pdf.getPage(1).drawText("row 2: EXIT", { x: 40, y: 6, size: 8 }),
    ],
    ["with a page in front", (pdf) => pdf.insertPage(0, [612, 792]).drawText("EXIT", { x: 50, y: 500 })],
    [
      "whose pages have exchanged what is printed on them",
      (pdf) => {
        const [first, second] = pdf.getPages().map(({ node }) => node);
        const [one, other] = [first, second].map((node) => node?.get(PDFName.of("Contents")));
        if (one === undefined || other === undefined) throw new Error("no contents");
        first?.set(PDFName.of("Contents"), other);
        second?.set(PDFName.of("Contents"), one);
      },
    ],
  ])("is doubted %s", async (_, change) => {
    expect(await changed(change)).not.toEqual([]);
  });
});

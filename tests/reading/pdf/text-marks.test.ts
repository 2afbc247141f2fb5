import { degrees, PDFDocument } from "pdf-lib";
import type { PDFPageProxy } from "pdfjs-dist/legacy/build/pdf.mjs";
import { expect, test } from "vitest";
import type { Box } from "../../../src/reading/facts.ts";
import { withPdf } from "../../../src/reading/pdf/pdf.ts";
import { textOn, textWithin } from "../../../src/reading/pdf/text-marks.ts";

/** The texts found in one frame of a page with the word LOBBY at 100, 100, in a size of 10. */
async function found(frame: Box, turned = 0) {
  const pdf = await PDFDocument.create();
  pdf.addPage([400, 400]).drawText("LOBBY", { x: 100, y: 100, size: 10, rotate: degrees(turned) });
  const marks = await withPdf(await pdf.save(), async (open) => textWithin(await open.getPage(1), [frame]));
  return marks.map(({ what, text, box }) => [what, text, ...box.map(Math.round)]);
}

// Helvetica's advances (Adobe's metrics): L 556, O 778, B 667, B 667, Y 667 make 3335, so 33 points in a size of 10.
test.each<[number, Box, number[]]>([
  [0, [95, 98, 160, 112], [100, 100, 133, 110]],
  [45, [80, 90, 140, 140], [93, 100, 124, 131]],
  [90, [85, 95, 102, 140], [90, 100, 100, 133]],
  [180, [60, 88, 105, 102], [67, 90, 100, 100]],
  [270, [98, 60, 112, 105], [100, 67, 110, 100]],
])("a word that is turned by %d degrees is found where it stands", async (turned, frame, box) => {
  expect(await found(frame, turned)).toEqual([["text", "LOBBY", ...box]]);
});

test("a word outside of all frames is not found", async () => {
  expect(await found([200, 98, 260, 112])).toEqual([]);
});

/** A page with so many pieces of text, a hundred at a time, and what was asked of it. */
function pageOf(pieces: number, str = "x", matrix = [10, 0, 0, 10]) {
  const asked: string[] = [];
  const streamTextContent = () => {
    let left = pieces;
    asked.push("opened");
    return new ReadableStream({
      pull(controller) {
        const item = { str, transform: [...matrix, 0, 0], width: 5, height: 10 };
        controller.enqueue({ items: Array.from({ length: Math.min(100, left) }, () => item) });
        left -= 100;
        if (left <= 0) controller.close();
      },
      cancel: () => void asked.push("given up"),
    });
  };
  return { page: { streamTextContent } as unknown as PDFPageProxy, asked };
}
const everywhere: Box = [-1, -1, 20, 20];

test("a page of 20,000 pieces of text is read, one of more is given up", async () => {
  const [within, beyond] = [pageOf(20_000), pageOf(20_001)];
  expect(await textWithin(within.page, [everywhere])).toHaveLength(20_000);
  await expect(textWithin(beyond.page, [everywhere])).rejects.toThrow("endless");
  expect([within.asked, beyond.asked[0]]).toEqual([["opened"], "opened"]);
});

test("blanks are no text, and where there is no frame nobody looks", async () => {
  expect(await textWithin(pageOf(1, " ").page, [everywhere])).toEqual([]);
  const { page, asked } = pageOf(1);
  expect(await textWithin(page, [])).toEqual([]);
  expect(asked).toEqual([]);
});

test("text that is drawn in no size stands at one point", async () => {
  expect(await textOn(pageOf(1, "x", [0, 0, 0, 0]).page)).toEqual([{ text: "x", box: [0, 0, 0, 0] }]);
});

import { PDFDocument, PDFName, type PDFRef } from "pdf-lib";
import { afterAll, expect, test } from "vitest";
import type { FileFacts } from "../../src/reading/facts.ts";
import { judge } from "../../src/reading/judge.ts";
import { openPool } from "../../src/sandbox/pool.ts";
import { catalogue, editions, forms } from "../make/config.ts";
import { sampleSheets } from "../make/odd-sheets/sheets.ts";

const log = { info: () => undefined, warn: () => undefined };
const reader = openPool({ log, processes: 1, limits: { pagesMs: 3000 }, forms: await forms() });
afterAll(() => reader.close());

const [sample] = await sampleSheets();
if (sample === undefined) throw new Error("no sample sheet");
const { filled } = sample;

/** A page that draws drawings that draw drawings: ten of each in each, so many levels deep. */
async function nested(levels: number): Promise<Uint8Array> {
  const pdf = await PDFDocument.load(filled, { updateMetadata: false });
  const { context } = pdf;
  const level = (below: PDFRef | undefined): PDFRef =>
    context.register(
      context.stream(below === undefined ? "0 0 1 rg 0 0 9 9 re f" : "/X Do ".repeat(10), {
        Type: "XObject",
        Subtype: "Form",
        BBox: [0, 0, 9, 9],
        Resources: below === undefined ? {} : { XObject: { X: below } },
      }),
    );
  let drawing = level(undefined);
  for (let i = 0; i < levels; i++) drawing = level(drawing);
  const page = pdf.getPage(0);
  const key = page.node.newXObject("X", drawing);
  page.node.addContentStream(context.register(context.stream(`${key.asString()} Do`)));
  page.node.set(PDFName.of("Tabs"), PDFName.of("W"));
  return pdf.save({ updateFieldAppearances: false });
}

async function read(bytes: Uint8Array): Promise<FileFacts> {
  const opened = await reader.file(bytes);
  if (!opened.ok) throw new Error(opened.why);
  return opened.value;
}

const doubtsIn = (facts: FileFacts) =>
  judge(facts, { id: "1/1", file: "a.pdf" }, { catalogue, editions }).sheet?.doubts;

test("in a reader process pages are compared with the blank forms that it was given", async () => {
  const facts = await read(filled);
  expect(facts).toMatchObject({ kind: "pdf", differences: [] });
  expect(doubtsIn(facts)).toEqual([]);
  // The same on a page that has a little more.
  expect(doubtsIn(await read(await nested(1)))).toMatchObject([{ what: "something-more", kind: "drawn" }]);
});

test("a page that takes the renderer's life costs no field, and a person looks at it", async () => {
  const plain = await read(filled);
  const facts = await read(await nested(9));
  if (facts.kind !== "pdf" || plain.kind !== "pdf") throw new Error("no form");
  expect(facts.fields).toEqual(plain.fields);
  expect(facts.pages).toBeUndefined();
  expect(doubtsIn(facts)).toEqual([{ what: "unseen" }]);
  // The next sheet has a process of its own.
  expect(doubtsIn(await read(filled))).toEqual([]);
});

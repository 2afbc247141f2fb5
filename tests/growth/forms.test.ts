import { PDFDocument } from "pdf-lib";
import { expect, test } from "vitest";
import { judge } from "../../src/reading/judge.ts";
import { openPdf } from "../../src/reading/pdf/open-pdf.ts";
import { readFormByWalking } from "../../src/reading/pdf/walked-form.ts";
import { openForWalking } from "../../src/reading/pdf/walked-pdf.ts";
import { isWhole } from "../../src/reading/pdf/whole.ts";
import { sheetsIn } from "../../src/reading/sheets-in.ts";
import { catalogue, editions } from "../make/config.ts";
import { formFacts, frameAt, pageFacts } from "../make/facts.ts";
import { type Grown, grown } from "../make/grown.ts";
import { growthOf, mostGrowth } from "../make/growth.ts";
import { formWith, type RawObject, rawPdf, textField } from "../make/hostile/raw-pdf.ts";

const many = <T>(size: number, make: (n: number) => T): T[] =>
  Array.from({ length: size }, (_, n) => make(n));
const [edition] = editions;
if (edition === undefined) throw new Error("no edition");
const refs = (from: number, size: number): string => many(size, (n) => `${from + n} 0 R`).join(" ");

/** A page with so many fields. */
function fields(size: number): Buffer {
  const objects: Record<number, RawObject> = {};
  for (let n = 0; n < size; n++) objects[10 + n] = textField(`field ${n}`);
  return formWith({
    3: `<</Type/Page/Parent 2 0 R/MediaBox[0 0 300 300]/Annots[${refs(10, size)}]/Contents 7 0 R>>`,
    4: `<</Fields[${refs(10, size)}]>>`,
    ...objects,
  });
}

/** One field that shows at so many places. */
function widgets(size: number): Buffer {
  const objects: Record<number, RawObject> = {};
  for (let n = 0; n < size; n++)
    objects[10 + n] = `<</Type/Annot/Subtype/Widget/Parent 5 0 R/Rect[20 20 90 40]/F 4/P 3 0 R>>`;
  return formWith({
    3: `<</Type/Page/Parent 2 0 R/MediaBox[0 0 300 300]/Annots[${refs(10, size)}]/Contents 7 0 R>>`,
    4: "<</Fields[5 0 R]>>",
    5: `<</FT/Tx/T(order)/V(x)/Kids[${refs(10, size)}]>>`,
    ...objects,
  });
}

function pages(size: number): Buffer {
  const objects: Record<number, RawObject> = {};
  for (let n = 0; n < size; n++)
    objects[10 + n] = "<</Type/Page/Parent 2 0 R/MediaBox[0 0 300 300]/Contents 7 0 R>>";
  return formWith({ 2: `<</Type/Pages/Kids[3 0 R ${refs(10, size)}]/Count ${size + 1}>>`, ...objects });
}

/** A word again and again, in comments before the end of a file. */
const words =
  (word: string) =>
  (size: number): Buffer => {
    const pdf = rawPdf({ 1: "<</Type/Catalog/Pages 2 0 R>>", 2: "<</Type/Pages/Kids[]/Count 0>>" });
    const end = pdf.indexOf("xref\n");
    const comment = Buffer.from(`%${word.repeat(size)}\n`);
    const table = Buffer.from(
      pdf
        .subarray(end)
        .toString("latin1")
        .replace(/startxref\n\d+/, `startxref\n${end + comment.length}`),
      "latin1",
    );
    return Buffer.concat([pdf.subarray(0, end), comment, table]);
  };

async function form(size: number): Promise<PDFDocument> {
  return openForWalking(fields(size));
}

const file = { id: "1/1", file: "a.pdf" };

test.each(
  Object.entries({
    "words such as /ObjStm": grown(20_000, words("/ObjStm "), isWhole),
    "words such as stream": grown(20_000, words("stream "), isWhole),
    "words such as obj": grown(20_000, words("obj /ObjStm stream "), isWhole),
    "fields, walked": grown(800, form, async (pdf) => readFormByWalking(await pdf)),
    "fields, by both readers": grown(300, fields, (bytes) => openPdf(bytes)),
    "widgets of a field": grown(300, widgets, (bytes) => openPdf(bytes)),
    pages: grown(200, pages, (bytes) => openPdf(bytes)),
    "comments in a file": grown(50_000, words("a comment "), (bytes) => openPdf(bytes)),
    "fields that are to be judged": grown(
      1000,
      (size) =>
        formFacts(
          edition,
          {},
          { fields: many(size, (n) => ({ name: `page${n}.order_number`, kind: "text", values: ["x"] })) },
        ),
      (facts) => judge(facts, file, { editions, catalogue }),
    ),
    "widgets that are to be judged": grown(
      2000,
      (size) =>
        formFacts(
          edition,
          { order_number: "x" },
          {
            widgets: many(size, (n) => ({
              field: edition.fields[n % edition.fields.length]?.name ?? "",
              page: 1,
              box: frameAt(n),
              hidden: false,
            })),
          },
        ),
      (facts) => judge(facts, file, { editions, catalogue }),
    ),
    "marks on a page": grown(
      500,
      (size) =>
        formFacts(
          edition,
          { order_number: "x" },
          {
            pages: [
              pageFacts(many(size, (n) => ({ what: "text", box: frameAt(n % 60), text: `word ${n}` }))),
            ],
          },
        ),
      (facts) => judge(facts, file, { editions, catalogue }),
    ),
    "names that count as sheets": grown(
      2000,
      (size) =>
        formFacts(
          edition,
          {},
          {
            fields: many(size, (n) => ({
              name: `${"a.".repeat(n % 40)}OrderNo_${n}`,
              kind: "text",
              values: ["x"],
            })),
          },
        ),
      (facts) => sheetsIn(facts, editions),
    ),
  } satisfies Record<string, Grown>),
)("%s keep pace with their number", async (_, { size, make, use }) => {
  expect(await growthOf(make, size, use as (subject: unknown) => unknown)).toBeLessThan(mostGrowth);
});

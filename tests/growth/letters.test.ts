import { expect, test } from "vitest";
import { zipOf } from "../../src/demo/zip.ts";
import { openParts, usualCaps } from "../../src/intake/open.ts";
import { documentWords } from "../../src/reading/archive/document-words.ts";
import { openZip } from "../../src/reading/archive/zip.ts";
import { tellApart } from "../../src/reading/file-name.ts";
import { readLetter } from "../../src/reading/letter/letter.ts";
import { leavesOf } from "../../src/reading/letter/mime.ts";
import { answersBeside } from "../../src/reading/reply/answers-beside.ts";
import { speaksAgainstIt } from "../../src/reading/reply/file-names.ts";
import { type Grown, grown } from "../make/grown.ts";
import { growthOf, mostGrowth } from "../make/growth.ts";
import { bytesOf, filePart, mixed } from "../make/mime.ts";
import { directReader } from "../make/reader.ts";

const many = <T>(size: number, make: (n: number) => T): T[] =>
  Array.from({ length: size }, (_, n) => make(n));
const letter = (header: readonly string[], body: readonly string[]): Buffer =>
  bytesOf(["From: Ines <ines@brightwire.example>", "Subject: sheets", ...header, ...body]);
const facts = {
  numbers: [],
  projects: [],
  marks: [],
  names: [],
  finishes: [],
  otherFinishes: [],
  called: new Map(),
  sheets: [],
  earlier: [],
  files: [],
  plates: [],
  devices: [],
  attached: [],
};
const endless = Number.POSITIVE_INFINITY;
const caps = { ...usualCaps, files: endless, total: endless };

const answersIn = (text: string): unknown =>
  answersBeside(
    text,
    {
      open: [3, 4],
      others: 0,
      answer: text,
      subject: "sheets",
      isFurniture: () => false,
      names: [],
      bringsSheets: false,
      isOnSheets: () => false,
      sheetsNamed: () => undefined,
    },
    () => [],
  );

test.each(
  Object.entries({
    "files of one name": grown(
      10_000,
      (size) => many(size, () => ({ file: "sheet.pdf" })),
      (files) => tellApart(files),
    ),
    "files whose names are those that others would be given": grown(
      5_000,
      (size) => many(size, (n) => ({ file: n % 2 === 0 ? "a.pdf" : `a (${n}).pdf` })),
      (files) => tellApart(files),
    ),
    "names in an archive": grown(
      2000,
      (size) => zipOf(many(size, (n) => ({ file: `sheet ${n}.pdf`, bytes: Buffer.from("x") }))),
      openZip,
    ),
    "files in archives": grown(
      5,
      (size) =>
        many(size, (n) => ({
          name: `${n}.zip`,
          bytes: zipOf(many(200, () => ({ file: "a.txt", bytes: Buffer.from("x") }))),
          looks: false,
        })),
      (parts) => openParts(directReader, parts, "1", caps),
    ),
    "parts of a letter": grown(
      1_000,
      (size) => letter([], mixed("b", ...many(size, (n) => filePart(`${n}.txt`, `Hello ${n}`)))),
      leavesOf,
    ),
    "parts of a letter, by both parsers": grown(
      100,
      (size) => letter([], mixed("b", ...many(size, (n) => filePart(`${n}.txt`, `Hello ${n}`)))),
      readLetter,
    ),
    "lines of a header": grown(
      1000,
      (size) =>
        letter(
          many(size, (n) => `X-${n}: y`),
          ["", "Hello"],
        ),
      readLetter,
    ),
    "folds of a header line": grown(
      1_000,
      (size) => letter(["X-Long: a", ...many(size, () => " b")], ["", "Hello"]),
      readLetter,
    ),
    "lines of a text": grown(
      20_000,
      (size) => letter([], ["", ...many(size, (n) => `Line ${n} of many, please.`)]),
      readLetter,
    ),
    "marks of a document that never end": grown(
      20_000,
      (size) => "<w:p><w:delText><text:tracked-changes>&#x".repeat(size),
      (xml) => documentWords([xml]),
    ),
    "a file's name with its folders": grown(
      2_000,
      (size) => "old x 2 K-4_".repeat(size),
      (name) => speaksAgainstIt(name, facts),
    ),
    "links in a text": grown(
      5_000,
      (size) => letter([], ["", ...many(size, (n) => `https://drive.example/f/kT7pQ2xZ9d${n}`)]),
      readLetter,
    ),
    "a text without a blank": grown(500_000, (size) => letter([], ["", "x".repeat(size)]), readLetter),
    "quotes within quotes": grown(
      10_000,
      (size) => letter([], ["", ...many(size, (n) => `${">".repeat(n % 50)} quoted`)]),
      readLetter,
    ),
    "a text as HTML": grown(
      2000,
      (size) => letter(["Content-Type: text/html"], ["", ...many(size, (n) => `<p>Line <b>${n}</b></p>`)]),
      readLetter,
    ),
    "lines of a reply": grown(
      250,
      (size) => many(size, () => "3 yes, 4 yes, 3 and 4 yes yes yes").join("\n"),
      answersIn,
    ),
    "words of a line that is no answer after all": grown(
      4,
      (size) => many(100, () => `${"yes,".repeat(size)}x`).join("\n"),
      answersIn,
    ),
  } satisfies Record<string, Grown>),
)("%s keep pace with their number", async (_, { size, make, use }) => {
  expect(await growthOf(make, size, use as (subject: unknown) => unknown)).toBeLessThan(mostGrowth);
});

import { describe, expect, test } from "vitest";
import { winmailOf } from "../../src/demo/tnef.ts";
import { zipOf } from "../../src/demo/zip.ts";
import { openFile } from "../../src/reading/open-file.ts";
import { bytesOf, filePart, mixed, onePdf } from "../make/mime.ts";
import { plainPdf } from "../make/pdf.ts";

const latin1 = (text: string): Buffer => Buffer.from(text, "latin1");
const letter = (...lines: string[]): Buffer =>
  bytesOf(["From: a@b.example", "To: c@d.example", "Subject: x", ...lines]);
const pdf = { file: "a.pdf", bytes: Buffer.from(onePdf) };

describe("a file is told by what it holds:", () => {
  test.each([
    ["a JPEG", latin1("\xff\xd8\xff\xe0".padEnd(100_000, "\0")), "picture"],
    ["a small JPEG", latin1("\xff\xd8\xff\xe0".padEnd(99_999, "\0")), "small-picture"],
    ["a document of an older office program", latin1("\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"), "office"],
    ["rich text", latin1("{\\rtf1 Hello}"), "office"],
    [
      "a document of a newer one",
      zipOf([{ file: "[Content_Types].xml", bytes: Buffer.from("<x/>") }]),
      "office",
    ],
    ["an archive that is not opened", latin1("7z\xbc\xaf\x27\x1c\0\x04"), "other"],
    ["another", latin1("Rar!\x1a\x07\x01\0"), "other"],
    ["nothing", Buffer.alloc(0), "other"],
  ])("%s", async (_, bytes, kind) => {
    expect(await openFile(bytes)).toEqual({ kind });
  });

  test("a PDF", async () => {
    expect(await openFile(await plainPdf("Hello"))).toMatchObject({ kind: "pdf", pageCount: 1 });
  });

  test.each([
    ["a zip archive", zipOf([pdf])],
    ["Outlook's container", winmailOf([pdf])],
    ["uuencoded text", latin1("begin 644 a.pdf\n*)5!$1BTQ+C<@80  \n \nend\n")],
  ])("%s, with the file in it", async (_, bytes) => {
    expect(await openFile(bytes)).toEqual({
      kind: "archive",
      files: [{ name: "a.pdf", bytes: pdf.bytes, looks: false }],
      left: [],
    });
  });

  test("a forwarded letter, with the file in it and with its words", async () => {
    expect(await openFile(letter(...mixed("b", ["", "see below"], filePart("a.pdf"))))).toEqual({
      kind: "archive",
      files: [{ name: "a.pdf", bytes: pdf.bytes, looks: false }],
      left: [],
      words: { text: "From:\nSubject: x\n\nsee below" },
    });
  });

  test("a station list in text, with its words, and any other text", async () => {
    expect(await openFile(latin1("Station list,\nOrder number,FM-80\n"))).toMatchObject({
      kind: "list",
      text: { text: expect.stringContaining("FM-80") },
    });
    expect(await openFile(latin1("Order number,FM-80\n"))).toMatchObject({ kind: "text" });
  });

  test("a letter of words alone is a text", async () => {
    expect(await openFile(letter("", "One more, please."))).toEqual({
      kind: "text",
      words: { text: "From:\nSubject: x\n\nOne more, please." },
    });
  });
});

test("what is known of a PDF early is told before the rest", async () => {
  const told: unknown[] = [];
  const facts = await openFile(await plainPdf("Hello"), (early) => {
    told.push(early);
    return Promise.resolve();
  });
  // First what its fields hold, when nobody knows yet whether it is whole.
  expect(told).toMatchObject([
    { kind: "pdf", pageCount: 1, recovered: true },
    { kind: "pdf", pageCount: 1, recovered: false },
  ]);
  expect(facts).toMatchObject({ pages: [{}] });
});

test("of a container with more than two hundred files the rest is told by its number", async () => {
  const facts = await openFile(
    winmailOf(Array.from({ length: 205 }, (_, i) => ({ file: `${i}`, bytes: pdf.bytes }))),
  );
  expect(facts).toMatchObject({
    files: { length: 200 },
    left: [{ name: "5 more files", kind: "too-large" }],
  });
});

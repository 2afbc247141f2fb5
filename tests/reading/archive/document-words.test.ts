import { expect, test } from "vitest";
import { zipOf } from "../../../src/demo/zip.ts";
import { openZip } from "../../../src/reading/archive/zip.ts";

const entry = (file: string, text: string): { file: string; bytes: Buffer } => ({
  file,
  bytes: Buffer.from(text),
});
const word = (body: string): Uint8Array =>
  zipOf([
    entry("[Content_Types].xml", "<Types/>"),
    entry("word/document.xml", `<w:document><w:body>${body}</w:body></w:document>`),
  ]);
const openText = (body: string, type = "text"): Uint8Array =>
  zipOf([
    entry("mimetype", `application/vnd.oasis.opendocument.${type}`),
    entry("content.xml", `<office:document-content>${body}</office:document-content>`),
  ]);
const lines = (bytes: Uint8Array): unknown => {
  const facts = openZip(bytes);
  return facts.kind === "text" ? facts.words.text.split("\n").filter((line) => line !== "") : facts.kind;
};

// ECMA-376-1 §17.3: runs, tabs, breaks, and text that was deleted while changes were tracked.
test("a document of a word processor says its paragraphs", () => {
  const body =
    "<w:p><w:r><w:t>Engrave </w:t></w:r><w:r><w:t>EXIT &amp; STAIR&#8217;S</w:t></w:r></w:p>" +
    "<w:p><w:del><w:r><w:delText>not two</w:delText></w:r></w:del><w:r><w:t>Thanks</w:t><w:br/><w:t>Dana</w:t></w:r></w:p>";
  expect(lines(word(body))).toEqual(["Engrave EXIT & STAIR’S", "Thanks", "Dana"]);
});

// OpenDocument 1.2 part 1 §5.1 and §5.5.
test("and so does one in the open format", () => {
  const body =
    "<text:tracked-changes><text:p>not two</text:p></text:tracked-changes>" +
    "<text:h>Remarks</text:h><text:p>Button 2<text:s/>as EXIT<text:line-break/>Dana</text:p>";
  expect(lines(openText(body))).toEqual(["Remarks", "Button 2 as EXIT", "Dana"]);
});

test("words that are struck out make it unsure", () => {
  expect(openZip(word("<w:p><w:r><w:rPr><w:strike/></w:rPr><w:t>two</w:t></w:r></w:p>"))).toMatchObject({
    words: { unsure: true },
  });
});

test.each([
  ["a table", openText("<table:table/>", "spreadsheet")],
  ["a table of the other format", zipOf([entry("[Content_Types].xml", ""), entry("xl/workbook.xml", "")])],
])("%s is not read", (_, bytes) => {
  expect(lines(bytes)).toBe("office");
});

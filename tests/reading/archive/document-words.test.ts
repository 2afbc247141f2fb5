import { expect, test } from "vitest";
import { zipOf } from "../../../src/demo/zip.ts";
import { wordParts } from "../../../src/reading/archive/document-words.ts";
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

test("an empty list of changes leaves the words below it", () => {
  const body = "<text:tracked-changes/><text:p>Button 2 as EXIT</text:p>";
  expect(lines(openText(body))).toEqual(["Button 2 as EXIT"]);
});

test("a list of changes is left out wherever it stands", () => {
  const bytes = zipOf([
    entry("mimetype", "application/vnd.oasis.opendocument.text"),
    entry("content.xml", "<text:tracked-changes>not two</text:tracked-changes><text:p>two</text:p>"),
  ]);
  expect(lines(bytes)).toEqual(["two"]);
});

test("words in spans and sections, and settings of tabs, are as they read", () => {
  expect(
    lines(openText("<text:section><text:p>SA<text:span>LON</text:span></text:p></text:section>")),
  ).toEqual(["SALON"]);
  const body =
    "<w:p><w:tabs/><w:r><w:t>SA</w:t></w:r><w:brand/><w:r><w:t>LON</w:t><w:tab/><w:t>B</w:t></w:r></w:p>";
  expect(lines(word(body))).toEqual(["SALON B"]);
});

// XML 1.0 §4.1 and §4.6
test.each([
  ["&lt;&gt;&quot;&apos;&amp;", "<>\"'&"],
  ["&#x41;&#65;", "AA"],
  ["&#x10FFFF;", "\u{10FFFF}"],
  ["&#x110000;&nbsp;&zz;", "&#x110000;&nbsp;&zz;"],
])("%s is written for %s", (written, read) => {
  expect(lines(word(`<w:p><w:t>${written}</w:t></w:p>`))).toEqual([read]);
});

test.each([
  ["struck out", word("<w:p><w:rPr><w:strike/></w:rPr><w:t>two</w:t></w:p>"), true],
  ["struck out twice", word('<w:p><w:rPr><w:dstrike w:val="true" /></w:rPr><w:t>two</w:t></w:p>'), true],
  ["expressly not struck out", word('<w:p><w:rPr><w:strike w:val="0"/></w:rPr><w:t>two</w:t></w:p>'), false],
  [
    "struck out in the open format",
    openText('<style:text-properties text-line-through-style="solid"/><text:p>two</text:p>'),
    true,
  ],
  [
    "expressly not struck out there",
    openText('<style:text-properties text-line-through-style="none"/><text:p>two</text:p>'),
    false,
  ],
])("words that are %s make it unsure or not", (_, bytes, unsure) => {
  const facts = openZip(bytes);
  expect(facts.kind === "text" && (facts.words.unsure ?? false)).toBe(unsure);
});

test.each([
  ["a table", openText("<table:table/>", "spreadsheet")],
  ["a table of the other format", zipOf([entry("[Content_Types].xml", ""), entry("xl/workbook.xml", "")])],
])("%s is not read", (_, bytes) => {
  expect(lines(bytes)).toBe("office");
});

test("words stand in the parts of a document that bear these names, and in no others", () => {
  const says = [
    "word/document.xml",
    "word/header12.xml",
    "word/footer1.xml",
    "content.xml",
    "Word/Comments.xml",
  ];
  const saysNot = [
    "word/document.xml.rels",
    "word/styles.xml",
    "my/word/document.xml",
    "xcontent.xml",
    "content2.xml",
  ];
  expect(says.filter((name) => !wordParts.test(name))).toEqual([]);
  expect(saysNot.filter((name) => wordParts.test(name))).toEqual([]);
});

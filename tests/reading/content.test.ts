import { describe, expect, test } from "vitest";
import { zipOf } from "../../src/demo/zip.ts";
import { contentOf } from "../../src/reading/content.ts";

const of = (text: string): string | undefined => contentOf(Buffer.from(text, "latin1"));

test.each([
  ["%PDF-1.7", "pdf"],
  [`${" ".repeat(1019)}%PDF-`, "pdf"],
  [`${" ".repeat(1020)}%PDF-`, undefined],
  ["\xff\xd8\xff\xe0", "picture"],
  ["\x89PNG\r\n\x1a\n", "picture"],
  ["GIF89a", "picture"],
  ["RIFF\0\0\0\0WEBPVP8 ", "picture"],
  ["RIFF\0\0\0\0WAVEfmt ", "recording"],
  ["BM\x36\0\0\0\0\0\0\0", "picture"],
  ["BMW drives", undefined],
  ["II*\0", "picture"],
  ["MM\0*", "picture"],
  ["\0\0\0\x18ftypheic", "picture"],
  ["\0\0\0\x18ftypmif1", "picture"],
  ["\0\0\0\x18ftypmp42", "recording"],
  ["\0\0\0\x1cftypM4A ", "recording"],
  ["RIFF\0\0\0\0AVI LIST", "recording"],
  ["FORM\0\0\0\0AIFFCOMM", "recording"],
  ["OggS\0\x02", "recording"],
  ["ID3\x02", "recording"],
  ["ID3\x03", "recording"],
  ["ID3\x04", "recording"],
  ["\xff\xfb\x90", "recording"],
  ["\xff\xf3\x90", "recording"],
  ["#!AMR\n", "recording"],
  ["fLaC\0", "recording"],
  ["caff\0\x01", "recording"],
  ["\x1a\x45\xdf\xa3", "recording"],
  ["\x30\x26\xb2\x75\x8e\x66\xcf\x11", "recording"],
  ["ID 3 is wrong", undefined],
  ["caffeine", undefined],
  ["PK\x03\x04", "zip"],
  ["PK\x05\x06", "zip"],
  ["\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", "ole"],
  ["{\\rtf1", "rtf"],
  ["\x78\x9f\x3e\x22", "tnef"],
  ["\x30\x80\x06\x09\x2a\x86\x48\x86\xf7\x0d\x01\x07\x02\xa0", "signed"],
  ["\x30\x82\x10\x00\x06\x09\x2a\x86\x48\x86\xf7\x0d\x01\x07\x02\xa0", "signed"],
  // 1.2.840.113549.1.7.3: enveloped, that is, encrypted
  ["\x30\x82\x10\x00\x06\x09\x2a\x86\x48\x86\xf7\x0d\x01\x07\x03\xa0", undefined],
  ["-----BEGIN PKCS7-----", "signed"],
  ["\0\x05\x16\x07", "resource-fork"],
  ["\0\0\0\x01Bud1", "resource-fork"],
  ["begin 644 a.pdf\n#86)C\n`\nend", "uuencoded"],
  ["begin 644 times.\nDear all", "uuencoded"],
  ["begin 644 times.\n\nDear all", undefined],
  ["7z\xbc\xaf\x27\x1c", undefined],
  ["", undefined],
])("%j is %s", (text, content) => {
  expect(of(text)).toBe(content);
});

test("an archive that holds a PDF as it is, within its first bytes, is an archive", () => {
  expect(contentOf(zipOf([{ file: "%PDF-1.7", bytes: Buffer.from("a") }]))).toBe("zip");
});

describe("a letter is told by its header", () => {
  const header = "Received: from a\r\n by b\r\nFrom: a@b.example\r\nSubject: sheets";
  test.each([
    [`${header}\r\n\r\nHello`, "letter"],
    [`From someone Mon Jan  1\n${header.replaceAll("\r", "")}\n\nHello`, "letter"],
    [`${header}\r\nX-Long: ${"x".repeat(5000)}`, "letter"],
    ["Content-Type: text/plain\r\n\r\nHello", "letter"],
    ["From: Ines\nSubject: sheets\n\nHello", undefined],
    [`${header}\r\n\r\n%PDF-1.7`, "letter"],
    [`Dear all,\r\n${header}\r\n\r\nHello`, undefined],
    ["content-type is: a word", undefined],
  ])("%j: %s", (text, content) => {
    expect(of(text)).toBe(content);
  });
});

import { expect, test } from "vitest";
import { readLetter } from "../../../src/reading/letter/letter.ts";
import { bytesOf, filePart, mixed } from "../../make/mime.ts";

const words = async (...lines: Parameters<typeof bytesOf>[0]) => {
  const { text, textUnsure, otherTexts } = await readLetter(
    bytesOf(["From: greta@fallowmere.example", ...lines]),
  );
  return { text: text.trim(), textUnsure, otherTexts };
};
const both = (plain: string, html: string) => [
  "Content-Type: multipart/alternative; boundary=cut",
  "",
  "--cut",
  "Content-Type: text/plain",
  "",
  plain,
  "--cut",
  "Content-Type: text/html",
  "",
  html,
  "--cut--",
];

test("a letter in plain text has no other text, and its own is certain", async () => {
  expect(await words("Content-Type: text/plain", "", "Sheets attached.")).toEqual({
    text: "Sheets attached.",
  });
});

test("a page that says more is given beside the plain text", async () => {
  const read = await words(...both("Sheets attached.", "<p>Sheets attached.</p><p>Do not cut.</p>"));
  expect(read.textUnsure).toBeUndefined();
  expect(read.otherTexts?.join("\n")).toContain("Do not cut.");
});

// RFC 2046 §5.1.4: which of the texts a person sees is up to his program. RFC 5545, RFC 1896, RFC 5322.
test.each([
  ["text/calendar", "BEGIN:VCALENDAR"],
  ["text/enriched", "<bold>Do not cut.</bold>"],
  ["text/x-other", "Do not cut."],
])("another text beside those that a letter shows is a file: %s", async (type, said) => {
  const lines = both("Sheets attached.", "<p>Sheets attached.</p>").slice(0, -1);
  const letter = bytesOf([
    "From: a@b.example",
    ...lines,
    "--cut",
    `Content-Type: ${type}`,
    "",
    said,
    "--cut--",
  ]);
  const { parts } = await readLetter(letter);
  expect(parts.map(({ bytes }) => Buffer.from(bytes).toString().trim())).toEqual([said]);
});

test("a page that strikes words out makes the text unsure", async () => {
  const read = await words(...both("Sheets attached.", "<p>Sheets <s>attached</s>.</p>"));
  expect(read.textUnsure).toBe(true);
});

test("a forwarded letter's words come under its subject", async () => {
  const inner = bytesOf([
    "From: pete@lund.example",
    "Subject: CANCEL",
    "Content-Type: text/plain",
    "",
    "Do not cut.",
  ]);
  const lines = mixed(
    "b",
    ["Content-Type: text/plain", "", "See below."],
    filePart("f.eml", inner, "message/rfc822"),
  );
  const read = await words(...lines);
  expect(read.text).toBe("See below.");
  expect(read.otherTexts?.map((text) => text.trim())).toEqual(["From:\nSubject: CANCEL\n\nDo not cut."]);
});

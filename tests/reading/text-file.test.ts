import { describe, expect, test } from "vitest";
import { openFile } from "../../src/reading/open-file.ts";

const wordsIn = async (text: string | Uint8Array): Promise<unknown> => {
  const facts = await openFile(typeof text === "string" ? Buffer.from(text) : text);
  return facts.kind === "text" ? facts.words : facts.kind;
};

describe("a text is read in every encoding in which programs save it:", () => {
  const said = "Étage 2: gravure en rouge";

  test.each([
    ["UTF-8", Buffer.from(said)],
    ["UTF-8 with its mark", Buffer.from(`\uFEFF${said}`)],
    ["UTF-16, little end first", Buffer.from(`\uFEFF${said}`, "utf16le")],
    ["UTF-16, big end first", Buffer.from(`\uFEFF${said}`, "utf16le").swap16()],
    ["windows-1252", Buffer.from(said, "latin1")],
  ])("%s", async (_, bytes) => {
    expect(await wordsIn(bytes)).toEqual({ text: said });
  });
});

test.each([
  ["nothing", ""],
  ["blanks", " \r\n\t"],
  ["bytes that no text has", "MZ\u0090\0\u0003"],
  ["a recording", "MThd\0\0\0\u0006"],
])("%s is no text", async (_, text) => {
  expect(await wordsIn(Buffer.from(text, "latin1"))).toBe("other");
});

test("what begins as a text is one, whatever it speaks of further down", async () => {
  const said = ["Attached as BEGIN:VCARD says", "What does <html> mean there?"];
  for (const text of said) expect(await wordsIn(text)).toEqual({ text });
});

// The lines are those of RFC 5545 §3.6.1 and §3.1, folded as there, with words of our own.
test("what an entry of a calendar says", async () => {
  const entry = `BEGIN:VCALENDAR
VERSION:2.0
PRODID:-//Brightwire//Diary//EN
METHOD:REQUEST
BEGIN:VEVENT
UID:20261110T130000Z-318@brightwire.example
DTSTART:20261112T090000Z
SUMMARY;LANGUAGE=en:Hold AW-318
DESCRIPTION:The owner wants other legends on S-104\\, do not cut
  before Friday.\\nDana
STATUS:CANCELLED
END:VEVENT
END:VCALENDAR
`;
  expect(await wordsIn(entry.replaceAll("\n", "\r\n"))).toEqual({
    text: "Hold AW-318\n\nThe owner wants other legends on S-104, do not cut before Friday.\nDana\n\nCANCELLED",
  });
});

test("a card says only its note", async () => {
  expect(
    await wordsIn(
      "BEGIN:VCARD\nVERSION:4.0\nFN:Dana Whitlock\nTEL:+1-555-0142\nNOTE:Ring twice\nEND:VCARD\n",
    ),
  ).toEqual({
    text: "Ring twice",
  });
});

describe("a page", () => {
  test("says what it shows", async () => {
    expect(
      await wordsIn("<!DOCTYPE html><html><body><p>Engrave <b>EXIT</b> on button&nbsp;2</p></body></html>"),
    ).toEqual({ text: "Engrave EXIT on button\u00A02" });
  });

  test.each([
    ["strikes words out", "<html><body>Make <s>two</s> four</body></html>"],
    ["hides some", '<html><body>Make four<p style="display:none">no</p></body></html>'],
  ])("that %s is unsure", async (_, page) => {
    expect(await wordsIn(page)).toEqual({ text: "", unsure: true });
  });
});

import { simpleParser } from "mailparser";
import { expect, test } from "vitest";
import { takeLetter } from "../../src/intake/take.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";
import { bytesOf, filePart, mixed } from "../make/mime.ts";
import { directReader } from "../make/reader.ts";

const bytes = bytesOf([
  "From: Ines <ines@brightwire.example>",
  "To: orders@quillgate.example",
  "Message-ID: <1@brightwire.example>",
  "Subject: sheets",
  ...mixed("b", filePart("a.pdf")),
]);

test("a letter that opening does harm is answered, and a person is to look", async () => {
  const sender = keepingSender();
  const reader = { ...directReader, letter: () => Promise.resolve({ ok: false, why: "too slow" } as const) };
  const desk = await temporaryDesk({ sender, reader });
  const { letter } = await takeLetter(desk, bytes, new Date(0));
  const { problems, ...record } = await desk.store.letters.read(letter);
  expect(record).toMatchObject({ state: "sent", verdict: "person", attachments: [] });
  expect(problems.map(({ check, wording }) => [check, wording])).toEqual([["no-sheet", "unsafe"]]);
  const answer = await simpleParser(Buffer.from(sender.kept[0]?.bytes ?? ""));
  expect(answer.text).toContain("could not be opened safely");
});

test("a file that opening does harm is told by its name, and the letter is answered", async () => {
  const sender = keepingSender();
  const reader = { ...directReader, file: () => Promise.resolve({ ok: false, why: "died" } as const) };
  const desk = await temporaryDesk({ sender, reader });
  const { letter } = await takeLetter(desk, bytes, new Date(0));
  expect(await desk.store.letters.read(letter)).toMatchObject({
    state: "sent",
    attachments: [{ file: "a.pdf", kind: "unsafe" }],
  });
  const answer = await simpleParser(Buffer.from(sender.kept[0]?.bytes ?? ""));
  expect(answer.text).toContain("a.pdf");
});

import MailComposer from "nodemailer/lib/mail-composer";
import { expect, test } from "vitest";
import { winmailOf } from "../../src/demo/tnef.ts";
import { zipOf } from "../../src/demo/zip.ts";
import { type OpenedLetter, readLetter } from "../../src/reading/letter/letter.ts";
import { onePdf } from "../make/mime.ts";

/** Letters as a mail library writes them, where others in these tests are written by hand. */
const compose = (letter: ConstructorParameters<typeof MailComposer>[0]): Promise<Buffer> =>
  new MailComposer({ from: "Ines <ines@brightwire.example>", subject: "sheets", ...letter })
    .compile()
    .build();
const told = ({ parts }: OpenedLetter): unknown[] => parts.map(({ name, looks }) => [name, looks]);

const pdf = Buffer.from(onePdf);
const gif = Buffer.from("GIF89a\x09\0\x09\0", "latin1");

test("a text and a page with a logo, and sheets with names of every kind", async () => {
  const read = await readLetter(
    await compose({
      text: "Two sheets.",
      html: '<p>Two sheets.</p><img src="cid:logo">',
      attachments: [
        { filename: "logo.gif", content: gif, cid: "logo", contentDisposition: "inline" },
        { filename: "Café \u201cplan\u201d, rev. 2; final.pdf", content: pdf },
        { filename: `${"long ".repeat(40)}.pdf`, content: pdf, contentType: "application/octet-stream" },
        {
          filename: "電気.pdf",
          content: pdf,
          contentTransferEncoding: "quoted-printable",
          contentDisposition: "inline",
        },
      ],
    }),
  );
  expect(read.text.trim()).toBe("Two sheets.");
  expect(told(read)).toEqual([
    ["logo.gif", true],
    ["Café \u201cplan\u201d, rev. 2; final.pdf", false],
    [`${"long ".repeat(40)}.pdf`, false],
    ["電気.pdf", false],
  ]);
  expect(read.parts.slice(1).every(({ bytes }) => pdf.equals(bytes))).toBe(true);
});

test("a letter forwarded three times over, with a sheet at every level", async () => {
  let letter = await compose({ text: "0", attachments: [{ filename: "0.pdf", content: pdf }] });
  for (const level of [1, 2, 3])
    letter = await compose({
      text: `${level}`,
      attachments: [
        { filename: `${level}.pdf`, content: pdf },
        { filename: "fwd.eml", content: letter, contentType: "message/rfc822" },
      ],
    });
  expect(told(await readLetter(letter))).toEqual([
    ["3.pdf", false],
    ["2.pdf", false],
    ["1.pdf", false],
    ["0.pdf", false],
  ]);
});

test("containers are parts as they are; opening them is another's work", async () => {
  const read = await readLetter(
    await compose({
      attachments: [
        { filename: "sheets.zip", content: zipOf([{ file: "a.pdf", bytes: pdf }]) },
        {
          filename: "winmail.dat",
          content: winmailOf([{ file: "a.pdf", bytes: pdf }]),
          contentType: "application/ms-tnef",
        },
      ],
    }),
  );
  expect(told(read)).toEqual([
    ["sheets.zip", false],
    ["winmail.dat", false],
  ]);
});

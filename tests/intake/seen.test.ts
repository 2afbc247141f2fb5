import { simpleParser } from "mailparser";
import { expect, test } from "vitest";
import { takeLetter } from "../../src/intake/take.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";
import { base64, bytesOf, mixed } from "../make/mime.ts";
import { sampleSheets } from "../make/odd-sheets/sheets.ts";
import { forgeries } from "../make/pages/forged.ts";

test("an answer shows what was seen on a page, and the record keeps no picture beside it", async () => {
  const [sample] = await sampleSheets();
  const remark = forgeries.find(({ how }) => how === "a remark at the foot");
  if (sample === undefined || remark === undefined) throw new Error("nothing to send");
  const sender = keepingSender();
  const desk = await temporaryDesk({ sender });
  const sheet = await remark.make(sample);
  const { letter } = await takeLetter(
    desk,
    bytesOf([
      "From: Ines <ines@brightwire.example>",
      "To: orders@quillgate.example",
      "Message-ID: <1@brightwire.example>",
      "Subject: a sheet",
      ...mixed("b", [
        "Content-Type: application/pdf",
        "Content-Transfer-Encoding: base64",
        'Content-Disposition: attachment; filename="S-104-2.pdf"',
        "",
        base64(sheet),
      ]),
    ]),
    new Date(0),
  );

  const bytes = Buffer.from(sender.kept[0]?.bytes ?? "");
  const { text = "", html, attachments } = await simpleParser(bytes, { keepCidLinks: true });
  const [, file] = /What the page shows: (number \d+\.png)/.exec(text) ?? [];
  expect(text.replace(/\s+/g, " ")).toContain(
    "Something is on the page, in the lower left, beside “Phone”, that our form",
  );
  const picture = attachments.find(({ filename }) => filename === file);
  expect(picture).toMatchObject({ contentType: "image/png", contentDisposition: "inline", related: true });
  expect(html).toContain(`<img src="cid:${picture?.cid}"`);
  // ISO/IEC 15948 §5.2
  expect(picture?.content.subarray(1, 4).toString()).toBe("PNG");

  const { problems } = await desk.store.letters.read(letter);
  const found = problems.find(({ check }) => check === "something-on-page");
  expect(found?.verdict).toBe("person");
  expect(found?.spots[0]?.seen).toMatchObject({ page: 1 });
  expect(JSON.stringify(problems).length).toBeLessThan(4_000);
});

import * as fc from "fast-check";
import { expect, test } from "vitest";
import { readLetter } from "../../src/reading/letter/letter.ts";
import { editions } from "../make/config.ts";
import { answersFor } from "../make/filled.ts";
import { filledForm } from "../make/pdf.ts";
import { readPdf } from "../make/read-pdf.ts";

const runs = { numRuns: 150 };
const [edition] = editions;
if (edition === undefined) throw new Error("no edition");
const sheet = await filledForm(edition, answersFor(edition));

/** Some bytes replaced, a piece cut out, a piece put in. */
function mutated(bytes: Uint8Array): fc.Arbitrary<Uint8Array> {
  const at = fc.nat(bytes.length - 1);
  return fc
    .record({
      flips: fc.array(fc.tuple(at, fc.nat(255)), { maxLength: 20 }),
      cut: fc.option(fc.tuple(at, fc.nat(400))),
      put: fc.option(fc.tuple(at, fc.uint8Array({ maxLength: 40 }))),
    })
    .map(({ flips, cut, put }) => {
      let changed = Buffer.from(bytes);
      for (const [i, byte] of flips) changed[i] = byte;
      if (cut !== null)
        changed = Buffer.concat([changed.subarray(0, cut[0]), changed.subarray(cut[0] + cut[1])]);
      if (put !== null)
        changed = Buffer.concat([changed.subarray(0, put[0]), put[1], changed.subarray(put[0])]);
      return changed;
    });
}

test("reading a PDF never throws, whatever its bytes", async () => {
  const kinds = new Set<string>();
  await fc.assert(
    fc.asyncProperty(mutated(sheet), async (bytes) => {
      const { file } = await readPdf(bytes);
      kinds.add(file.kind);
    }),
    runs,
  );
  // Else the changes were all too gentle or all too rough to show anything.
  expect([...kinds]).toEqual(expect.arrayContaining(["sheet", "damaged"]));
});

const letter = Buffer.from(
  [
    "From: Ines Calloway <ines@brightwire.example>",
    "Message-ID: <a@brightwire.example>",
    "Subject: =?utf-8?Q?Caf=C3=A9?=",
    "MIME-Version: 1.0",
    'Content-Type: multipart/mixed; boundary="b"',
    "",
    "--b",
    "Content-Type: text/html; charset=utf-8",
    "Content-Transfer-Encoding: quoted-printable",
    "",
    "<p>Sheets below=2E</p>",
    "--b",
    "Content-Type: message/rfc822",
    "",
    "Subject: inner",
    'Content-Type: application/pdf; name="inner.pdf"',
    "Content-Transfer-Encoding: base64",
    "",
    "JVBERi0xLjcK",
    "--b",
    'Content-Disposition: attachment; filename="S-104.pdf"',
    "Content-Transfer-Encoding: base64",
    "",
    "JVBERi0xLjcK",
    "--b--",
    "",
  ].join("\r\n"),
);

test("reading a letter never throws, whatever its bytes", async () => {
  const counts = new Set<number>();
  await fc.assert(
    fc.asyncProperty(mutated(letter), async (bytes) => {
      const { parts } = await readLetter(bytes);
      counts.add(parts.length);
    }),
    runs,
  );
  expect(counts.size).toBeGreaterThan(1);
});

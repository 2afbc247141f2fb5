import * as fc from "fast-check";
import { expect, test } from "vitest";
import { winmailOf } from "../../src/demo/tnef.ts";
import { zipOf } from "../../src/demo/zip.ts";
import { openLetter } from "../../src/intake/open.ts";
import type { Reader } from "../../src/ports/reader.ts";
import { contentOf } from "../../src/reading/content.ts";
import { base64, bytesOf, multipart } from "../make/mime.ts";
import { directReader } from "../make/reader.ts";

/** A part of a letter, written down; or a container, which is a file. */
type Tree =
  | { readonly a: "pdf"; readonly how: number; readonly name: number }
  | { readonly a: "text"; readonly how: number }
  | { readonly a: "multipart"; readonly kind: string; readonly parts: readonly Tree[] }
  | { readonly a: "letter"; readonly how: number; readonly of: Tree }
  | { readonly a: "zip" | "winmail"; readonly files: readonly Tree[] };

const leaf: fc.Arbitrary<Tree> = fc.oneof(
  fc.record({ a: fc.constant("pdf" as const), how: fc.nat(6), name: fc.nat(5) }),
  fc.record({ a: fc.constant("text" as const), how: fc.nat(2) }),
);

/** Containers are opened three deep, and forwarded letters within them count: deeper trees would be refused. */
const container = (inside: fc.Arbitrary<Tree>): fc.Arbitrary<Tree> =>
  fc.record({
    a: fc.constantFrom("zip" as const, "winmail" as const),
    files: fc.array(inside, { maxLength: 3 }),
  });

const { tree } = fc.letrec<{ tree: Tree; multipart: Tree; letter: Tree }>((tie) => ({
  tree: fc.oneof(
    { maxDepth: 4 },
    leaf,
    container(fc.oneof(leaf, container(leaf))),
    tie("multipart"),
    tie("letter"),
  ),
  multipart: fc.record({
    a: fc.constant("multipart" as const),
    kind: fc.constantFrom(
      "mixed",
      "related",
      "alternative",
      "digest",
      "signed",
      "report",
      "parallel",
      "x-own",
    ),
    parts: fc.array(tie("tree"), { maxLength: 4 }),
  }),
  letter: fc.record({ a: fc.constant("letter" as const), how: fc.nat(2), of: tie("multipart") }),
}));

const inBase64 = (bytes: string | Uint8Array): string[] => [
  "Content-Transfer-Encoding: base64",
  "",
  base64(bytes),
];

/** Writes trees down; every PDF is another one, and every boundary. */
function writer(): { write: (tree: Tree) => string[]; pdfs: string[] } {
  const pdfs: string[] = [];
  let boundaries = 0;
  const newPdf = (): string => {
    pdfs.push(`%PDF-1.7 ${pdfs.length}`);
    return pdfs.at(-1) ?? "";
  };
  const names = [
    'name="a.pdf"',
    "name=a b.pdf",
    "name*=utf-8''Caf%C3%A9.pdf",
    'name="=?utf-8?Q?Caf=C3=A9.pdf?="',
    'x="no name"',
    'name="logo.png"',
  ];
  const writePdf = (how: number, name: number): string[] => {
    const pdf = newPdf();
    return (
      [
        [`Content-Type: application/pdf; ${names[name]}`, ...inBase64(pdf)],
        [
          `Content-Type: application/octet-stream; ${names[name]}`,
          "Content-Disposition: inline",
          ...inBase64(pdf),
        ],
        [`Content-Type: text/plain; ${names[name]}`, ...inBase64(pdf)],
        [`Content-Type: image/png; ${names[name]}`, "Content-ID: <x>", ...inBase64(pdf)],
        [`Content-Type: message/delivery-status; ${names[name]}`, ...inBase64(pdf)],
        [
          "Content-Type: application/pdf",
          "Content-Transfer-Encoding: quoted-printable",
          "",
          pdf.replace("P", "=50"),
        ],
        [
          "Content-Type: text/html",
          "Content-Transfer-Encoding: 8bit",
          "Content-Disposition: attachment",
          "",
          pdf,
        ],
      ][how] ?? []
    );
  };
  const fileOf = (one: Tree): Uint8Array => {
    if (one.a === "pdf") return Buffer.from(newPdf());
    if (one.a === "text") return Buffer.from("some text");
    if (one.a !== "zip" && one.a !== "winmail") return bytesOf(write(one));
    const files = one.files.map((file, i) => ({ file: `${i}.bin`, bytes: fileOf(file) }));
    return (one.a === "zip" ? zipOf : winmailOf)(files);
  };
  const write = (one: Tree): string[] => {
    if (one.a === "pdf") return writePdf(one.how, one.name);
    if (one.a === "text")
      return (
        [
          ["", "Hello"],
          ["Content-Type: text/html", "", "<p>Hello"],
          ["Content-Type: text/plain; name=a.txt", "", ""],
        ][one.how] ?? []
      );
    if (one.a === "multipart") return multipart(`b${boundaries++}`, one.kind, ...one.parts.map(write));
    if (one.a !== "letter")
      return ["Content-Type: application/octet-stream; name=x.bin", ...inBase64(fileOf(one))];
    const inner = ["Subject: x", "From: a@b.example", "To: c@d.example", ...write(one.of)];
    return (
      [
        ["Content-Type: message/rfc822", "", ...inner],
        ["Content-Type: message/rfc822", ...inBase64(bytesOf(inner))],
        ["Content-Type: application/octet-stream; name=x.eml", ...inBase64(bytesOf(inner))],
      ][one.how] ?? []
    );
  };
  return { write, pdfs };
}

/** Opens everything but PDFs, which is what this test is not about. */
const reader: Reader = {
  ...directReader,
  file: (bytes) =>
    contentOf(bytes) === "pdf"
      ? Promise.resolve({ ok: true, value: { kind: "damaged-pdf" } })
      : directReader.file(bytes),
};

test("wherever a PDF lies in a letter, and however it was put there, it comes out once", async () => {
  await fc.assert(
    fc.asyncProperty(tree, async (one) => {
      const { write, pdfs } = writer();
      const bytes = bytesOf(["From: a@b.example", ...write(one)]);
      const { files } = await openLetter(reader, bytes, "1");
      const found = files.filter(({ facts }) => typeof facts === "object" && facts.kind === "damaged-pdf");
      expect(found.map(({ attachment }) => String(attachment.bytes)).toSorted()).toEqual(pdfs.toSorted());
    }),
    { numRuns: 500 },
  );
});

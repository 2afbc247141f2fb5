import { describe, expect, test } from "vitest";
import { type OpenedLetter, readLetter } from "../../../src/reading/letter/letter.ts";
import {
  base64,
  bytesOf,
  filePart,
  forwarded,
  type Lines,
  mixed,
  multipart,
  onePdf,
} from "../../make/mime.ts";

const letter = (...lines: Lines): Promise<OpenedLetter> => readLetter(bytesOf(lines));
const namesOf = ({ parts }: OpenedLetter): string[] => parts.map(({ name }) => name);

describe("the files", () => {
  test("come with their names and bytes", async () => {
    const { parts } = await letter(...mixed("b", filePart("one.pdf"), filePart("one.pdf", "%PDF-1.7 b")));
    expect(parts).toEqual([
      { name: "one.pdf", bytes: Buffer.from(onePdf), looks: false },
      { name: "one.pdf", bytes: Buffer.from("%PDF-1.7 b"), looks: false },
    ]);
  });

  test("come out of a letter that is nothing but one file", async () => {
    expect(namesOf(await letter(...filePart("only.pdf")))).toEqual(["only.pdf"]);
  });

  test("come out of a letter whose body is empty", async () => {
    expect(
      namesOf(await letter(...mixed("b", ["Content-Type: text/plain", "", ""], filePart("a.pdf")))),
    ).toEqual(["a.pdf"]);
  });

  test.each([
    ["inline", ["Content-Type: application/pdf; name=a.pdf", "Content-Disposition: inline"]],
    ["as text with a name", ["Content-Type: text/plain; name=a.pdf"]],
    ["as inline text with a name", ['Content-Type: text/plain; name="a.pdf"', "Content-Disposition: inline"]],
    ["as bytes of no type", ["Content-Type: application/octet-stream; name=a.pdf"]],
    ["under the name of a type", ["Content-Type: text; name=a.pdf"]],
    ["under a type that is none", ["Content-Type: pdf; name=a.pdf"]],
    [
      "with a disposition that nobody knows",
      ["Content-Type: text/plain; name=a.pdf", "Content-Disposition: x"],
    ],
  ])("are seen when they come %s", async (_, header) => {
    const part = [...header, "Content-Transfer-Encoding: base64", "", base64(onePdf)];
    const read = await letter(...mixed("b", ["", "The sheet:"], part));
    expect(read.parts).toEqual([{ name: "a.pdf", bytes: Buffer.from(onePdf), looks: false }]);
  });

  test("are seen without a name, and as text without a name, by what they hold", async () => {
    const body = ["Content-Transfer-Encoding: base64", "", base64(onePdf)];
    const read = await letter(
      ...mixed("b", ["Content-Type: application/pdf", ...body], ["Content-Type: text/plain", ...body]),
    );
    expect(read.parts.map(({ name, bytes }) => [name, String(bytes)])).toEqual([
      ["", onePdf],
      ["", onePdf],
    ]);
  });

  test("are seen under a type that is none, without a name, whatever they hold", async () => {
    const read = await letter(
      ...mixed("b", ["Content-Type: x-own", "", "\0\x01"], ["Content-Type: text", "", "Hello"]),
    );
    expect(read.parts.map(({ bytes }) => String(bytes))).toEqual(["\0\x01"]);
  });

  test.each(["delivery-status", "disposition-notification", "feedback-report"])(
    "are none where a mail server reports by a message/%s without a name",
    async (type) => {
      const report = [`Content-Type: message/${type}`, "", "Action: failed"];
      expect((await letter(...mixed("b", ["", "No."], report))).parts).toEqual([]);
      const named = [`Content-Type: message/${type}; name=status`, "", "Action: failed"];
      expect(namesOf(await letter(...mixed("b", ["", "No."], named)))).toEqual(["status"]);
    },
  );

  test("of no bytes are seen by their names; parts with neither are nothing", async () => {
    const read = await letter(
      ...mixed("b", ["Content-Type: a/b; name=a.pdf", "", ""], ["Content-Type: a/b", "", ""]),
    );
    expect(namesOf(read)).toEqual(["a.pdf"]);
  });

  test("are seen when only one of the two parsers finds them", async () => {
    const nest = (depth: number): string[] =>
      depth === 0 ? filePart("deep.pdf") : mixed(`b${depth}`, nest(depth - 1));
    // Deeper than our own parser goes: to it the innermost parts are one file that nobody can open.
    expect(namesOf(await letter(...nest(31)))).toEqual(["", "deep.pdf"]);
  });

  test("come out of uuencoded text", async () => {
    const body = ["The sheet:", "", "begin 644 a sheet.pdf", "*)5!$1BTQ+C<@80  ", "`", "end", "", "Ines"];
    expect((await letter("Content-Type: text/plain", "", ...body)).parts).toEqual([
      { name: "a sheet.pdf", bytes: Buffer.from(onePdf), looks: false },
    ]);
  });
});

const inner = (boundary = "i"): string[] => [
  "Subject: sheets",
  "MIME-Version: 1.0",
  ...mixed(boundary, ["", "the text"], filePart("inner.pdf")),
];

describe("forwarded letters", () => {
  test("are replaced by their files, in order", async () => {
    const read = await letter(...mixed("o", filePart("first.pdf"), forwarded(inner()), filePart("last.pdf")));
    expect(namesOf(read)).toEqual(["first.pdf", "inner.pdf", "last.pdf"]);
  });

  test.each([
    ["inline", ["Content-Type: message/rfc822", "Content-Disposition: inline", "", ...inner()]],
    [
      "in base64",
      ["Content-Type: message/rfc822", "Content-Transfer-Encoding: base64", "", base64(bytesOf(inner()))],
    ],
    ["as .eml files of no type", filePart("fwd.eml", bytesOf(inner()), "application/octet-stream")],
    ["as text files", filePart("fwd.txt", bytesOf(inner()), "text/plain")],
  ])("are opened when they come %s", async (_, part) => {
    expect(namesOf(await letter(...mixed("o", ["", "see below"], part)))).toEqual(["inner.pdf"]);
  });

  test.each([
    ["message/global", "inner.pdf"], // RFC 6532 §3.7
    ["message/external-body", "a"],
    ["message/partial", "a"],
  ])("of the type %s are opened or stay files", async (type, name) => {
    const part = [`Content-Type: ${type}; name=a`, "", ...inner()];
    expect(namesOf(await letter(...mixed("o", ["", "see below"], part)))).toEqual([name]);
  });

  test("are opened in a digest, where they need not say what they are", async () => {
    const read = await letter(...multipart("d", "digest", ["", ...inner("i1")], ["", ...inner("i2")]));
    expect(namesOf(read)).toEqual(["inner.pdf", "inner.pdf"]);
  });

  test("are opened ten deep; what lies deeper stays a file", async () => {
    const wrap = (depth: number): string[] =>
      depth === 0
        ? mixed("b0", filePart("deep.pdf"))
        : mixed(`b${depth}`, [
            'Content-Disposition: attachment; filename="fwd.eml"',
            ...forwarded(wrap(depth - 1)),
          ]);
    expect(namesOf(await letter(...wrap(10)))).toEqual(["deep.pdf"]);
    expect(namesOf(await letter(...wrap(11)))).toEqual(["fwd.eml"]);
  });

  test("are files themselves when they hold nothing but words", async () => {
    const read = await letter(
      ...mixed(
        "o",
        ["", "see below"],
        ["Content-Type: message/rfc822; name=fwd.eml", "", "Subject: order", "", "One more, please."],
      ),
    );
    expect(namesOf(read)).toEqual(["fwd.eml"]);
  });
});

const png = (width: number, height: number): Buffer => {
  const bytes = Buffer.alloc(33);
  bytes.write("\x89PNG\r\n\x1a\n", "latin1");
  bytes.writeUInt32BE(width, 16);
  bytes.writeUInt32BE(height, 20);
  return bytes;
};
const picture = (bytes: Buffer, ...header: Lines): string[] => [
  "Content-Type: image/png",
  ...header,
  "Content-Transfer-Encoding: base64",
  "",
  base64(bytes),
];

const looksOf = async (...parts: Lines[]): Promise<boolean[]> =>
  (await letter(...mixed("b", ...parts))).parts.map(({ looks }) => looks);

describe("what belongs to the looks of a letter", () => {
  const html = ["Content-Type: text/html", "", '<p>Hello <img src="cid:logo%401"></p>'];
  test.each([
    [
      "a logo that the text shows",
      [
        html,
        picture(png(300, 80), "Content-ID: <logo@1>", "Content-Disposition: attachment; filename=l.png"),
      ],
      true,
    ],
    [
      "a logo that is placed in the text",
      [picture(png(300, 80), "Content-ID: <x>", "Content-Disposition: inline; filename=l.png")],
      true,
    ],
    ["a small picture without a name", [picture(png(300, 80))], true],
    ["a banner, large but narrow", [html, picture(png(2400, 700), "Content-ID: <logo@1>")], true],
    [
      "a picture attached as a file",
      [html, picture(png(300, 80), "Content-Disposition: attachment; filename=l.png")],
      false,
    ],
    [
      "a picture attached as a file with an id that no text shows, as some programs give each file",
      [picture(png(300, 80), "Content-ID: <x>", "Content-Disposition: attachment; filename=l.png")],
      false,
    ],
    [
      "a picture with a name, placed among the parts without an id",
      [picture(png(300, 80), "Content-Disposition: inline; filename=l.png")],
      false,
    ],
    [
      "a photograph, large enough for a sheet, that the text shows",
      [html, picture(png(1200, 1600), "Content-ID: <logo@1>")],
      false,
    ],
    [
      "a PDF that calls itself a picture",
      [html, picture(Buffer.from(onePdf), "Content-ID: <logo@1>")],
      false,
    ],
  ])("%s", async (_, parts, looks) => {
    expect(await looksOf(...parts)).toEqual([looks]);
  });

  test("a resource fork, but not the file that it belongs to", async () => {
    const fork = filePart("._a.pdf", "\0\x05\x16\x07\0\x02\0\0", "application/applefile");
    const read = await letter(...multipart("b", "appledouble", fork, filePart("a.pdf")));
    expect(read.parts.map(({ name, looks }) => [name, looks])).toEqual([
      ["._a.pdf", true],
      ["a.pdf", false],
    ]);
  });

  test.each([
    ["pkcs7-signature", "signed", true],
    ["x-pkcs7-signature", "signed", true],
    ["pgp-signature", "signed", true],
    ["pgp-signature", "mixed", false],
    ["pgp-signature-not", "signed", false],
    ["not-pgp-signature", "signed", false],
  ])("a part of application/%s in a multipart/%s: %s", async (type, kind, looks) => {
    const signature = filePart("s", "-----BEGIN PGP SIGNATURE-----", `application/${type}`);
    const read = await letter(...multipart("b", kind, filePart("a.pdf"), signature));
    expect(read.parts.map((part) => part.looks)).toEqual([false, looks]);
  });

  test.each([
    ["cid:", "logo@1", true],
    ["CID:", "logo@1", true],
    ["acid:", "logo@1", false],
    ["cid:", `${"x".repeat(498)}@1`, true],
    ["cid:", `${"x".repeat(499)}@1`, false],
    ["cid:", "100%@1", true],
  ])("a picture that a text shows by %s%s: %s", async (scheme, id, looks) => {
    const shows = ["Content-Type: text/html", "", `<img src="${scheme}${id}">`];
    const logo = picture(
      png(300, 80),
      `Content-ID: <${id}>`,
      "Content-Disposition: attachment; filename=l.png",
    );
    expect(await looksOf(shows, logo)).toEqual([looks]);
  });

  test("the signature of a signed letter, but not a file that calls itself one", async () => {
    const signature = filePart("signature.asc", "-----BEGIN PGP SIGNATURE-----", "application/pgp-signature");
    const impostor = filePart("smime.p7s", onePdf, "application/pkcs7-signature");
    const read = await letter(...multipart("b", "signed", filePart("a.pdf"), signature, impostor));
    expect(read.parts.map(({ looks }) => looks)).toEqual([false, true, false]);
  });
});

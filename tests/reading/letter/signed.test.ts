import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readLetter } from "../../../src/reading/letter/letter.ts";
import { signedContent } from "../../../src/reading/letter/signed.ts";
import { openFile } from "../../../src/reading/open-file.ts";
import { bytesOf, filePart, forwarded, mixed, onePdf } from "../../make/mime.ts";
import { hasProgram } from "../../make/program.ts";

/** Elements of BER by their tags; `endless` ones have no length and an end instead. ITU-T X.690 §8.1 */
const element = (tag: number, ...content: Uint8Array[]): Buffer => {
  const all = Buffer.concat(content);
  return Buffer.concat([Buffer.from([tag, 0x82, all.length >> 8, all.length & 255]), all]);
};
const endless = (tag: number, ...content: Uint8Array[]): Buffer =>
  Buffer.concat([Buffer.from([tag, 0x80]), ...content, Buffer.from([0, 0])]);

const signedData = Buffer.from("06092a864886f70d010702", "hex");
const plainData = Buffer.from("06092a864886f70d010701", "hex");
const version = Buffer.from("020101", "hex");

function signed(make: typeof element, content: Buffer | undefined): Buffer {
  const about = make(0x30, plainData, ...(content === undefined ? [] : [make(0xa0, content)]));
  return make(0x30, signedData, make(0xa0, make(0x30, version, make(0x31, make(0x30, plainData)), about)));
}

const pdf = Buffer.from(onePdf);

describe("what is signed is found", () => {
  test.each([
    ["in elements with lengths", signed(element, element(0x04, pdf))],
    ["in elements without", signed(endless, element(0x04, pdf))],
    [
      "in pieces",
      signed(endless, endless(0x24, element(0x04, pdf.subarray(0, 4)), element(0x04, pdf.subarray(4)))),
    ],
    [
      "in pieces of known length",
      signed(element, element(0x24, element(0x04, pdf.subarray(0, 4)), element(0x04, pdf.subarray(4)))),
    ],
    [
      "written as text",
      Buffer.from(
        `-----BEGIN PKCS7-----\n${signed(element, element(0x04, pdf)).toString("base64")}\n-----END PKCS7-----\n`,
      ),
    ],
  ])("%s", (_, bytes) => {
    expect(String(signedContent(bytes))).toBe(onePdf);
  });
});

test.each([
  ["no octets", element(0x30, element(0x04, pdf))],
  ["octets and something else in one", element(0x24, element(0x30, element(0x04, pdf)))],
])("what was signed is nothing where there are %s", (_, content) => {
  expect(String(signedContent(signed(element, content)) ?? "")).toBe("");
});

test("elements are passed over up to twenty within each other", () => {
  const nested = (depth: number): Buffer => (depth === 0 ? version : endless(0x31, nested(depth - 1)));
  const about = endless(0x30, plainData, endless(0xa0, element(0x04, pdf)));
  const within = (depth: number): Buffer =>
    endless(0x30, signedData, endless(0xa0, endless(0x30, version, nested(depth), about)));
  expect(String(signedContent(within(21)))).toBe(onePdf);
  expect(signedContent(within(22))).toBeUndefined();
});

test("a signature of something that lies elsewhere has no content", () => {
  expect(signedContent(signed(element, undefined))).toBeUndefined();
});

test("bytes that end too early, or are nested without end, have no content", () => {
  const whole = signed(endless, element(0x04, pdf));
  for (let length = 0; length < whole.length - 30; length++)
    expect(signedContent(whole.subarray(0, length))).toBeUndefined();
  const deep = Buffer.concat([
    Buffer.from("3080", "hex"),
    signedData,
    Buffer.from("a0803080", "hex"),
    Buffer.from("3080".repeat(100_000), "hex"),
  ]);
  expect(signedContent(deep)).toBeUndefined();
});

test("a file that was signed comes out of its signature", async () => {
  expect(await openFile(signed(element, element(0x04, pdf)))).toEqual({
    kind: "archive",
    files: [{ name: "", bytes: pdf, looks: false }],
    left: [],
  });
  expect(await openFile(signed(element, undefined))).toEqual({ kind: "other" });
});

test("a letter that is nothing but a signed file brings that file, and stays itself", async () => {
  const { from, subject, parts } = await readLetter(
    bytesOf([
      "From: ines@brightwire.example",
      "Subject: sheet",
      "Content-Type: application/pkcs7-mime; name=a.pdf.p7m",
      "Content-Transfer-Encoding: base64",
      "",
      signed(element, element(0x04, pdf)).toString("base64"),
    ]),
  );
  expect([from, subject, parts.map(({ name }) => name)]).toEqual([
    "ines@brightwire.example",
    "sheet",
    ["a.pdf.p7m"],
  ]);
  expect(await openFile(parts[0]?.bytes ?? pdf)).toMatchObject({ files: [{ bytes: pdf }] });
});

describe.skipIf(!hasProgram("openssl", "version"))("a letter signed by openssl", () => {
  const folder = mkdtempSync(join(tmpdir(), "burin-"));
  afterAll(() => rmSync(folder, { recursive: true }));
  const openssl = (...args: string[]): void => {
    const { status, stderr } = spawnSync("openssl", args, { cwd: folder, encoding: "utf8" });
    if (status !== 0) throw new Error(stderr);
  };
  beforeAll(() => {
    openssl(
      "req",
      "-x509",
      "-newkey",
      "rsa:2048",
      "-nodes",
      "-keyout",
      "key.pem",
      "-out",
      "own.pem",
      "-subj",
      "/CN=Ines",
    );
    writeFileSync(
      join(folder, "inner.txt"),
      bytesOf(mixed("b", ["Content-Type: text/plain", "", "Sheet enclosed."], filePart("a.pdf"))),
    );
  });
  const sign = (...options: string[]): Buffer => {
    openssl(
      "smime",
      "-sign",
      "-in",
      "inner.txt",
      "-out",
      "out.eml",
      "-signer",
      "own.pem",
      "-inkey",
      "key.pem",
      ...options,
    );
    return readFileSync(join(folder, "out.eml"));
  };
  const header = [
    "-from",
    "Ines <ines@brightwire.example>",
    "-to",
    "orders@quillgate.example",
    "-subject",
    "sheets",
  ];

  test("beside its text", async () => {
    const read = await readLetter(sign(...header));
    expect(read).toMatchObject({
      from: "ines@brightwire.example",
      subject: "sheets",
      text: expect.stringContaining("Sheet enclosed."),
    });
    expect(read.parts.map(({ name, looks }) => [name, looks])).toEqual([
      ["a.pdf", false],
      ["smime.p7s", true],
    ]);
  });

  test.each([[[]], [["-stream"]]])("around its text, options %j", async (options) => {
    const read = await readLetter(sign(...header, "-nodetach", ...options));
    expect(read).toMatchObject({
      from: "ines@brightwire.example",
      subject: "sheets",
      text: expect.stringContaining("Sheet enclosed."),
    });
    expect(read.parts).toEqual([{ name: "a.pdf", bytes: pdf, looks: false }]);
  });

  test("around a text with a header of its own, of which nothing but its content counts", async () => {
    const inner = ["From: eve@stranger.example", "Subject: other", "Message-ID: <x@stranger.example>"];
    writeFileSync(
      join(folder, "inner.txt"),
      bytesOf([
        ...inner,
        ...mixed("b", ["Content-Type: text/plain", "", "Sheet enclosed."], filePart("a.pdf")),
      ]),
    );
    const read = await readLetter(sign(...header, "-nodetach"));
    expect(read).toMatchObject({ from: "ines@brightwire.example", subject: "sheets" });
    expect(read.messageId).not.toBe("<x@stranger.example>");
    expect(read.parts.map(({ name }) => name)).toEqual(["a.pdf"]);
    expect((await readLetter(sign("-nodetach"))).from).toBeUndefined();
  });

  test("around its text, and its subject may speak of content", async () => {
    const read = await readLetter(sign("-subject", "Re: content-type of sheets", "-nodetach"));
    expect(read.subject).toBe("Re: content-type of sheets");
  });

  test("around its text, and then forwarded, is a container", async () => {
    const { parts } = await readLetter(
      bytesOf(mixed("o", forwarded([sign(...header, "-nodetach").toString()]))),
    );
    expect(parts.map(({ name }) => name)).toEqual(["smime.p7m"]);
    expect(await openFile(parts[0]?.bytes ?? pdf)).toMatchObject({
      kind: "archive",
      files: [{ name: "a.pdf", bytes: pdf }],
    });
  });
});

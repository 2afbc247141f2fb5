import { describe, expect, test } from "vitest";
import { readLetter } from "../../src/reading/letter.ts";
import type { Letter } from "../../src/trade/letter.ts";

const letter = (...lines: readonly string[]): Promise<Letter> =>
  readLetter(Buffer.from(lines.join("\r\n")), "12");

const namesOf = ({ attachments }: Letter): string[] => attachments.map(({ file }) => file);
const pdf = Buffer.from("%PDF-1.7 a").toString("base64");

/** A part with a PDF in it. */
const filePart = (name: string): string[] => [
  "Content-Type: application/pdf",
  `Content-Disposition: attachment; filename="${name}"`,
  "Content-Transfer-Encoding: base64",
  "",
  pdf,
];

/** A letter of several parts; `boundary` tells nested ones apart. */
const parts = (boundary: string, ...bodies: readonly (readonly string[])[]): string[] => [
  "Subject: sheets",
  "MIME-Version: 1.0",
  `Content-Type: multipart/mixed; boundary="${boundary}"`,
  "",
  ...bodies.flatMap((body) => [`--${boundary}`, ...body]),
  `--${boundary}--`,
];
const forwarded = (lines: readonly string[]): string[] => ["Content-Type: message/rfc822", "", ...lines];

test("a plain letter", async () => {
  const read = await letter(
    'From: "Calloway, Ines" <Ines@Brightwire.EXAMPLE>',
    "Date: Tue, 24 Nov 2026 16:05:00 -0600",
    "Message-ID: <one.2@brightwire.example>",
    "In-Reply-To: <zero@quillgate.example>",
    "References: <a@x.example>",
    " <zero@quillgate.example>",
    "Subject: =?utf-8?Q?Caf=C3=A9?= sheets",
    "",
    "Please find nothing attached.",
  );
  expect(read).toEqual({
    from: "ines@brightwire.example",
    fromName: "Calloway, Ines",
    subject: "Café sheets",
    date: new Date("2026-11-24T22:05:00Z"),
    messageId: "<one.2@brightwire.example>",
    inReplyTo: "<zero@quillgate.example>",
    references: ["<a@x.example>", "<zero@quillgate.example>"],
    text: "Please find nothing attached.",
    attachments: [],
  });
});

test("a letter of nothing has nothing", async () => {
  expect(await readLetter(new Uint8Array(), "12")).toEqual({
    subject: "",
    references: [],
    text: "",
    attachments: [],
  });
});

test("a letter in HTML alone is read as text", async () => {
  const read = await letter("Content-Type: text/html", "", "<p>Sheets <b>below</b>.</p><p>Ines</p>");
  expect(read.text).toBe("Sheets below.\n\nInes");
});

describe("the sender", () => {
  test.each([
    ["a@b.example", "a@b.example"],
    ["Ines <a.b+c@sub.b-c.example>", "a.b+c@sub.b-c.example"],
    ['"a@evil.example" <b@good.example>', "b@good.example"],
    ["a&co@b.example", "a&co@b.example"],
  ])("%s is accepted", async (from, address) => {
    expect((await letter(`From: ${from}`, "", "")).from).toBe(address);
  });

  test.each([
    ["two addresses", "a@b.example, c@d.example"],
    ["a group", "sales: a@b.example;"],
    ["no address", "Ines Calloway"],
    ["no domain", "ines@localhost"],
    ["a domain that ends in a dot", "a@b.example."],
    ["two dots", "a..b@c.example"],
    ["a quoted local part", '"a b"@c.example'],
    ["an address literal", "a@[192.0.2.1]"],
    ["a command hidden in the address", "<a@b.example>\r\n RCPT TO:<c@d.example>"],
    ["an address hidden in an encoded word", "=?utf-8?Q?a=40b.example?="],
    // RFC 5321 §4.5.3.1.1
    ["a local part of 65 characters", `${"a".repeat(65)}@b.example`],
  ])("%s is nobody", async (_, from) => {
    expect(await letter(`From: ${from}`, "", "")).not.toHaveProperty("from");
  });

  test("two From lines are nobody", async () => {
    expect(await letter("From: a@b.example", "From: c@d.example", "", "")).not.toHaveProperty("from");
  });
});

test("ids that are no ids are left out", async () => {
  const read = await letter(
    "Message-ID: none",
    "In-Reply-To: Your letter of Tuesday",
    "References: <good@a.example> bad <with blank@a.example> <caf\u00e9@a.example> <also.good@a.example>",
    "",
    "",
  );
  expect(read).not.toHaveProperty("messageId");
  expect(read).not.toHaveProperty("inReplyTo");
  expect(read.references).toEqual(["<good@a.example>", "<also.good@a.example>"]);
});

test("a date that makes no sense is no date", async () => {
  expect(await letter("Date: yesterday", "", "")).not.toHaveProperty("date");
});

test("line ends in a subject are blanks", async () => {
  expect((await letter("Subject: =?utf-8?Q?a=0D=0ABcc:_b?=", "", "")).subject).toBe("a Bcc: b");
});

describe("the files", () => {
  test("are numbered from 1 and come with their bytes", async () => {
    const { attachments } = await letter(...parts("b", filePart("one.pdf"), filePart("two.pdf")));
    expect(attachments.map(({ id, file }) => [id, file])).toEqual([
      ["12/1", "one.pdf"],
      ["12/2", "two.pdf"],
    ]);
    expect(Buffer.from(attachments[1]?.bytes ?? []).toString()).toBe("%PDF-1.7 a");
  });

  test("of one name are told apart, and their own name is kept", async () => {
    const { attachments } = await letter(...parts("b", filePart("a.pdf"), filePart("a.pdf")));
    expect(attachments.map(({ file, named }) => [file, named])).toEqual([
      ["a.pdf", undefined],
      ["a (2).pdf", "a.pdf"],
    ]);
  });

  test("without a name are called unnamed", async () => {
    const body = ["Content-Transfer-Encoding: base64", "", pdf];
    const read = await letter(
      ...parts("b", ["Content-Type: application/pdf", ...body], ["Content-Type: image/png", "", "x"]),
    );
    expect(namesOf(read)).toEqual(["unnamed.pdf", "unnamed"]);
  });

  test("come out of a letter that is nothing but one file", async () => {
    expect(namesOf(await letter(...filePart("only.pdf")))).toEqual(["only.pdf"]);
  });

  test("come out of forwarded letters, in order", async () => {
    const inner = parts("i", ["", "the text"], filePart("inner.pdf"));
    const read = await letter(...parts("o", filePart("first.pdf"), forwarded(inner), filePart("last.pdf")));
    expect(namesOf(read)).toEqual(["first.pdf", "inner.pdf", "last.pdf"]);
  });

  test("come out of letters forwarded inline, in base64, and as .eml files of no type", async () => {
    const inner = parts("i", filePart("inner.pdf"));
    const bytes = Buffer.from(inner.join("\r\n")).toString("base64");
    const inBase64 = ["Content-Transfer-Encoding: base64", "", bytes];
    const read = await letter(
      ...parts(
        "o",
        ["Content-Type: message/rfc822", "Content-Disposition: inline", "", ...inner],
        ["Content-Type: message/rfc822", ...inBase64],
        ['Content-Type: application/octet-stream; name="fwd.eml"', ...inBase64],
      ),
    );
    expect(namesOf(read)).toEqual(["inner.pdf", "inner (2).pdf", "inner (3).pdf"]);
  });

  test("come out of letters forwarded three times; what lies deeper stays a file", async () => {
    const wrap = (depth: number): string[] =>
      depth === 0
        ? parts("b0", filePart("deep.pdf"))
        : parts(`b${depth}`, [
            'Content-Disposition: attachment; filename="fwd.eml"',
            ...forwarded(wrap(depth - 1)),
          ]);
    expect(namesOf(await letter(...wrap(3)))).toEqual(["deep.pdf"]);
    expect(namesOf(await letter(...wrap(4)))).toEqual(["fwd.eml"]);
  });
});

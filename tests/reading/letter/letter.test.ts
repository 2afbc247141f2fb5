import { describe, expect, test } from "vitest";
import { type OpenedLetter, readHeader, readLetter } from "../../../src/reading/letter/letter.ts";
import { bytesOf, filePart, type Lines, mixed, multipart } from "../../make/mime.ts";

const letter = (...lines: Lines): Promise<OpenedLetter> => readLetter(bytesOf(lines));

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
    parts: [],
    links: [],
  });
});

test("fields need no blank behind their colons", async () => {
  const read = await letter("Message-ID:<one@b.example>", "References:<a@b.example>", "", "");
  expect(read).toMatchObject({ messageId: "<one@b.example>", references: ["<a@b.example>"] });
});

test("a letter of nothing has nothing", async () => {
  expect(await readLetter(new Uint8Array())).toEqual({
    subject: "",
    references: [],
    text: "",
    parts: [],
    links: [],
  });
});

test("a letter in HTML alone is read as text", async () => {
  const read = await letter("Content-Type: text/html", "", "<p>Sheets <b>below</b>.</p><p>Ines</p>");
  expect(read.text).toBe("Sheets below.\n\nInes");
});

describe("a letter whose plain text is empty beside its page", () => {
  const read = (page: string, blank = " \r\n"): Promise<OpenedLetter> =>
    letter(
      ...multipart(
        "b",
        "alternative",
        ["Content-Type: text/plain", "", blank],
        ["Content-Type: text/html", "", page],
      ),
    );
  test("says what its page says", async () => {
    expect((await read("<p>Please cancel S-104</p>")).text).toBe("Please cancel S-104");
    expect((await read("<p>3 YES</p>", "")).text).toBe("3 YES");
    expect(await read("<p><img src=x></p>")).not.toHaveProperty("otherTexts");
  });

  test("is unsure if its page strikes words out", async () => {
    expect(await read("<p>Cancel <s>S-104</s></p>")).toMatchObject({ text: "", textUnsure: true });
  });
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

  test("an address to reply to is read as strictly", async () => {
    const replyTo = async (...lines: string[]) => (await letter(...lines, "", "")).replyTo;
    expect(await replyTo("Reply-To: Site <Site@B.example>")).toBe("site@b.example");
    expect(await replyTo("From: a@b.example")).toBeUndefined();
    expect(await replyTo("Reply-To: a@b.example, c@d.example")).toBeUndefined();
    expect(await replyTo("Reply-To: a@b.example", "Reply-To: c@d.example")).toBeUndefined();
    expect(await replyTo("Reply-To: =?utf-8?Q?a=40b.example?=")).toBeUndefined();
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

test.each([
  ["=?utf-8?Q?_a_?=", "a"],
  ["=?utf-8?Q?a=C2=A0=E2=80=A8b?=", "a b"],
])("a subject of %s has one blank between its words and none around them", async (subject, read) => {
  expect((await letter(`Subject: ${subject}`, "", "")).subject).toBe(read);
});

test.each([
  ["a local part of 64 characters", `${"a".repeat(64)}@b.example`, true],
  ["a label of 63 characters", `a@${"b".repeat(63)}.example`, true],
  ["a label of 64 characters", `a@${"b".repeat(64)}.example`, false],
  ["a label that ends in a hyphen", "a@b-.example", false],
  ["a label that begins with one", "a@-b.example", false],
  ["a domain of 255 characters", `a@${"b.".repeat(124)}example`, true],
  ["a domain of 257 characters", `a@${"b.".repeat(125)}example`, false],
  ["a dot before the at", "a.@b.example", false],
])("an address with %s is one or not", async (_, address, is) => {
  // RFC 5321 §4.1.2 and §4.5.3.1
  expect((await letter(`From: ${address}`, "", "")).from).toBe(is ? address : undefined);
});

test("ids have 250 characters at most, and a name in From is one line", async () => {
  const id = (length: number): string => `<${"x".repeat(length)}>`;
  expect(await letter(`Message-ID: ${id(250)}`, "", "")).toMatchObject({ messageId: id(250) });
  expect(await letter(`Message-ID: ${id(251)}`, "", "")).not.toHaveProperty("messageId");
  const { fromName } = await letter("From: =?utf-8?Q?_Ines=0ACalloway_?= <a@b.example>", "", "");
  expect(fromName).toBe("Ines Calloway");
});

test("line ends in a subject are blanks", async () => {
  expect((await letter("Subject: =?utf-8?Q?a=0D=0ABcc:_b?=", "", "")).subject).toBe("a Bcc: b");
});

describe("the header by itself", () => {
  test("is read as it is with the letter", async () => {
    const bytes = bytesOf([
      "From: a@b.example",
      "Message-ID: <1@b.example>",
      ...mixed("b", filePart("a.pdf")),
    ]);
    const { parts: _, links: __, text: ___, ...header } = await readLetter(bytes);
    expect(await readHeader(bytes)).toEqual(header);
  });

  test("is nobody's when it does not end within 64 KB: a second sender may stand further on", async () => {
    const bytes = bytesOf(["From: a@b.example", `X: ${"x".repeat(70_000)}`, "From: c@d.example", "", ""]);
    expect(await readHeader(bytes)).toEqual({ subject: "", references: [] });
  });
});

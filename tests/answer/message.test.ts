import { expect, test } from "vitest";
import { composeMessage } from "../../src/answer/message.ts";

const envelope = {
  from: { name: "Order desk, Quillgate", address: "orders@quillgate.example" },
  to: "ines@brightwire.example",
  date: new Date("2026-11-09T14:02:03Z"),
  messageId: "<burin.1@quillgate.example>",
  inReplyTo: "<two@brightwire.example>",
  references: ["<one@brightwire.example>"],
};
const words = {
  subject: "FAIL: “Café” wing, 2 things to fix",
  text: "é ".repeat(800),
  html: `<p>${"x".repeat(1500)}</p>`,
};

async function compose(changes: Partial<typeof envelope> = {}, said = words) {
  const raw = Buffer.from(await composeMessage({ ...envelope, ...changes }, said)).toString("latin1");
  const end = raw.indexOf("\r\n\r\n");
  const lines = raw
    .slice(0, end)
    .replace(/\r\n[ \t]+/g, " ")
    .split("\r\n");
  return {
    raw,
    lines,
    field: (name: string) => lines.filter((line) => line.toLowerCase().startsWith(`${name}:`)),
  };
}

test("the fields are those of RFC 5322 §3.6, each at most once", async () => {
  const { lines, field } = await compose();
  // §3.6: Date and From are required; a reply carries In-Reply-To and References.
  for (const name of [
    "date",
    "from",
    "to",
    "message-id",
    "in-reply-to",
    "references",
    "subject",
    "mime-version",
  ])
    expect([name, field(name)]).toEqual([name, [expect.any(String)]]);
  // §2.2: a field's name is printable US-ASCII without a colon; so is everything in a header.
  for (const line of lines) expect(line).toMatch(/^[!-9;-~]+: [\x20-\x7e]*$/);
  // §3.3: day, month by name, year of four digits, time, zone.
  expect(field("date")).toEqual(["Date: Mon, 09 Nov 2026 14:02:03 +0000"]);
  // §3.2.4: a name with a comma is quoted, or it would be two addresses.
  expect(field("from")).toEqual(['From: "Order desk, Quillgate" <orders@quillgate.example>']);
});

test("it stands in the letter's thread, as RFC 5322 §3.6.4 says", async () => {
  const { field } = await compose();
  expect(field("in-reply-to")).toEqual(["In-Reply-To: <two@brightwire.example>"]);
  expect(field("references")).toEqual(["References: <one@brightwire.example> <two@brightwire.example>"]);
});

test("no line is longer than RFC 5322 §2.1.1 lets it be", async () => {
  const { raw } = await compose();
  for (const line of raw.split("\r\n")) expect(line.length).toBeLessThanOrEqual(998);
});

test("the same input gives the same bytes", async () => {
  expect((await compose()).raw).toBe((await compose()).raw);
});

test("an address cannot smuggle in another recipient or field", async () => {
  const { lines } = await compose(
    { to: "a@b.example>\r\nBcc: <eve@stranger.example" },
    { ...words, subject: "x\r\nBcc: eve@stranger.example" },
  );
  expect(lines.filter((line) => /^(bcc|cc):/i.test(line))).toEqual([]);
});

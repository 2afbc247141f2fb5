import { describe, expect, test } from "vitest";
import { answerAddress, refusalOf } from "../../src/intake/etiquette.ts";

const good = {
  "return-path": "<ines@brightwire.example>",
  to: "Order desk <orders@quillgate.example>",
  "content-type": "multipart/mixed; boundary=x",
};

function refusal(
  changes: Record<string, string | undefined>,
  from: string | undefined = "ines@brightwire.example",
) {
  const headers = Object.entries({ ...good, ...changes }).flatMap(([name, value]) =>
    value === undefined ? [] : [{ name, value }],
  );
  return refusalOf({
    headers,
    ...(from === undefined ? {} : { from }),
    ours: ["orders@quillgate.example"],
    returnPathWritten: true,
  });
}

test("a buyer's letter is answered", () => {
  expect(refusal({})).toBeUndefined();
});

test("a letter that says it is no machine's is answered, in whatever words", () => {
  expect(refusal({ "auto-submitted": "no" })).toBeUndefined();
  expect(refusal({ "auto-submitted": "no (a person wrote it)" })).toBeUndefined();
});

test.each([
  "noreply",
  "no-reply",
  "no.reply",
  "no_reply",
  "noreply+7",
  "do_not_reply",
  "donotreply",
  "bounces+x=y",
])("%s@ is a program", (local) => {
  expect(refusal({}, `${local}@brightwire.example`)).toMatchObject({ drop: true });
});

describe("a machine's letter is not", () => {
  test.each([
    ["an out-of-office answer", { "auto-submitted": "auto-replied (vacation)" }],
    ["one with parameters after the keyword", { "auto-submitted": "auto-generated; type=x" }],
    ["one with an empty return path", { "return-path": "<>" }],
    ["one with an empty return path and blanks", { "return-path": " < > " }],
    ["a delivery report", { "content-type": "multipart/report; report-type=delivery-status" }],
    ["a read receipt", { "content-type": 'Multipart/Report; report-type="disposition-notification"' }],
    ["a delivery report behind a comment", { "content-type": "(a) multipart/report; report-type=x" }],
    ["one with an empty return path and a comment", { "return-path": "(a) <>" }],
    ["an invitation", { "content-type": "text/calendar; method=REQUEST" }],
    ["bulk mail", { precedence: "bulk" }],
    ["one that wants no answers", { "x-auto-response-suppress": "DR, OOF, AutoReply" }],
    ["an old vacation program's", { "x-autoreply": "yes" }],
  ])("%s", (_, changes) => {
    expect(refusal(changes)).toMatchObject({ drop: true });
  });

  test.each([
    "MAILER-DAEMON@a.example",
    "no-reply@a.example",
    "owner-x@a.example",
    "x-request@a.example",
    "orders@quillgate.example",
  ])("one from %s", (from) => {
    expect(refusal({}, from.toLowerCase())).toMatchObject({ drop: true });
  });
});

describe("a person looks at", () => {
  test.each([
    ["one from a mailing list", { "list-id": "<sites.brightwire.example>" }],
    ["one without a return path", { "return-path": undefined }],
    ["one that does not name us", { to: "someone@else.example" }],
    ["one that names an address like ours", { to: "xorders@quillgate.example" }],
  ])("%s", (_, changes) => {
    expect(refusal(changes)).toMatchObject({ drop: false });
  });
});

describe("these are no machines", () => {
  test.each([
    ["Auto-Submitted: no", { "auto-submitted": "no" }],
    ["a wish for no delivery or read reports", { "x-auto-response-suppress": "DR, RN" }],
    ["us in Cc, in a group", { to: "Sites: a@b.example, ORDERS@Quillgate.example;" }],
    ["ordinary precedence", { precedence: "first-class" }],
  ])("%s", (_, changes) => {
    expect(refusal(changes)).toBeUndefined();
  });
});

test.each(["Message-ID", "Content-Type", "Subject", "Reply-To", "References"])(
  "a letter with a second %s is not answered: a signature covers but one",
  (name) => {
    const headers = Object.entries(good).map(([key, value]) => ({ name: key, value }));
    const twice = { name: name.toLowerCase(), value: "x" };
    const told = refusalOf({
      headers: [twice, ...headers, twice],
      from: "ines@brightwire.example",
      ours: ["orders@quillgate.example"],
      returnPathWritten: true,
    });
    expect(told).toEqual({ why: `its header has ${name.toLowerCase()} more than once`, drop: false });
  },
);

describe("an answer goes", () => {
  const to = (replyTo: string | undefined, domain: string | undefined): string =>
    answerAddress(
      { from: "ines@brightwire.example", ...(replyTo === undefined ? {} : { replyTo }) },
      domain,
      ["orders@brightwire.example"],
    );

  test("to the address to reply to, where that is of the sender's own proved domain", () => {
    expect(to("site@brightwire.example", "brightwire.example")).toBe("site@brightwire.example");
  });

  test.each([
    ["there is none", undefined, "brightwire.example"],
    ["it is of another domain", "eve@stranger.example", "brightwire.example"],
    ["it is of a domain below the sender's", "eve@mail.brightwire.example", "brightwire.example"],
    ["the domain is not proved, or shared by many", "site@brightwire.example", undefined],
    ["it is this desk's own", "orders@brightwire.example", "brightwire.example"],
    ["it is a program's", "noreply@brightwire.example", "brightwire.example"],
  ])("to the sender, where %s", (_, replyTo, domain) => {
    expect(to(replyTo, domain)).toBe("ines@brightwire.example");
  });
});

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

test("a letter of nobody, or of several, is not answered", () => {
  const headers = Object.entries(good).map(([name, value]) => ({ name, value }));
  expect(refusalOf({ headers, ours: ["orders@quillgate.example"], returnPathWritten: true })).toEqual({
    why: "it has no single sender to answer",
  });
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
])("%s@ is a program, to which a person may answer", (local) => {
  expect(refusal({}, `${local}@brightwire.example`)).toEqual({ why: "its sender is a program" });
});

describe("a machine's report is known as such", () => {
  test.each([
    // RFC 3834 §5, RFC 5230 §5.1
    ["an out-of-office answer", { "auto-submitted": "auto-replied (vacation)" }, "absence"],
    ["one with parameters after the keyword", { "auto-submitted": "auto-replied; owner-email=x" }, "absence"],
    // RFC 3464 §2, RFC 8098 §3
    ["a delivery report", { "content-type": "multipart/report; report-type=delivery-status" }, "delivery"],
    [
      "a read receipt",
      { "content-type": 'Multipart/Report; report-type="disposition-notification"' },
      "receipt",
    ],
    [
      "a report behind a comment",
      { "content-type": "(a) multipart/report; report-type=delivery-status" },
      "delivery",
    ],
    // RFC 5546 §3.2.3
    ["a reply to an invitation", { "content-type": "text/calendar; method=REPLY" }, "calendar"],
    // RFC 2919, RFC 2369
    ["a letter of a list", { "list-id": "<sites.brightwire.example>", precedence: "bulk" }, "list"],
    ["a list's that it names where to write", { "list-post": "<mailto:x@b.example>" }, "list"],
    ["a counter-proposal", { "content-type": "text/calendar; method=counter" }, "calendar"],
    ["one that says it twice", { "auto-submitted": "Auto-Replied ;x" }, "absence"],
    // common practice, no source
    ["an old vacation program's", { "x-autoreply": "yes" }, "absence"],
    ["another's", { "x-auto-reply": "1" }, "absence"],
    ["one by its precedence", { precedence: "auto_reply" }, "absence"],
    ["one by its subject", { subject: "Automatic reply: Stations" }, "absence"],
    ["one by its subject alone", { subject: "Out of Office" }, "absence"],
    ["one by its subject in another language", { subject: "Réponse automatique : Stations" }, "absence"],
    [
      "a machine's own accord, by its subject",
      { "auto-submitted": "auto-generated", subject: "Automatic reply: x" },
      "absence",
    ],
    ["a read receipt by its subject", { subject: "Read: PASS: order BW-2207" }, "receipt"],
    ["a calendar reply by its subject", { subject: "Accepted: Site meeting" }, "calendar"],
    [
      "a delivery report by its subject",
      { subject: "Undelivered Mail Returned to Sender", "return-path": "<>" },
      "delivery",
    ],
  ])("%s", (_, changes, report) => {
    expect(refusal(changes)?.report).toBe(report);
  });

  test.each([
    ["MAILER-DAEMON@a.example", "failure notice", "delivery"],
    ["postmaster@a.example", "Your message was not delivered", "delivery"],
    ["orders@quillgate.example", "x", "own"],
  ])("one from %s", (from, subject, report) => {
    expect(refusal({ subject }, from.toLowerCase())?.report).toBe(report);
  });
});

describe("a person looks at", () => {
  test.each([
    ["one with the fields of a list that is none", { "list-unsubscribe": "<mailto:x@b.example>" }],
    ["one without a return path", { "return-path": undefined }],
    ["one with an empty return path and no other mark", { "return-path": " < > " }],
    ["one with an empty return path and a comment", { "return-path": "(a) <>" }],
    ["one that does not name us", { to: "someone@else.example" }],
    ["one that names an address like ours", { to: "xorders@quillgate.example" }],
    ["bulk mail of no list", { precedence: "bulk" }],
    ["one that wants no answers", { "x-auto-response-suppress": "DR, OOF, AutoReply" }],
    ["what a program writes of its own accord", { "auto-submitted": "auto-generated; type=x" }],
    ["a reply to a notice of ours", { "in-reply-to": "<burin.notice.0a@quillgate.example>" }],
    ["one that refers to one", { references: "<1@b.example> <burin.notice.0a@quillgate.example>" }],
    ["a looping one", { "x-loop": "x" }],
    ["what was made by a program", { "x-autogenerated": "x" }],
    ["an invitation", { "content-type": "text/calendar; method=REQUEST" }],
    ["a report of abuse", { "content-type": "multipart/report; report-type=feedback-report" }],
    ["a report whose header says things twice", { "content-type": "multipart/report; report-type=x" }],
  ])("%s", (_, changes) => {
    expect(refusal(changes)).toBeDefined();
    expect(refusal(changes)).not.toHaveProperty("report");
  });

  test.each([
    "postmaster@a.example",
    "x-owner@a.example",
    "x-bounces@a.example",
    "bounce@a.example",
    "majordomo@a.example",
    "no-reply-7@a.example",
    "mailer-daemon@a.example",
    "no-reply@a.example",
    "noreply-orders@a.example",
    "orders-noreply@a.example",
    "owner-x@a.example",
    "x-request@a.example",
  ])("one from %s", (from) => {
    expect(refusal({}, from)).toEqual({ why: "its sender is a program" });
  });
});

test.each([
  "Out of office lighting, order of keypads",
  "Read this: stations",
  "Accepted quotation",
  "Reading room stations",
  "Please read: stations",
  "Quotation accepted: stations",
  "Plates undeliverable: what now?",
  "Re: Failure notice",
  "Automatic replying stations",
])("“%s” is a person's subject", (subject) => {
  expect(refusal({ subject })).toBeUndefined();
});

test.each([
  "norepl@a.example",
  "downer-x@a.example",
  "xnoreply@a.example",
  "noreplying@a.example",
  "requests@a.example",
  "x-requests@a.example",
])("%s is a person's", (from) => {
  expect(refusal({}, from)).toBeUndefined();
});

test("of several reasons the header said twice comes first, then our own address, then a machine's report", () => {
  const told = (headers: readonly (readonly [string, string])[], from: string) =>
    refusalOf({
      headers: [...Object.entries(good), ...headers].map(([name, value]) => ({ name, value })),
      from,
      ours: ["orders@quillgate.example"],
      returnPathWritten: true,
    })?.why;
  const [absence, bulk] = [
    ["auto-submitted", "auto-replied"],
    ["precedence", "bulk"],
  ] as const;
  const [ours, ines] = ["orders@quillgate.example", "ines@brightwire.example"];
  expect(told([absence, ["content-type", "text/plain"]], ours)).toMatch(/more than once$/);
  expect(told([bulk, absence], ours)).toBe("it comes from this desk itself");
  expect(told([bulk, absence], ines)).toBe("a machine sent it (Auto-Submitted)");
  expect(told([bulk], "no-reply@brightwire.example")).toBe("it is bulk mail (Precedence)");
});

test("where no return path is written, its absence means nothing, and an empty one does", () => {
  const told = (path?: string) =>
    refusalOf({
      headers: [
        { name: "to", value: good.to },
        ...(path === undefined ? [] : [{ name: "return-path", value: path }]),
      ],
      from: "ines@brightwire.example",
      ours: ["orders@quillgate.example"],
      returnPathWritten: false,
    });
  expect(told()).toBeUndefined();
  expect(told("<>")).toEqual({ why: "its return path is empty" });
});

test.each(["cc", "resent-to", "resent-cc"])("a letter that names us in %s is answered", (name) => {
  expect(refusal({ to: "a@b.example", [name]: "x <ORDERS@quillgate.example>" })).toBeUndefined();
});

describe("these are no machines", () => {
  test.each<[string, Record<string, string>]>([
    ["a type that only begins like a report's", { "content-type": "multipart/reporting" }],
    ["a type behind another word", { "content-type": "x-multipart/report; report-type=delivery-status" }],
    ["a type that only begins like a calendar's", { "content-type": "text/calendars; method=reply" }],
    ["a precedence that only begins so", { precedence: "bulky" }],
    ["one that only ends so", { precedence: "unlist" }],
    ["one that only begins like an answer's", { precedence: "auto-replying" }],
    ["a wish that only holds such a word", { "x-auto-response-suppress": "allow, proof, autoreplying" }],
    ["a field that is no list's", { "x-list-id": "<a.b.example>" }],
    ["a machine's field that says no", { "x-autoreply": " No ", "x-auto-reply": "false" }],
    ["a subject that only holds such words", { subject: "Re: Automatic reply: x" }],
    ["a report's subject with more behind it", { subject: "Failure notice of station S-104" }],
    ["a reply to an answer, which is no notice", { "in-reply-to": "<burin.0a@quillgate.example>" }],
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
    expect(told).toEqual({ why: `its header has ${name.toLowerCase()} more than once` });
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

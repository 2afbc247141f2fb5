import { describe, expect, test } from "vitest";
import { proofOf } from "../../src/intake/authentication.ts";

const header = (name: string, value: string) => ({ name, value });
const results = (value: string) => header("authentication-results", value);
const received = header("received", "from mx.brightwire.example by mx.quillgate.example");

// After the examples of RFC 8601, Appendix B; their texts and numbers are from memory.
test("RFC 8601 B.3: a service that found SPF pass for the sender", () => {
  const field = results("example.com;\r\n spf=pass smtp.mailfrom=example.net");
  expect(proofOf([field], "sender@example.net", "example.com")).toBe("pass");
});

test("RFC 8601 B.5: two methods, of which one is aligned with From", () => {
  const field = results(
    "example.com;\r\n sender-id=fail header.from=example.com;\r\n dkim=pass (good signature) header.d=example.com",
  );
  expect(proofOf([field], "sender@example.com", "example.com")).toBe("pass");
  expect(proofOf([field], "sender@other.example", "example.com")).toBe("none");
});

test("RFC 8601 B.2: no authentication done", () => {
  expect(proofOf([results("example.org 1; none")], "sender@example.com", "example.org")).toBe("none");
});

test("RFC 8601 B.7: comments between all parts", () => {
  const field = results(
    "foo.example.net (foobar) 1 (baz);\r\n dkim (Because I like it) / 1 (One yay) = (wait for it) fail\r\n policy (A dot can go here) . (like that) expired\r\n (this surprised me) = (as I wasn't expecting it) 1362471462",
  );
  expect(proofOf([field], "sender@example.com", "foo.example.net")).toBe("none");
});

test("DMARC decides where it is there", () => {
  const of = (text: string) =>
    proofOf([results(`mx.quillgate.example; ${text}`)], "ines@brightwire.example", "mx.quillgate.example");
  expect(of("dmarc=pass header.from=brightwire.example")).toBe("pass");
  expect(of("spf=pass smtp.mailfrom=brightwire.example; dmarc=fail header.from=brightwire.example")).toBe(
    "fail",
  );
  expect(of("dkim=pass header.d=brightwire.example; dmarc=permerror")).toBe("fail");
  expect(of("dkim=pass header.d=brightwire.example; dmarc=temperror")).toBe("temporary");
  expect(of("dmarc=pass header.from=brightwire.example; dmarc=fail header.from=x.example")).toBe("fail");
  expect(of("spf=fail smtp.mailfrom=brightwire.example; dkim=fail header.d=brightwire.example")).toBe("none");
  expect(of("spf=temperror smtp.mailfrom=brightwire.example")).toBe("temporary");
  expect(of("auth=pass header.d=brightwire.example smtp.mailfrom=brightwire.example")).toBe("none");
  expect(of("dkim=pass header.i=@brightwire.example")).toBe("pass");
  expect(of("DMARC=Pass Header.From=BrightWire.example")).toBe("pass");
  expect(of("dkim=pass header.d=x.example header.i=@brightwire.example")).toBe("none");
  expect(of("dmarc=temperror header.from=brightwire.example")).toBe("temporary");
  expect(of("dmarc=pass header.from=stranger.example")).toBe("none");
});

test("a field of another server, or one below the border, proves nothing", () => {
  const forged = results("mx.quillgate.example; dmarc=pass header.from=brightwire.example");
  const from = "ines@brightwire.example";
  expect(proofOf([received, forged], from, "mx.quillgate.example")).toBe("none");
  expect(proofOf([results("mx.stranger.example; dmarc=pass"), received], from, "mx.quillgate.example")).toBe(
    "none",
  );
  expect(proofOf([forged, received], from, "mx.quillgate.example")).toBe("pass");
});

test("servers of ours between the border and the mailbox are passed over", () => {
  const inner = header("received", "from mx.quillgate.example by store.quillgate.example");
  const field = results("mx.quillgate.example; dmarc=pass header.from=brightwire.example");
  expect(proofOf([inner, field, received], "ines@brightwire.example", "mx.quillgate.example")).toBe("none");
  expect(proofOf([inner, field, received], "ines@brightwire.example", "mx.quillgate.example", 2)).toBe(
    "pass",
  );
});

test("an escaped backslash ends no quotation, and what a sender called itself ends no comment", () => {
  const of = (text: string) =>
    proofOf([results(`mx.quillgate.example; ${text}`)], "ines@brightwire.example", "mx.quillgate.example");
  const fails = "dmarc=fail header.from=brightwire.example";
  expect(
    of(`dkim=neutral header.s="x\\\\" (a";dmarc=pass header.from=brightwire.example;b) ; ${fails}`),
  ).toBe("fail");
  expect(of(`dkim=neutral header.s="x(\\\\"; ${fails}`)).toBe("fail");
  expect(
    of(`spf=none smtp.mailfrom="a\\";dmarc=pass header.from=brightwire.example;b"@evil.example; ${fails}`),
  ).toBe("fail");
  expect(of(`spf=none smtp.mailfrom="a\\";dmarc=pass header.from=brightwire.example;b"@evil.example`)).toBe(
    "none",
  );
  // RFC 7489 §11.1: the field names whom it passed
  expect(of("dmarc=pass")).toBe("none");
});

describe("what a stranger calls himself proves nothing", () => {
  const of = (...texts: string[]) =>
    proofOf(
      texts.map((text) => results(`mx.quillgate.example; ${text}`)),
      "ines@brightwire.example",
      "mx.quillgate.example",
    );
  test.each([
    ["a return path", 'spf=pass smtp.mailfrom="x@brightwire.example"@evil.example; dmarc=none'],
    ["a signer", 'dkim=pass header.i="@brightwire.example"@evil.example'],
    ["a return path with a backslash", 'spf=pass smtp.mailfrom="x\\"@brightwire.example"@evil.example'],
    [
      "a greeting whose bracket has a backslash",
      "spf=none (helo x\\); dmarc=pass header.from=brightwire.example; y)",
    ],
  ])("as %s with the buyer's domain in it", (_, text) => {
    expect(of(text)).toBe("none");
  });

  test("where it leaves a bracket or a quote open", () => {
    expect(of("spf=fail (x ( ; dmarc=fail header.from=brightwire.example")).toBe("temporary");
    expect(of('spf=pass smtp.mailfrom=brightwire.example; dkim=none header.s="x')).toBe("temporary");
  });

  test("an address in quotes as a whole is still one", () => {
    expect(of('spf=pass smtp.mailfrom="ines@brightwire.example"')).toBe("pass");
    expect(of('spf=pass smtp.mailfrom="ines calloway"@brightwire.example')).toBe("pass");
  });
});

test("all fields of our own server count together, however it writes its name", () => {
  const from = "ines@brightwire.example";
  const fields = [
    results("mx.quillgate.example; dkim=pass header.d=brightwire.example"),
    results('"MX.quillgate.example." 1; dmarc=fail header.from=brightwire.example'),
  ];
  expect(proofOf(fields, from, "mx.quillgate.example")).toBe("fail");
  expect(proofOf(fields.slice(0, 1), from, "mx.quillgate.example.")).toBe("pass");
});

test("a field whose comment or quotation is not closed proves nothing", () => {
  const proof = (value: string) =>
    proofOf([results(`example.com; ${value}`)], "sender@example.com", "example.com");
  expect(proof("dmarc=pass (closed) header.from=example.com")).toBe("pass");
  expect(proof("dmarc=pass header.from=example.com (not closed")).not.toBe("pass");
  expect(proof("dmarc=pass header.from=example.com (not ((closed) here)")).not.toBe("pass");
  expect(proof('dmarc=pass header.from=example.com reason="not closed')).not.toBe("pass");
});

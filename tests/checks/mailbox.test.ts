import { expect, test } from "vitest";
import { addressesIn, mailboxOf } from "../../src/checks/mailbox.ts";

type Kind = ReturnType<typeof mailboxOf>["kind"];

/** Examples as they are published; those from memory were not looked up again. */
const published: Readonly<Record<string, readonly (readonly [address: string, Kind])[]>> = {
  "RFC 3696 §3": [
    ['"Abc@def"@example.com', "odd"],
    ['"Fred Bloggs"@example.com', "odd"],
    ["user+mailbox@example.com", "ordinary"],
    ["customer/department=shipping@example.com", "odd"],
    ["$A12345@example.com", "odd"],
    ["!def!xyz%abc@example.com", "odd"],
    ["_somename@example.com", "ordinary"],
  ],
  "RFC 3696 §3, taken back by erratum 246": [
    ["Abc\\@def@example.com", "none"],
    ["Fred\\ Bloggs@example.com", "none"],
    ["Joe.\\\\Blow@example.com", "none"],
  ],
  "RFC 3696, erratum 246": [
    ['"Abc\\@def"@example.com', "odd"],
    ['"Fred\\ Bloggs"@example.com', "odd"],
    ['"Joe.\\\\Blow"@example.com', "odd"],
  ],
  "RFC 5322 §A.1": [
    ["john.q.public@example.com", "ordinary"],
    ["mary@x.test", "ordinary"],
    ["jdoe@example.org", "ordinary"],
    ["one@y.test", "ordinary"],
    ["boss@nil.test", "ordinary"],
    ["sysservices@example.net", "ordinary"],
    ["pete@silly.example", "ordinary"],
    ["j-brown@other.example", "ordinary"],
  ],
  "RFC 5322 §A.5, from memory: comments belong to a letter's header, RFC 5321 has none": [
    ["pete(his account)@silly.test", "none"],
  ],
  "RFC 5322 §A.6.1, from memory: obsolete, with blanks around dots": [
    ["john.q. public@example.com", "none"],
    ["jdoe@test   . example", "none"],
  ],
  "RFC 5321 Appendix D, from memory": [
    ["Smith@bar.com", "ordinary"],
    ["Jones@foo.com", "ordinary"],
    ["userx@y.foo.org", "ordinary"],
  ],
  "RFC 5321 §4.1.3, the forms of it; addresses of RFC 5737 and RFC 3849": [
    ["ines@[192.0.2.7]", "odd"],
    ["ines@[IPv6:2001:db8::7]", "odd"],
    ["ines@[192.0.2.256]", "none"],
    ["ines@[IPv6:2001:db8:::7]", "none"],
    ["ines@[192.0.2.7", "none"],
    ["ines@at[192.0.2.7]", "none"],
    ["ines@[192.0.2.7]at", "none"],
    ["ines@[tag:7!x]", "odd"],
    ["ines@[:7]", "none"],
  ],
  "RFC 5321 §4.1.2, the grammar": [
    ["user&co@brightwire.example", "ordinary"],
    ["x!y@brightwire.example", "odd"],
    ["a/b@brightwire.example", "odd"],
    ["i~n@brightwire.example", "odd"],
    ["ines@localhost", "odd"],
    [".ines@brightwire.example", "none"],
    ["ines.@brightwire.example", "none"],
    ["in..es@brightwire.example", "none"],
    ["in es@brightwire.example", "none"],
    ["in,es@brightwire.example", "none"],
    ["ines@brightwire..example", "none"],
    ["ines@-brightwire.example", "none"],
    ["ines@brightwire-.example", "none"],
    ["ines@bright_wire.example", "none"],
    ["ines@brightwire.example.", "none"],
    ["ines@", "none"],
    ["ines@brightwire.example@", "none"],
    ["ines@at@brightwire.example", "none"],
    ['in"es"@brightwire.example', "none"],
    ['"in"es@brightwire.example', "none"],
    ["ines@brightwire.example!", "none"],
    ["@brightwire.example", "none"],
    ['"ines@brightwire.example', "none"],
    ['"in"es"@brightwire.example', "none"],
    ["ines\n@brightwire.example", "none"],
    ["Ines <ines@brightwire.example>", "none"],
  ],
  "RFC 6531 §3.3": [
    ["inés@brightwire.example", "odd"],
    ["ines@brïghtwire.example", "odd"],
    ["ines@bright“wire.example", "none"],
  ],
  "common practice, no source: no domain ends so": [
    ["ines@brightwire.c", "odd"],
    ["ines@192.0.2.7", "odd"],
    ["ines@b.7.brightwire.example", "ordinary"],
  ],
};

const rows = Object.entries(published).flatMap(([source, examples]) =>
  examples.map(([address, kind]) => ({ source, address, kind })),
);

test.each(rows)("$source: $address is $kind", ({ address, kind }) => {
  expect(mailboxOf(address).kind).toBe(kind);
});

// RFC 1035 §2.3.4: a label has at most 63 octets.
test("no more than 63 characters stand between two dots of a domain", () => {
  expect(mailboxOf(`ines@${"a".repeat(63)}.example`).kind).toBe("ordinary");
  expect(mailboxOf(`ines@${"a".repeat(64)}.example`).kind).toBe("long");
});

// RFC 5321 §4.5.3.1.3 with RFC 3696, erratum 1690; §4.5.3.1.1 counts octets.
test("254 octets are an address, of which 64 stand before the @", () => {
  const host = `${"a".repeat(60)}.`.repeat(4).slice(0, 254 - 65 - 8);
  expect(mailboxOf(`${"i".repeat(64)}@${host}.example`).kind).toBe("ordinary");
  expect(mailboxOf(`${"i".repeat(64)}@a${host}.example`).kind).toBe("long");
  expect(mailboxOf(`${"é".repeat(32)}@brightwire.example`).kind).toBe("odd");
  expect(mailboxOf(`${"é".repeat(33)}@brightwire.example`).kind).toBe("long");
});

test.each([
  ["Ines Calloway <ines@brightwire.example>", ["ines@brightwire.example"]],
  ["ines@a.example <rosa@b.example>", ["ines@a.example", "rosa@b.example"]],
  ["ines@a.example; rosa@b.example", ["ines@a.example", "rosa@b.example"]],
  ["ines@a.example or rosa@b.example (office)", ["ines@a.example", "rosa@b.example"]],
  ["mailto:ines@a.example.", ["ines@a.example"]],
  ["ines@a,example", ["ines@a", "example"]],
  ["call Ines", ["call", "Ines"]],
  ["n/a", ["n", "a"]],
  [" or ", []],
])("in “%s” are %j", (typed, addresses) => {
  expect(addressesIn(typed)).toEqual(addresses);
});

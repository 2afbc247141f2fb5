import { expect, test } from "vitest";
import { domainsOf, likelierDomain, oddDomains } from "../../src/checks/email-domain.ts";
import { aloneDevice } from "../make/sample.ts";

test.each([
  [" Ines@BrightWire.example ", ["brightwire.example"]],
  ["ines@mail.brightwire.example", ["mail.brightwire.example"]],
  ["Ines <ines@brightwire.example>; rosa@larkspur.example", ["larkspur.example", "brightwire.example"]],
  ["ines@brightwire.example, rosa@brightwire.example", ["brightwire.example"]],
  ["ines@brightwire", []],
  ["ines@brightwire.", []],
  ["ines@a@brightwire.example", []],
  ["", []],
  [undefined, []],
])("the domains of “%s” are %s", (email, domains) => {
  expect(domainsOf(email)).toEqual(domains);
});

// The providers stand in a list of our own. That .con is no ending is IANA's list, by way of the public suffix list.
test.each([
  ["gmial.com", "gmail.com"],
  ["gmail.con", "gmail.com"],
  ["hotmal.com", "hotmail.com"],
  ["gmail.com", undefined],
  ["cloud.com", undefined],
  ["al.com", undefined],
  ["g-mail.com", "gmail.com"],
  ["gmaiil.co", undefined],
  ["brightwire.con", "brightwire.com"],
  ["brightwire.nett", "brightwire.net"],
  ["brightwire.com", undefined],
  // RFC 2606 §2: endings that are kept for tests and examples
  ["brightwire.test", undefined],
  ["brightwire.example", undefined],
  ["brightwire.invalid", undefined],
  ["brightwire.localhost", undefined],
  ["brightwire.xyzzy", undefined],
  ["brightwire.uz", undefined],
  ["brightwire.qa", undefined],
])("for %s was meant %s", (domain, meant) => {
  expect(likelierDomain(domain)).toBe(meant);
});

test("a domain too long for anybody's is compared with none", () => {
  expect(likelierDomain(`${"a".repeat(96)}.con`)).toBe(`${"a".repeat(96)}.com`);
  expect(likelierDomain(`${"a".repeat(97)}.con`)).toBeUndefined();
});

/** The odd domains among sheets that have these addresses, in turn. */
const odd = (...emails: string[]) =>
  oddDomains(emails.map((email, i) => aloneDevice({ id: `1/${i}`, contact: { email } }))).map(
    ({ sheet, domain, usual }) => [sheet.id, domain, usual],
  );
const [usual, slip, other] = ["ines@brightwire.example", "ines@brightwre.example", "jo@oakmoor.example"];

test("a domain one slip from that of most sheets is odd, wherever it stands", () => {
  expect(odd(slip, usual, usual)).toEqual([["1/0", "brightwre.example", "brightwire.example"]]);
  expect(odd(usual, slip, usual)).toHaveLength(1);
  expect(odd(slip, usual, slip)).toEqual([["1/1", "brightwire.example", "brightwre.example"]]);
});

test("another domain is none, and no domain is none", () => {
  expect(odd(usual, usual, other)).toEqual([]);
  expect(odd(usual, usual, "", "ines")).toEqual([]);
  expect(odd(usual, usual, "ines@bright-wire.example")).toHaveLength(1);
  expect(odd("a@abcd.example", "a@abcd.example", "a@abce.example")).toEqual([]);
  expect(odd("a@abcde.example", "a@abcde.example", "a@abcdf.example")).toHaveLength(1);
});

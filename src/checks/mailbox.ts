import { z } from "zod";

/** What an address is by RFC 5321: none, one that is too long, one that hardly anybody has and why, or an ordinary one. */
export type Mailbox =
  | { readonly kind: "none" | "long" | "ordinary" }
  | { readonly kind: "odd"; readonly has: string };

// RFC 5322 §3.2.3: atext; RFC 5321 §4.1.2: Dot-string, Quoted-string, Domain; §4.1.3: address literals.
const atom = "[A-Za-z0-9!#$%&'*+/=?^_`{|}~-]+";
const dotString = new RegExp(`^${atom}(?:\\.${atom})*$`);
const quotedString = /^"(?:[ !#-[\]-~]|\\[ -~])*"$/;
const label = "[A-Za-z0-9](?:[A-Za-z0-9-]*[A-Za-z0-9])?";
const domain = new RegExp(`^${label}(?:\\.${label})*$`);
const literal = /^\[(?:IPv6:(?<six>[^\]]+)|(?<four>[\d.]+)|[A-Za-z0-9-]*[A-Za-z0-9]:[!-Z^-~]+)\]$/i;

/** In octets. RFC 5321 §4.5.3.1.1: the part before the @. */
const longestLocalPart = 64;
/** RFC 5321 §4.5.3.1.3: a path has 256 with its angle brackets, so an address 254 (RFC 3696, erratum 1690). */
const longestAddress = 254;
/** RFC 1035 §2.3.4: what stands between two dots of a domain. */
const longestLabel = 63;

/** What hardly any address has, and is allowed to. */
const oddities: readonly (readonly [has: string, (address: Parts) => boolean])[] = [
  ["quotation marks before the @", ({ local }) => local.startsWith('"')],
  ["a sign before the @ that few have", ({ local }) => /[!#$%*/=?^`{|}~]/.test(local)],
  ["a number in brackets for its domain", ({ host }) => host.startsWith("[")],
  ["a domain without a dot", ({ host }) => !host.includes(".")],
  ["a domain whose end is no word", ({ host }) => /\.(?:\d+|.)$/.test(host)],
  ["letters with accents or of another alphabet", ({ local, host }) => /[^ -~]/.test(local + host)],
];

interface Parts {
  readonly local: string;
  readonly host: string;
}

export function mailboxOf(typed: string): Mailbox {
  const [, local, host] = /^(.+)@([^@]+)$/s.exec(typed) ?? [];
  if (local === undefined || host === undefined) return { kind: "none" };
  // RFC 6531 §3.3: letters beyond ASCII may stand wherever ASCII letters may.
  const [name = "", place = ""] = [local, host].map((part) => part.replace(/[\p{L}\p{M}\p{N}]/gu, "x"));
  const isName = dotString.test(name) || quotedString.test(name);
  if (!isName || !(domain.test(place) || isAddressLiteral(host))) return { kind: "none" };
  const isLong =
    Buffer.byteLength(local) > longestLocalPart ||
    Buffer.byteLength(typed) > longestAddress ||
    host.split(".").some((one) => Buffer.byteLength(one) > longestLabel);
  if (isLong) return { kind: "long" };
  const [has] = oddities.find(([, has]) => has({ local, host })) ?? [];
  return has === undefined ? { kind: "ordinary" } : { kind: "odd", has };
}

/**
 * The addresses in what was typed, which may have more than one, a name before "<", a remark in brackets, and a word
 * such as "or" between them. What is left besides counts as an address too, and is none.
 */
export function addressesIn(typed: string): string[] {
  const bare = typed.replace(/\([^()]*\)/gu, " ");
  const bracketed = [...bare.matchAll(/<([^<>]*)>/gu)].flatMap(([, inside = ""]) => wordsIn(inside));
  const words = wordsIn(bare.replace(/<[^<>]*>/gu, " "));
  return bracketed.length === 0 ? words : [...words.filter((word) => word.includes("@")), ...bracketed];
}

function wordsIn(text: string): string[] {
  return text
    .split(/[\s;,/|]/u)
    .map((word) => word.replace(/^(?:mailto|e-?mail):/iu, "").replace(/\.$/u, ""))
    .filter((word) => !/^(?:or|and|&|cc:?|e-?mail)?$/iu.test(word));
}

function isAddressLiteral(host: string): boolean {
  const { groups } = literal.exec(host) ?? {};
  if (groups === undefined) return false;
  const { four, six } = groups;
  if (six !== undefined) return z.ipv6().safeParse(six).success;
  return four === undefined || z.ipv4().safeParse(four).success;
}

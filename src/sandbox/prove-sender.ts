import { isIP } from "node:net";
import { type AuthenticateResult, authenticate } from "mailauth";
import { getDomain } from "tldts";
import { borderOf, domainOf } from "../intake/authentication.ts";
import type { Inquiry } from "../ports/reader.ts";
import { headerEnd, headerLines } from "../reading/letter/header-lines.ts";
import type { HeaderLine } from "../trade/header.ts";
import type { SenderProof } from "../trade/sender-proof.ts";
import { openNames } from "./names.ts";

/**
 * Whether the domain in From vouches for a letter, by DKIM (RFC 6376), SPF (RFC 7208) and DMARC (RFC 7489). The name
 * servers are asked now. Signatures and return paths of foreign domains prove nothing and are not looked up, since
 * their owners could make us wait. SPF needs to know who spoke to our server, which stands in the Received line that
 * the server wrote. If it does not stand there, SPF says nothing.
 */
export async function proveSender(
  bytes: Uint8Array,
  { from, lines, servers }: Inquiry,
): Promise<SenderProof> {
  const domain = domainOf(from);
  const headers = headerLines(bytes);
  const border = borderOf(headers, lines);
  // The sender may have written all that stands below our own line.
  const ours = border === undefined ? [] : headers.slice(0, headers.indexOf(border));
  const path = ours.find(({ name }) => name === "return-path")?.value.replaceAll(/[<>\s]/g, "");
  const client = clientIn(border);
  const spf = !isRelated(path, domain) ? "foreign" : client === undefined ? "unread" : "asked";
  const names = openNames(servers);
  const results = await authenticate(withoutForeign(bytes, domain), {
    mta: "here",
    resolver: async (name, type) => (await names.resolve(name, type)) as string[] | string[][],
    disableArc: true,
    disableBimi: true,
    rejectRsaSha1: true, // RFC 8301 §3.1
    ...(spf === "asked" && path !== undefined ? { ...client, sender: path } : {}),
  });
  return judge(results, domain, spf);
}

/**
 * What the findings come to. `way` says whether SPF was asked, was not asked because nobody knows who spoke to us
 * ("unread"), or is about another domain ("foreign").
 */
function judge(
  { dmarc, dkim, spf }: AuthenticateResult,
  domain: string,
  way: "asked" | "unread" | "foreign",
): SenderProof {
  const bySpf = way === "asked";
  // Others would see another sender in this letter, or none, or several.
  if (!dmarc || dmarc.status.header?.from?.toLowerCase() !== domain) return "fail";
  const undecided = [...dkim.results, ...(bySpf && spf ? [spf] : [])].some(
    ({ status }) => status.result === "temperror",
  );
  const isUnsigned = dkim.results.every(({ status }) => status.result === "none");
  const { result } = dmarc.status;
  if (result === "pass") {
    const { spf: path, dkim: signature } = dmarc.alignment;
    // RFC 6376 §8.2: anybody may have added what stands behind the signed part.
    const isWhole = signature.result !== undefined && !signature.underSized;
    return isWhole || (bySpf && path.result !== undefined) ? "pass" : "fail";
  }
  if (result === "temperror") return "temporary";
  if (result !== "none") return undecided || (way === "unread" && isUnsigned) ? "temporary" : "fail";
  const signed = dkim.results.filter(
    ({ signingDomain, status }) => signingDomain?.toLowerCase() === domain && status.result === "pass",
  );
  if (signed.some(({ status }) => !status.underSized)) return "pass";
  if (bySpf && spf && spf.domain?.toLowerCase() === domain && spf.status.result === "pass") return "pass";
  if (signed.length > 0) return "fail";
  return undecided ? "temporary" : "none";
}

/** The letter without signatures of domains that have nothing to do with the one in From. */
function withoutForeign(bytes: Uint8Array, domain: string): Buffer {
  const raw = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = headerEnd(raw);
  const fields = raw
    .subarray(0, end)
    .toString("latin1")
    .split(/\r?\n(?![ \t])/);
  const kept = fields.filter((field) => {
    if (!/^dkim-signature\s*:/i.test(field)) return true;
    const tags = field.slice(field.indexOf(":") + 1).split(";");
    const signers = tags.filter((tag) => /^\s*d\s*=/i.test(tag));
    // RFC 6376 §3.2: a tag that stands twice makes the signature invalid.
    return signers.length === 1 && isRelated(signers[0]?.split("=")[1]?.trim(), domain);
  });
  return Buffer.concat([Buffer.from(kept.join("\r\n"), "latin1"), raw.subarray(end)]);
}

/** Whether an address or a domain is of the same organisation as `domain`. No other can align with it. */
function isRelated(other: string | undefined, domain: string): boolean {
  const own = getDomain(domain);
  return own !== null && other !== undefined && getDomain(domainOf(other)) === own;
}

/**
 * Who spoke to our own server. First stands what the other side called itself, then what our server saw: "(name
 * [address])", "([address] helo=…)" or "(address)". If the other side gave no name it is "[address] (helo=…)". A line
 * in any other form is not believed.
 */
function clientIn(line: HeaderLine | undefined): { ip: string; helo: string } | undefined {
  const value = line?.value ?? "";
  const forms = [
    /^from\s+(\S+)\s+\((?!helo\b|ehlo\b)(?:[^\s()[\]]+\s+)?\[(?:IPv6:)?([0-9a-f.:]+)\][^()]*\)/i,
    /^from\s+(\S+)\s+\(([0-9a-f.:]+)\)\s+by\s/i,
    /^from\s+(\[([0-9a-f.:]+)\])\s+\(helo=[^()]*\)\s+by\s/i,
  ];
  for (const form of forms) {
    const [, helo = "", ip = ""] = form.exec(value) ?? [];
    if (isIP(ip) !== 0) return { ip, helo };
  }
  return undefined;
}

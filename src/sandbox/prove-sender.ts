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
 * Whether the domain in From vouches for a letter, by DKIM (RFC 6376), SPF (RFC 7208) and DMARC (RFC 7489),
 * asked of the name servers now. Signatures and return paths of foreign domains prove nothing and are not
 * looked up: whoever owns those could have us wait. What SPF needs to know of the connection stands in the
 * Received line that our own server wrote; where it does not, SPF says nothing.
 */
export async function proveSender(
  bytes: Uint8Array,
  { from, lines, servers }: Inquiry,
): Promise<SenderProof> {
  const domain = domainOf(from);
  const headers = headerLines(bytes);
  const path = headers.find(({ name }) => name === "return-path")?.value.replaceAll(/[<>\s]/g, "");
  const client = isRelated(path, domain) ? clientIn(borderOf(headers, lines)) : undefined;
  const names = openNames(servers);
  const results = await authenticate(withoutForeign(bytes, domain), {
    mta: "here",
    resolver: async (name, type) => (await names.resolve(name, type)) as string[] | string[][],
    disableArc: true,
    disableBimi: true,
    rejectRsaSha1: true, // RFC 8301 §3.1
    ...(client === undefined || path === undefined ? {} : { ...client, sender: path }),
  });
  return judge(results, domain, client !== undefined);
}

function judge({ dmarc, dkim, spf }: AuthenticateResult, domain: string, bySpf: boolean): SenderProof {
  const signed = dkim.results.filter(({ signingDomain }) => signingDomain?.toLowerCase() === domain);
  // RFC 6376 §8.2: behind the part that such a signature covers anybody may have put anything.
  const isWhole = (underSized: number | undefined): boolean => !underSized;
  if (dmarc && dmarc.status.result !== "none") {
    const { result } = dmarc.status;
    if (result === "temperror") return "temporary";
    const { spf: path, dkim: signature } = dmarc.alignment;
    const whole = Boolean(path.result && bySpf) || Boolean(signature.result && isWhole(signature.underSized));
    return result === "pass" && dmarc.status.header?.from?.toLowerCase() === domain && whole
      ? "pass"
      : "fail";
  }
  if (signed.some(({ status }) => status.result === "pass" && isWhole(status.underSized))) return "pass";
  const path = bySpf && spf && spf.domain?.toLowerCase() === domain ? spf.status.result : "none";
  if (path === "pass") return "pass";
  // Where the signature is good and the letter longer than it says, somebody has added something.
  if (signed.some(({ status }) => status.result === "pass")) return "fail";
  return path === "temperror" || signed.some(({ status }) => status.result === "temperror")
    ? "temporary"
    : "none";
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
    const signer = /[:;]\s*d\s*=\s*([^\s;]+)/i.exec(field.replaceAll(/\s+/g, " "))?.[1];
    return isRelated(signer, domain);
  });
  return Buffer.concat([Buffer.from(kept.join("\r\n"), "latin1"), raw.subarray(end)]);
}

/** Whether an address or a domain is of the organisation that `domain` is of: no other can align with it. */
function isRelated(other: string | undefined, domain: string): boolean {
  const own = getDomain(domain);
  return own !== null && other !== undefined && getDomain(domainOf(other)) === own;
}

/**
 * Who spoke to our own server: what it saw itself stands as "(name [address])" behind what the other side
 * called itself. Of lines that other programs write otherwise nothing is believed.
 */
function clientIn(line: HeaderLine | undefined): { ip: string; helo: string } | undefined {
  const found =
    /^from\s+(\S+)\s+\((?!helo\b|ehlo\b)(?:[^\s()[\]]+\s+)?\[(?:IPv6:)?([0-9a-f.:]+)\][^()]*\)/i.exec(
      line?.value ?? "",
    );
  const [, helo = "", ip = ""] = found ?? [];
  return isIP(ip) === 0 ? undefined : { ip, helo };
}

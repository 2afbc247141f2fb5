import { authenticate } from "mailauth";
import { getClientAddress, parseReceived } from "mailauth/lib/parse-received.js";
import { borderOf, proofIn } from "../intake/authentication.ts";
import type { Inquiry } from "../ports/reader.ts";
import { headerLines } from "../reading/letter/header-lines.ts";
import type { SenderProof } from "../trade/sender-proof.ts";
import { openNames } from "./names.ts";

/**
 * Whether the domain in From vouches for a letter, by DKIM (RFC 6376), SPF (RFC 7208) and DMARC (RFC 7489),
 * asked of the name servers now. What SPF needs to know of the connection stands in the Received line that
 * our own server wrote; where it does not, SPF says nothing.
 */
export async function proveSender(
  bytes: Uint8Array,
  { from, lines, servers }: Inquiry,
): Promise<SenderProof> {
  const headers = headerLines(bytes);
  const arrival = parseReceived(`Received: ${borderOf(headers, lines)?.value ?? ""}`);
  const ip = (arrival && getClientAddress(arrival.from)) || undefined;
  const path = headers.find(({ name }) => name === "return-path")?.value.replaceAll(/[<>\s]/g, "");
  const names = openNames(servers);
  const { dkim, headers: fields } = await authenticate(Buffer.from(bytes), {
    mta: "here",
    resolver: async (name, type) => (await names.resolve(name, type)) as string[] | string[][],
    disableArc: true,
    disableBimi: true,
    rejectRsaSha1: true, // RFC 8301 §3.1
    ...(ip === undefined ? {} : { ip }),
    ...(arrival && arrival.from?.value ? { helo: arrival.from.value } : {}),
    ...(path === undefined ? {} : { sender: path }),
  });
  // RFC 6376 §8.2: behind the part that such a signature covers anybody may have put anything.
  if (dkim.results.some(({ status }) => status.result === "pass" && status.underSized)) return "none";
  const field = fields
    .replace(/\r\n(?=[ \t])/g, "")
    .split("\r\n")
    .find((line) => /^authentication-results:/i.test(line));
  const value = field?.slice(field.indexOf(":") + 1) ?? "";
  return proofIn(value, from, ip === undefined ? ["dkim", "dmarc"] : ["dkim", "dmarc", "spf"]);
}

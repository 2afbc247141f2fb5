import { headerLines } from "../reading/letter/header-lines.ts";
import type { SenderProof } from "../trade/sender-proof.ts";
import { proofOf } from "./authentication.ts";
import type { Desk } from "./desk.ts";

/**
 * What is known of who sent a letter. Our own mail server tells it, or else the name servers are asked. If the
 * settings name neither it is "not asked", and senders are taken at their word.
 */
export async function senderProof(
  { reader, rules }: Pick<Desk, "reader" | "rules">,
  bytes: Uint8Array,
  from: string,
): Promise<SenderProof | "not asked"> {
  const { authority, nameServers, receivedLines: lines } = rules;
  if (authority !== undefined) return proofOf(headerLines(bytes), from, authority, lines);
  if (nameServers === undefined) return "not asked";
  const proof = await reader.sender(bytes, { from, lines, servers: nameServers });
  return proof.ok ? proof.value : "temporary";
}

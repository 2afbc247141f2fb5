import { createHash } from "node:crypto";
import { headerEnd, headerLines } from "./header-lines.ts";

/**
 * What makes two deliveries the same letter: From, Message-ID and the body. Lines that mail servers add on the way
 * (Received, Return-Path, …) do not count. The Message-ID alone is not enough, since its sender chooses it.
 */
export function letterKey(bytes: Uint8Array): string {
  const hash = createHash("sha256");
  for (const { name, value } of headerLines(bytes))
    if (name === "from" || name === "message-id") hash.update(`${name}:${value}\n`, "latin1");
  const raw = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return hash
    .update("\n")
    .update(raw.subarray(headerEnd(raw)))
    .digest("hex");
}

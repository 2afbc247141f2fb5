import { createHash } from "node:crypto";

/**
 * What makes two deliveries the same letter: From, Message-ID and the body. Lines that mail servers add
 * on the way (Received, Return-Path, …) do not count; the Message-ID alone would, but its sender chooses it.
 */
export function letterKey(bytes: Uint8Array): string {
  const raw = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = headerEnd(raw);
  // RFC 5322 §2.2.3: a line that begins with a blank continues the one before.
  const header = raw
    .subarray(0, end)
    .toString("latin1")
    .replace(/\r?\n(?=[ \t])/g, "");
  const lines = header.split(/\r?\n/).filter((line) => /^(from|message-id)[ \t]*:/i.test(line));
  const hash = createHash("sha256");
  for (const line of lines) hash.update(`${line.trim()}\n`, "latin1");
  return hash.update("\n").update(raw.subarray(end)).digest("hex");
}

function headerEnd(raw: Buffer): number {
  const ends = [raw.indexOf("\r\n\r\n"), raw.indexOf("\n\n")].filter((at) => at >= 0);
  return ends.length === 0 ? raw.length : Math.min(...ends);
}

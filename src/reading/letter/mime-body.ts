import { uuencodedIn } from "./uuencode.ts";

/** A body as it stands in a letter → its bytes. An unknown encoding is left as it is. RFC 2045 §6 */
export function decodeBody(body: Buffer, encoding: string): Uint8Array {
  const name = encoding.toLowerCase();
  if (name.startsWith("base64")) return decodeBase64(body);
  if (name.startsWith("quoted-printable")) return decodeQuotedPrintable(body);
  // This encoding is older than MIME, and some programs still name it.
  if (/^(?:x-)?uu/.test(name)) return uuencodedIn(body.toString("latin1"))[0]?.bytes ?? body;
  return body;
}

function decodeBase64(body: Buffer): Buffer {
  const text = body.toString("latin1");
  // No line of base64 begins with dashes. A line that does is a boundary that went wrong, and another part follows
  // it.
  const end = /^--/m.exec(text)?.index;
  return Buffer.from(text.slice(0, end), "base64");
}

/** RFC 2045 §6.7. What is no code stays as it stands. */
function decodeQuotedPrintable(body: Buffer): Buffer {
  const bytes = Buffer.alloc(body.length);
  let length = 0;
  for (let at = 0; at < body.length; at++) {
    const byte = body[at] ?? 0;
    if (byte !== 0x3d) bytes[length++] = byte;
    else {
      // Codes, and soft line ends. Servers may have put blanks before those.
      const [found = "", code] =
        /^(?:=([0-9A-F]{2})|=[ \t]*(?:\r?\n|$))/i.exec(body.toString("latin1", at, at + 80)) ?? [];
      if (found === "") bytes[length++] = byte;
      else if (code !== undefined) bytes[length++] = Number.parseInt(code, 16);
      at += Math.max(0, found.length - 1);
    }
  }
  return bytes.subarray(0, length);
}

import type { FileWords } from "./facts.ts";
import { pageWords } from "./letter/html-words.ts";

/** Characters that are read at most. Nobody writes more beside sheets. */
const longest = 200_000;

/**
 * The words of a text file: plain text, a page of HTML, an entry of a calendar, a card. Undefined for any other file.
 */
export async function wordsOfText(bytes: Uint8Array): Promise<FileWords | undefined> {
  const text = readableText(bytes)?.slice(0, longest);
  if (text === undefined || text.trim() === "") return undefined;
  if (/^\s*BEGIN:(?:VCALENDAR|VCARD)\b/i.test(text)) return { text: saidInEntry(text) };
  if (/^\s*<(?:!doctype html|\?xml|html|head|body|div|p)\b/i.test(text)) return pageWords(text);
  return { text };
}

/** Text in the encodings in which programs save it. Undefined if it is no text. */
export function readableText(bytes: Uint8Array): string | undefined {
  const [first, second] = bytes;
  const marked =
    first === 0xff && second === 0xfe
      ? "utf-16le"
      : first === 0xfe && second === 0xff
        ? "utf-16be"
        : undefined;
  if (marked !== undefined) return new TextDecoder(marked).decode(bytes);
  // No text has these bytes. WHATWG Encoding Standard: "latin1" is read as windows-1252.
  if (bytes.some((byte) => byte < 0x20 && ![0x09, 0x0a, 0x0c, 0x0d].includes(byte))) return undefined;
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

/** What a person says in an entry of a calendar or a card. RFC 5545 §3.1, 3.3.11 and 3.8.1; RFC 6350 §3.2 */
function saidInEntry(text: string): string {
  return text
    .replace(/\r?\n[ \t]/g, "")
    .split(/\r?\n/)
    .flatMap((line) => /^(?:SUMMARY|DESCRIPTION|COMMENT|NOTE|STATUS)(?:;[^:]*)?:(.*)$/i.exec(line)?.[1] ?? [])
    .map((said) => said.replace(/\\n/gi, "\n").replace(/\\([\\;,])/g, "$1"))
    .filter((said) => !/^(?:CONFIRMED|TENTATIVE)$/i.test(said))
    .join("\n\n");
}

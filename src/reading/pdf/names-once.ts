import { PDFName, PDFObjectParser } from "pdf-lib";

/** What the parser of the library is made of, as far as it is needed here. */
interface Parser {
  readonly bytes: {
    readonly assertNext: (expected: number) => void;
    readonly done: () => boolean;
    readonly peek: () => number;
    readonly next: () => number;
  };
  parseName: () => PDFName;
}

// ISO 32000-1:2008 §7.2.2: what ends a name.
const ends = new Set(Buffer.from("\0\t\n\f\r ()<>[]{}/%"));

/**
 * Names are decoded once. The parser of the library does it and has `PDFName.of` do it again, so that the
 * name "50#25" (written `50#2325`) became "50%". `PDFName.of` knows escapes in capitals alone.
 * ISO 32000-1:2008 §7.3.5
 */
function parseName(this: Parser): PDFName {
  const { bytes } = this;
  bytes.assertNext(0x2f);
  let name = "";
  while (!bytes.done() && !ends.has(bytes.peek())) name += String.fromCharCode(bytes.next());
  return PDFName.of(name.replace(/#[0-9A-Fa-f]{2}/g, (escape) => escape.toUpperCase()));
}

/** Has the library read every name so, from now on. */
export function decodeNamesOnce(): void {
  Object.assign(PDFObjectParser.prototype, { parseName });
}

import { PDFName, PDFObjectParser } from "pdf-lib";

/** The parts of the library's parser that are needed here. */
interface Parser {
  readonly bytes: {
    readonly assertNext: (expected: number) => void;
    readonly done: () => boolean;
    readonly peek: () => number;
    readonly next: () => number;
  };
  parseName: () => PDFName;
}

// ISO 32000-1:2008 §7.2.2: bytes that end a name.
const ends = new Set(Buffer.from("\0\t\n\f\r ()<>[]{}/%"));

/**
 * Reads a name and decodes it once. The library's parser decodes it, and then has `PDFName.of` decode it again: the
 * name "50#25" (written `50#2325`) became "50%". `PDFName.of` also knows only escapes in capitals. ISO 32000-1:2008
 * §7.3.5
 */
function parseName(this: Parser): PDFName {
  const { bytes } = this;
  bytes.assertNext(0x2f);
  let name = "";
  while (!bytes.done() && !ends.has(bytes.peek())) name += String.fromCharCode(bytes.next());
  return PDFName.of(name.replace(/#[0-9A-Fa-f]{2}/g, (escape) => escape.toUpperCase()));
}

/** From now on the library reads every name so. */
export function decodeNamesOnce(): void {
  Object.assign(PDFObjectParser.prototype, { parseName });
}

// ISO 32000-1:2008 Annex D.2 (PDFDocEncoding): the bytes that differ from Latin-1. Bytes without a meaning (7F, 9F,
// AD) stay as they are.
const low = "˘ˇˆ˙˝˛˚˜"; // 18–1F
const high = "•†‡…—–ƒ⁄‹›−‰„“”‘’‚™ﬁﬂŁŒŠŸŽıłœšž"; // 80–9E
const docEncoding = Array.from({ length: 256 }, (_, byte) => String.fromCharCode(byte));
[...low].forEach((character, i) => {
  docEncoding[0x18 + i] = character;
});
[...high].forEach((character, i) => {
  docEncoding[0x80 + i] = character;
});
docEncoding[0xa0] = "€";

const marked = [
  { mark: [0xfe, 0xff], decoder: new TextDecoder("utf-16be") },
  // Not in the standard. Some fillers write it and every viewer understands it.
  { mark: [0xff, 0xfe], decoder: new TextDecoder("utf-16le") },
  // ISO 32000-2:2020 §7.9.2.2
  { mark: [0xef, 0xbb, 0xbf], decoder: new TextDecoder("utf-8") },
] as const;

/** Bytes of a PDF text string → text: UTF-16 or UTF-8 behind a byte order mark, else PDFDocEncoding. */
export function decodeTextString(bytes: Uint8Array): string {
  const unicode = marked.find(({ mark }) => mark.every((byte, i) => bytes[i] === byte));
  if (unicode === undefined) return Array.from(bytes, (byte) => docEncoding[byte]).join("");
  const whole = bytes.length % 2 === 1 && unicode.mark.length === 2 ? bytes.subarray(0, -1) : bytes;
  // ISO 32000-1:2008 §7.9.2.2: the language of the text may stand between two escape characters.
  const pieces = unicode.decoder.decode(whole).split("\u001b");
  return pieces.filter((_, i) => i % 2 === 0).join("");
}

const strictUtf8 = new TextDecoder("utf-8", { fatal: true });

/** A PDF name, one character a byte → text: UTF-8 by ISO 32000-1:2008 §7.3.5, or Latin-1 if it is no UTF-8. */
export function decodeName(binary: string): string {
  try {
    return strictUtf8.decode(Uint8Array.from(binary, (character) => character.charCodeAt(0)));
  } catch {
    return binary;
  }
}

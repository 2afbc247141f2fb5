import { inflateSync } from "node:zlib"; // a pure function of bytes
import {
  decodePDFRawStream,
  PDFArray,
  PDFDict,
  PDFHexString,
  PDFName,
  PDFNumber,
  type PDFObject,
  PDFRawStream,
  PDFString,
} from "pdf-lib";
import type { Box } from "../facts.ts";
import { inOrder } from "./boxes.ts";
import { decodeName, decodeTextString } from "./pdf-string.ts";

/** A stream with more bytes than these, as stored, is nothing that somebody typed. */
const mostStreamBytes = 65_536;

/** The text of a string, name, number or stream; "" for anything else. Throws for a stream that is too long. */
export function textOf(value: PDFObject | undefined): string {
  if (value instanceof PDFString || value instanceof PDFHexString) return decodeTextString(value.asBytes());
  if (value instanceof PDFName) return decodeName(value.decodeText());
  if (value instanceof PDFNumber) return String(value.asNumber());
  if (value instanceof PDFRawStream) {
    if (value.contents.length > mostStreamBytes) throw new Error("a field's value is endless");
    return value.contents.length === 0 ? "" : decodeTextString(decodePDFRawStream(value).decode());
  }
  return "";
}

/** What a stream holds, one character a byte. Throws if it holds more than `most` bytes, or cannot be decoded. */
export function contentOf(stream: PDFRawStream, most: number): string {
  // Some programs name a filter for a stream of no bytes at all.
  if (stream.contents.length === 0) return "";
  const whole = inflated(stream, most);
  if (whole !== undefined) return whole;
  const decoder = decodePDFRawStream(stream);
  let content = "";
  // Read in pieces, since the decoder sets aside as many bytes as it is asked for.
  for (let piece = decoder.getBytes(4096); piece.length > 0; piece = decoder.getBytes(4096)) {
    content += Buffer.from(piece.buffer, piece.byteOffset, piece.byteLength).toString("latin1");
    if (content.length > most) throw new Error("a stream is endless");
  }
  return content;
}

/** What a stream holds that is packed as most are and sound. Undefined for any other, and for one that holds too much. */
function inflated({ dict, contents }: PDFRawStream, most: number): string | undefined {
  if (entryOf(dict, "Filter") !== PDFName.of("FlateDecode") || dict.has(PDFName.of("DecodeParms")))
    return undefined;
  try {
    return inflateSync(contents, { maxOutputLength: Math.max(1, most) }).toString("latin1");
  } catch {
    return undefined;
  }
}

/** The members of an array. Anything else is a list of one. */
export function listOf(value: PDFObject | undefined): (PDFObject | undefined)[] {
  if (!(value instanceof PDFArray)) return [value];
  return Array.from({ length: value.size() }, (_, i) => value.lookup(i));
}

/** What a dictionary holds under a key, references followed. */
export function entryOf(dict: PDFDict, key: string): PDFObject | undefined {
  return dict.lookup(PDFName.of(key));
}

/** The dictionaries in an array of a dictionary; none where there is no such array. */
export function dictsIn(dict: PDFDict, key: string): PDFDict[] {
  return listOf(entryOf(dict, key)).filter((object) => object instanceof PDFDict);
}

/** The four numbers of a rectangle in order; undefined where there are not four. */
export function rectangleOf(rectangle: unknown): Box | undefined {
  if (!(rectangle instanceof PDFArray) || rectangle.size() !== 4) return undefined;
  const [a, b, c, d] = [0, 1, 2, 3].map((i) => {
    const number = rectangle.lookup(i);
    return number instanceof PDFNumber ? number.asNumber() : Number.NaN;
  }) as [number, number, number, number];
  return [a, b, c, d].every(Number.isFinite) ? inOrder(a, b, c, d) : undefined;
}

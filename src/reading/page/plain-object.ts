import {
  PDFArray,
  PDFDict,
  PDFHexString,
  PDFName,
  PDFNumber,
  type PDFObject,
  PDFRawStream,
  PDFString,
} from "pdf-lib";
import { listOf, textOf } from "../pdf/pdf-value.ts";
import { objectKey } from "./content-key.ts";

/** How deep an object of a form is nested. */
const deepest = 8;

/**
 * An object in words that are the same in another file, however it is written there. Throws for one that leads nowhere,
 * deep down or in a circle.
 */
export function inWords(object: PDFObject | undefined, depth = 0): string {
  if (object === undefined || depth > deepest) throw new Error("no plain object");
  if (object instanceof PDFString || object instanceof PDFHexString) return stringInWords(object);
  // A program may keep fewer digits.
  if (object instanceof PDFNumber) return String(Math.round(object.asNumber() * 50) / 50);
  if (object instanceof PDFArray)
    return `[${listOf(object)
      .map((one) => inWords(one, depth + 1))
      .join(" ")}]`;
  if (object instanceof PDFDict) return entriesInWords(object, nothing, depth);
  if (object instanceof PDFRawStream) return streamInWords(object);
  return String(object);
}

const nothing: ReadonlySet<string> = new Set();

/** Strings that were read before, as they were written. Every sheet of a form has the same tips. */
const strings = new Map<string, string>();
const mostStrings = 4_000;
const longest = 1_000;

function stringInWords(string: PDFString | PDFHexString): string {
  const written = string.toString();
  const known = strings.get(written);
  if (known !== undefined) return known;
  const words = JSON.stringify(textOf(string));
  if (strings.size < mostStrings && written.length <= longest) strings.set(written, words);
  return words;
}

/** Streams in words. The boxes of a form share their drawings. */
const streams = new WeakMap<PDFRawStream, string>();

function streamInWords(stream: PDFRawStream): string {
  const words = streams.get(stream) ?? objectKey(stream);
  if (words === undefined) throw new Error("an endless stream");
  streams.set(stream, words);
  return words;
}

/** The entries of a dictionary in words, some left out: their names with a slash. */
export function entriesInWords(dict: PDFDict, leftOut: ReadonlySet<string>, depth = 0): string {
  return dict
    .keys()
    .filter((key) => !leftOut.has(key.asString()))
    .map((key) => `${key.asString()} ${inWords(dict.lookup(key), depth + 1)}`)
    .toSorted()
    .join("\n");
}

/** What a dictionary holds under a key; undefined if it has no such key. Throws for an entry that leads nowhere. */
export function presentIn(dict: PDFDict, key: string): PDFObject | undefined {
  const name = PDFName.of(key);
  if (!dict.has(name)) return undefined;
  const object = dict.lookup(name);
  if (object === undefined) throw new Error("an entry leads nowhere");
  return object;
}

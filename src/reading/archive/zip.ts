import { crc32, inflateRawSync } from "node:zlib";
import { contentOf } from "../content.ts";
import type { FileFacts, Left, Part } from "../facts.ts";
import { listInWorkbook } from "../list/workbook/workbook.ts";
import { documentWords, wordParts } from "./document-words.ts";
import { entriesOf, type ZipEntry } from "./zip-entries.ts";

/** How much is taken out of one archive at most. */
const most = { files: 200, bytes: 60_000_000 };

/** Bytes of one part of a document that are read for words. */
const mostWords = 5_000_000;

/** What a zip file is: an archive with its files, a document of an office program, or locked. */
export function openZip(bytes: Uint8Array): FileFacts {
  const entries = entriesOf(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength));
  if (entries === undefined) return { kind: "other" };
  if (entries.some(({ name }) => officeNames.test(name))) return openDocument(entries);
  const wanted = entries.filter(({ name }) => !name.endsWith("/"));
  if (wanted.length > 0 && wanted.every(({ locked }) => locked)) return { kind: "locked-archive" };
  const files: Part[] = [];
  const left: Left[] = [];
  let room = most.bytes;
  for (const entry of wanted.slice(0, most.files)) {
    const taken = takeOut(entry, room);
    // A file that does not unpack has cost its share all the same.
    if (taken === "damaged" || typeof taken === "object") room -= entry.size;
    if (typeof taken === "string") left.push({ name: entry.name, kind: taken });
    else files.push({ name: entry.name, bytes: taken, looks: contentOf(taken) === "resource-fork" });
  }
  const more = wanted.length - most.files;
  if (more > 0) left.push({ name: `${more} more files`, kind: "too-large" });
  return { kind: "archive", files, left };
}

/** ECMA-376-2 §10.1.2, OpenDocument 1.2 part 3 §3.3, and the documents of Apple's office programs. */
const officeNames = /^(?:\[Content_Types\]\.xml|mimetype|Index\.zip|Index\/Document\.iwa)$/i;

/**
 * An office document. Of a word processor's the words are read, and a station list of ours is read as one. Of any
 * other, such as another table, nothing is.
 */
function openDocument(entries: readonly ZipEntry[]): FileFacts {
  const list = listInWorkbook({
    names: entries.map(({ name }) => name),
    textOf: (name) => {
      const entry = entries.find((one) => one.name === name);
      const bytes = entry === undefined ? "damaged" : takeOut(entry, mostWords);
      return typeof bytes === "object" ? bytes.toString("utf8") : undefined;
    },
  });
  if (list !== undefined) return list;
  const texts = entries.filter(({ name }) => wordParts.test(name));
  const isOther = texts.some(({ name }) => name === "content.xml") && !isOpenText(entries);
  if (texts.length === 0 || isOther || texts.some(({ locked }) => locked)) return { kind: "office" };
  const parts = texts.map((entry) => takeOut(entry, mostWords));
  // Nobody knows what an unreadable part says.
  return parts.every((part) => typeof part === "object")
    ? { kind: "text", words: documentWords(parts.map((part) => part.toString("utf8"))) }
    : { kind: "office" };
}

/** OpenDocument 1.2 part 3 §3.3: the first entry says what the document is. */
function isOpenText(entries: readonly ZipEntry[]): boolean {
  const type = entries.find(({ name }) => name === "mimetype");
  const said = type === undefined ? "damaged" : takeOut(type, 100);
  return typeof said === "object" && /opendocument\.text/.test(said.toString("latin1"));
}

/** The bytes of an entry, or why they cannot be had. */
function takeOut({ locked, method, crc, size, packed }: ZipEntry, room: number): Buffer | Left["kind"] {
  if (locked) return "archive-locked";
  if (size > room) return "too-large";
  try {
    // An entry that unpacks to more than it says is as bad as one that ends too early.
    const bytes = method === 0 ? packed : inflateRawSync(packed, { maxOutputLength: Math.max(1, size) });
    return bytes.length === size && crc32(bytes) === crc ? bytes : "damaged";
  } catch {
    return "damaged";
  }
}

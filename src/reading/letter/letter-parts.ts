import { createHash } from "node:crypto";
import { type ParsedMail, simpleParser } from "mailparser";
import { contentOf } from "../content.ts";
import type { Part } from "../facts.ts";
import { isSmallPicture } from "../picture.ts";
import { type Leaf, leavesOf } from "./mime.ts";
import { uuencodedIn } from "./uuencode.ts";

/** Forwarded letters are opened to this depth. A deeper one stays a file for a person to see. */
const deepest = 10;

/** What a letter holds, with what the letters forwarded in it hold. */
export interface Contents {
  readonly parts: readonly Part[];
  /** Every text that a mail program would show, plain and HTML. */
  readonly texts: readonly string[];
  /** The letters forwarded in it. */
  readonly forwarded: readonly Forwarded[];
}

/** A forwarded letter as far as it is words. */
export interface Forwarded {
  readonly subject: string;
  readonly text: string;
  readonly html: string | false;
}

export function parseMail(bytes: Uint8Array): Promise<ParsedMail> {
  return simpleParser(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength), {
    ignoreEmbedded: true, // forwarded letters are taken whole and opened here
    skipTextToHtml: true,
    keepCidLinks: true,
    checksumAlgo: false,
  });
}

/**
 * The files of a letter, with those of forwarded letters in their place. Two parsers take it apart, since each reads
 * on where the other gives up. What either finds is kept. Rejects as `parseMail` does.
 */
export async function contentsOf(bytes: Uint8Array, mail?: ParsedMail, depth = 0): Promise<Contents> {
  const { attachments } = mail ?? (await parseMail(bytes));
  const leaves = leavesOf(bytes);
  const seen = new Set(leaves.map((leaf) => fingerprint(leaf.bytes)));
  const texts = leaves.filter(isText).map((leaf) => Buffer.from(leaf.bytes).toString("latin1"));
  const shown = shownPictures(texts);
  const contents = await Promise.all(leaves.map((leaf) => contentsOfLeaf(leaf, shown, depth)));
  const others = attachments.filter(({ content }) => !seen.has(fingerprint(content)));
  return {
    parts: [
      ...contents.flatMap(({ parts }) => parts),
      ...others.map(({ filename = "", content }) => partOf(filename, content)),
    ],
    texts: contents.flatMap(({ texts }) => texts),
    forwarded: contents.flatMap(({ forwarded }) => forwarded),
  };
}

async function contentsOfLeaf(leaf: Leaf, shown: ReadonlySet<string>, depth: number): Promise<Contents> {
  const { bytes, type } = leaf;
  const name = leaf.name ?? (type === "text/calendar" ? "invitation.ics" : "");
  if (isText(leaf)) {
    const text = Buffer.from(bytes).toString("latin1");
    return {
      parts: uuencodedIn(text).map((file) => partOf(file.name, file.bytes)),
      texts: [text],
      forwarded: [],
    };
  }
  if (leaf.name === undefined && bytes.length === 0) return { parts: [], texts: [], forwarded: [] };
  const part = partOf(name, bytes, belongsToLooks(leaf, shown));
  if (!isLetter(leaf) || depth >= deepest) return { parts: [part], texts: [], forwarded: [] };
  try {
    const mail = await parseMail(bytes);
    const contents = await contentsOf(bytes, mail, depth + 1);
    const { subject = "", text = "", html = false, date: dated } = mail;
    const parts = contents.parts.map((one) => (dated === undefined ? one : { dated, ...one }));
    const inside = { ...contents, parts, forwarded: [{ subject, text, html }, ...contents.forwarded] };
    // If a forwarded letter holds nothing but words, it is itself the attached file.
    return inside.parts.every(({ looks }) => looks) ? { ...inside, parts: [part] } : inside;
  } catch {
    return { parts: [part], texts: [], forwarded: [] }; // what cannot be opened is a file like any other
  }
}

/** RFC 2046 §5.2.1, RFC 6532 §3.7. Other kinds of message have types that begin alike. */
function isLetter({ type, bytes }: Leaf): boolean {
  if (type.startsWith("message/")) return type === "message/rfc822" || type === "message/global";
  return contentOf(bytes) === "letter";
}

function isText({ type, name, attached, bytes }: Leaf): boolean {
  // A file sent as text without a name is still a file. A quoted older letter begins with its header.
  const reads = [undefined, "letter", "rtf", "uuencoded"].includes(contentOf(bytes));
  return reads && name === undefined && !attached && (shownTexts.has(type) || machineTexts.has(type));
}

/**
 * Texts that a mail program shows in the letter. What else comes as a text, such as an invitation to a meeting beside
 * the words of the letter, is a file: who wrote it may have said something there alone.
 */
const shownTexts = new Set(["text/plain", "text/html"]);

/** Types of texts in which mail servers and programs report. RFC 3464, 8098, 5965 */
const machineTexts = new Set([
  "message/delivery-status",
  "message/disposition-notification",
  "message/feedback-report",
  "text/rfc822-headers",
]);

/** The pictures that texts show, by their Content-ID. RFC 2392 */
function shownPictures(texts: readonly string[]): ReadonlySet<string> {
  const ids = texts.flatMap((text) => [...text.matchAll(/\bcid:([^"'\s<>()]{1,500})/gi)]);
  return new Set(ids.map(([, id = ""]) => decoded(id)));
}

function decoded(id: string): string {
  try {
    return decodeURIComponent(id);
  } catch {
    return id;
  }
}

/** Whether the mail program put a part there, so that it is no file of the sender's. */
function belongsToLooks(leaf: Leaf, shown: ReadonlySet<string>): boolean {
  const { type, name, attached, cid, within, bytes } = leaf;
  const content = contentOf(bytes);
  if (content === "resource-fork") return true;
  // RFC 8551 §3.5.3, RFC 3156 §5
  if (within === "signed" && /^application\/(?:x-)?(?:pkcs7|pgp)-signature$/.test(type))
    return content === undefined || content === "signed";
  const placed = cid !== undefined && (shown.has(cid) || !attached);
  const nameless = name === undefined && !attached;
  return (placed || nameless) && isSmallPicture(bytes);
}

function partOf(name: string, bytes: Uint8Array, looks = false): Part {
  return { name, bytes, looks };
}

/** Tells contents apart. Parsers leave different line ends behind the last line of a text. */
function fingerprint(bytes: Uint8Array): string {
  let end = bytes.length;
  while (end > 0 && (bytes[end - 1] === 0x0a || bytes[end - 1] === 0x0d)) end--;
  return createHash("sha256").update(bytes.subarray(0, end)).digest("base64");
}

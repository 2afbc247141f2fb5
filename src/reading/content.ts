import { isPdf } from "./pdf/is-pdf.ts";

/** What bytes are, told by what they hold. Names and types that letters give prove nothing. */
export type Content =
  | "pdf"
  | "picture"
  /** Sound, or moving pictures. */
  | "recording"
  | "zip"
  /** The containers of older office programs, and text with formatting. */
  | "ole"
  | "rtf"
  /** Outlook's winmail.dat. MS-OXTNEF */
  | "tnef"
  /** PKCS #7 signed data. RFC 5652 */
  | "signed"
  /** A file encoded as text. */
  | "uuencoded"
  /** What a Mac keeps beside files and folders: icon, colours, where they came from. RFC 1740, and .DS_Store */
  | "resource-fork"
  /** An e-mail, or a part of one with its header. */
  | "letter";

/** A kind of content, and what stands where in its first bytes. */
type Magic = readonly [Content, ...(readonly [at: number, text: string])[]];

/** The object id 1.2.840.113549.1.7.2. It begins the sequence, whatever form the length of that has. */
const signedData = "\x06\x09\x2a\x86\x48\x86\xf7\x0d\x01\x07\x02";
/** ISO/IEC 14496-12 §4.3: a file names its brand first. ISO/IEC 23008-12 and AVIF have these brands. */
const brands = ["heic", "heix", "heim", "heis", "hevc", "hevx", "mif1", "msf1", "avif", "avis"];

const magic: readonly Magic[] = [
  ["zip", [0, "PK\x03\x04"]],
  ["zip", [0, "PK\x05\x06"]],
  ["zip", [0, "PK\x07\x08"]],
  ["ole", [0, "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"]],
  ["rtf", [0, "{\\rtf"]],
  ["tnef", [0, "\x78\x9f\x3e\x22"]],
  ["resource-fork", [0, "\0\x05\x16\x07"]],
  ["resource-fork", [0, "\0\0\0\x01Bud1"]],
  ["picture", [0, "\xff\xd8\xff"]],
  ["picture", [0, "\x89PNG\r\n\x1a\n"]],
  ["picture", [0, "GIF87a"]],
  ["picture", [0, "GIF89a"]],
  ["picture", [0, "RIFF"], [8, "WEBP"]],
  ["picture", [0, "II*\0"]],
  ["picture", [0, "MM\0*"]],
  ["picture", [0, "BM"], [6, "\0\0\0\0"]],
  ...brands.map((brand): Magic => ["picture", [4, `ftyp${brand}`]]),
  // WHATWG MIME Sniffing §6.2, its patterns for audio and video. Whatever else names a brand is a film or its sound.
  ["recording", [4, "ftyp"]],
  ["recording", [0, "RIFF"], [8, "WAVE"]],
  ["recording", [0, "RIFF"], [8, "AVI "]],
  ["recording", [0, "FORM"], [8, "AIFF"]],
  ["recording", [0, "OggS\0"]],
  ...["\x02", "\x03", "\x04"].map((version): Magic => ["recording", [0, `ID3${version}`]]),
  ["recording", [0, "\x1a\x45\xdf\xa3"]],
  // MP3 without a tag: ISO/IEC 11172-3 §2.4.1.3, layer III. AMR: RFC 4867 §5.1. FLAC: RFC 9639 §6.
  ["recording", [0, "\xff\xfb"]],
  ["recording", [0, "\xff\xf3"]],
  ["recording", [0, "#!AMR"]],
  ["recording", [0, "fLaC"]],
  // Of what phones and computers write, from memory: Core Audio, and Windows Media.
  ["recording", [0, "caff\0\x01"]],
  ["recording", [0, "\x30\x26\xb2\x75\x8e\x66\xcf\x11"]],
  ...[2, 3, 4, 5, 6].map((at): Magic => ["signed", [0, "\x30"], [at, signedData]]),
];

/** What a file is; undefined when it is none of what Burin knows. */
export function contentOf(bytes: Uint8Array): Content | undefined {
  const head = Buffer.from(bytes.buffer, bytes.byteOffset, Math.min(bytes.length, 4096)).toString("latin1");
  const [content] =
    magic.find(([, ...pieces]) => pieces.every(([at, text]) => head.startsWith(text, at))) ?? [];
  if (content !== undefined) return content;
  if (/^\s*-----BEGIN (?:PKCS7|CMS)-----/.test(head)) return "signed";
  if (/^begin [0-7]{3,4} \S.*\r?\n[!-_]/.test(head)) return "uuencoded";
  // PDF is tried last, since archives and letters may hold a whole PDF within their first bytes.
  if (isLetter(head)) return "letter";
  return isPdf(bytes) ? "pdf" : undefined;
}

const fields = "from|to|date|subject|message-id|received|return-path|delivered-to|mime-version|content-type";
const known = new RegExp(`^(?:${fields})[ \\t]*:`, "i");

/** Whether a text begins with the header of a letter, or with that of a part of one. RFC 5322 §3.6 */
function isLetter(head: string): boolean {
  const [header = "", ...body] = head.replace(/^>?From .*\r?\n/, "").split(/\r?\n\r?\n/, 2);
  const lines = header.split(/\r?\n(?![ \t])/);
  if (body.length === 0) lines.pop(); // the header goes on after what was looked at
  const named = lines.filter((line) => known.test(line));
  const isPart = /^content-type[ \t]*:[ \t]*[a-z]+\/[a-z]/i.test(lines[0] ?? "");
  return (named.length > 2 || isPart) && lines.every((line) => /^[!-9;-~]+[ \t]*:/.test(line));
}

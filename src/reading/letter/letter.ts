import type { ParsedMail } from "mailparser";
import type { Letter } from "../../trade/letter.ts";
import { contentOf } from "../content.ts";
import type { Part } from "../facts.ts";
import { headerEnd } from "./header-lines.ts";
import { type PlainWords, plainWords } from "./html-words.ts";
import { type Header, headerOf } from "./letter-header.ts";
import { contentsOf, type Forwarded, parseMail } from "./letter-parts.ts";
import { fileLinksIn } from "./links.ts";
import { leavesOf } from "./mime.ts";
import { signedContent } from "./signed.ts";

/** A letter with its files as they came. */
export type OpenedLetter = Omit<Letter, "attachments"> & {
  /** The files of the letter and of the letters forwarded in it, in order. */
  readonly parts: readonly Part[];
  /** Links in the texts that seem to lead to files. */
  readonly links: readonly string[];
};

/**
 * Bytes of an e-mail → the letter. Rejects where a parser gives up: headers over 1 MB, or more than a thousand parts.
 * May take long, so it is called where that does no harm.
 */
export async function readLetter(bytes: Uint8Array): Promise<OpenedLetter> {
  const letter = withoutSignature(bytes);
  const mail = await parseMail(letter);
  const { parts, texts, forwarded } = await contentsOf(letter, mail);
  return {
    ...headerOf(mail),
    ...(await plainWordsOf(mail, forwarded)),
    parts,
    links: [...new Set(texts.flatMap(fileLinksIn))],
  };
}

/**
 * What a letter and the letters forwarded in it say. Each forwarded one stands under its subject, as mail programs
 * quote it.
 */
async function plainWordsOf(mail: ParsedMail, forwarded: readonly Forwarded[]): Promise<PlainWords> {
  const words = await plainWords(mail);
  const inside = await Promise.all(forwarded.map(plainWords));
  const others = inside.flatMap(({ text, otherTexts = [] }, i) =>
    [text, ...otherTexts].map((said) => `From:\nSubject: ${forwarded[i]?.subject ?? ""}\n\n${said}`),
  );
  const otherTexts = [...(words.otherTexts ?? []), ...others];
  return {
    text: words.text,
    ...([words, ...inside].some(({ textUnsure }) => textUnsure) ? { textUnsure: true } : {}),
    ...(otherTexts.length === 0 ? {} : { otherTexts }),
  };
}

/** Bytes that a header may have if it is read by itself. */
const mostHeader = 64 * 1024;

/** The header of a letter that cannot be opened. Quick and safe, whatever the bytes. */
export async function readHeader(bytes: Uint8Array): Promise<Header> {
  const head = bytes.subarray(0, mostHeader);
  const end = /\r?\n\r?\n/.exec(Buffer.from(head).toString("latin1"))?.index;
  // A header that does not end within these bytes may hold a second sender further on.
  return headerOf(await parseMail(end === undefined ? new Uint8Array() : head.subarray(0, end)));
}

/**
 * A letter that is wrapped in its signature → the letter itself. RFC 8551 §3.5.2: a part with its own Content-Type
 * takes the place of the signed data. The rest of the header stays. It proves who sent the letter, and whoever signs
 * could write another one inside.
 */
function withoutSignature(bytes: Uint8Array): Uint8Array {
  const raw = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const [leaf, ...others] = leavesOf(raw);
  if (leaf === undefined || others.length > 0 || contentOf(leaf.bytes) !== "signed") return bytes;
  const signed = signedContent(leaf.bytes);
  if (signed === undefined || contentOf(signed) !== "letter") return bytes;
  const content = Buffer.from(signed.buffer, signed.byteOffset, signed.byteLength);
  const end = headerEnd(content);
  const isOfBody = (field: string): boolean => /^(?:content-|mime-version)/i.test(field);
  const header = [
    ...fieldsIn(raw.subarray(0, headerEnd(raw))).filter((field) => !isOfBody(field)),
    ...fieldsIn(content.subarray(0, end)).filter(isOfBody),
  ];
  return Buffer.concat([Buffer.from(header.join("\r\n"), "latin1"), content.subarray(end)]);
}

function fieldsIn(header: Buffer): string[] {
  return header.toString("latin1").split(/\r?\n(?![ \t])/);
}

import { type Attachment as MailPart, type ParsedMail, simpleParser } from "mailparser";
import type { Attachment } from "../trade/attachment.ts";
import type { Letter } from "../trade/letter.ts";
import { safeFileName, tellApart } from "./file-name.ts";
import { isPdf } from "./pdf.ts";

/** How deep forwarded letters are opened; what lies deeper stays a file for a person to see. */
const deepest = 3;

/**
 * Bytes of an e-mail → the letter, with the files of the letters forwarded in it. Its files are numbered
 * from 1: `<id>/<n>`. Rejects only where the parser gives up: headers over 1 MB, more than 1000 parts.
 */
export async function readLetter(bytes: Uint8Array, id: string): Promise<Letter> {
  const mail = await parse(bytes);
  const header = headerOf(mail);
  const files = (await unpack(mail, 1)).map((part) => ({ file: nameOf(part), bytes: part.content }));
  const date = new Date(header("date")[0] ?? "");
  const from = senderOf(mail, header("from"));
  const [messageId] = idsIn(header("message-id"));
  const [inReplyTo] = idsIn(header("in-reply-to"));
  return {
    ...from,
    subject: oneLine(mail.subject ?? ""),
    // mailparser puts the present time where a date makes no sense, so the line is read again.
    ...(Number.isNaN(date.getTime()) ? {} : { date }),
    ...(messageId === undefined ? {} : { messageId }),
    ...(inReplyTo === undefined ? {} : { inReplyTo }),
    references: idsIn(header("references")),
    text: mail.text ?? "",
    attachments: tellApart(files).map((file, i): Attachment => ({ id: `${id}/${i + 1}`, ...file })),
  };
}

function parse(bytes: Uint8Array): Promise<ParsedMail> {
  return simpleParser(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength), {
    ignoreEmbedded: true, // forwarded letters are taken whole and opened here
    skipTextToHtml: true,
    keepCidLinks: true,
    checksumAlgo: false,
  });
}

/** Every file of a letter, forwarded letters replaced by theirs. */
async function unpack(mail: ParsedMail, depth: number): Promise<MailPart[]> {
  const files = await Promise.all(mail.attachments.map((part) => unpackPart(part, depth)));
  return files.flat();
}

async function unpackPart(part: MailPart, depth: number): Promise<MailPart[]> {
  // By name as well: mailparser calls an octet-stream after the ending of its file name.
  if (part.contentType !== "message/rfc822" || depth > deepest) return [part];
  try {
    return await unpack(await parse(part.content), depth + 1);
  } catch {
    return [part]; // a forwarded letter that cannot be opened is a file like any other
  }
}

function nameOf({ filename = "", content }: MailPart): string {
  return safeFileName(filename) ?? (isPdf(content) ? "unnamed.pdf" : "unnamed");
}

/** Reads the lines of one header, unfolded and without its name. RFC 5322 §2.2.3 */
function headerOf(mail: ParsedMail): (name: string) => string[] {
  return (name) =>
    mail.headerLines
      .filter(({ key }) => key === name)
      .map(({ line }) =>
        line
          .slice(line.indexOf(":") + 1)
          .replace(/\r?\n/g, " ")
          .trim(),
      );
}

// RFC 5321 §4.1.2 (Dot-string, Domain) with the lengths of §4.5.3.1; quoted local parts and address
// literals are refused, since nobody orders from them.
const atom = "[a-z0-9!#$%&'*+/=?^_`{|}~-]+";
const label = "[a-z0-9](?:[a-z0-9-]{0,61}[a-z0-9])?";
const strictAddress = new RegExp(`^(?=.{1,64}@.{1,255}$)${atom}(?:\\.${atom})*@${label}(?:\\.${label})+$`);

/** The sender, where there is exactly one From with exactly one address in it. */
function senderOf(mail: ParsedMail, lines: readonly string[]): Pick<Letter, "from" | "fromName"> {
  const [line = "", ...moreLines] = lines;
  const [sender, ...moreSenders] = mail.from?.value ?? [];
  const address = sender?.address?.toLowerCase() ?? "";
  const one = moreLines.length === 0 && moreSenders.length === 0 && strictAddress.test(address);
  // RFC 2047 §5: an address is never an encoded word, so it stands in the line as it is.
  if (!one || !line.toLowerCase().includes(address)) return {};
  const name = oneLine(sender?.name ?? "");
  return { from: address, ...(name === "" ? {} : { fromName: name }) };
}

/** Ids in angle brackets, of printable characters only. RFC 5322 §3.6.4 */
function idsIn(lines: readonly string[]): string[] {
  return lines.flatMap((line) => line.match(/<[!-;=?-~]{1,250}>/g) ?? []);
}

function oneLine(text: string): string {
  return text.replace(/[\p{Cc}\p{Zl}\p{Zp}\s]+/gu, " ").trim();
}

import type { AddressObject, ParsedMail } from "mailparser";
import type { Letter } from "../../trade/letter.ts";

/** What the header of a letter says. */
export type Header = Omit<Letter, "attachments" | "text" | "textUnsure" | "otherTexts">;

/** The header of a letter, as far as it makes sense. */
export function headerOf(mail: ParsedMail): Header {
  const lines = linesOf(mail);
  const date = new Date(lines("date")[0] ?? "");
  const [messageId] = idsIn(lines("message-id"));
  const [inReplyTo] = idsIn(lines("in-reply-to"));
  return {
    ...senderOf(mail, lines("from")),
    ...replyTo(mail, lines("reply-to")),
    subject: oneLine(mail.subject ?? ""),
    // mailparser takes the present time for a date that makes no sense, so the line is read again.
    ...(Number.isNaN(date.getTime()) ? {} : { date }),
    ...(messageId === undefined ? {} : { messageId }),
    ...(inReplyTo === undefined ? {} : { inReplyTo }),
    references: idsIn(lines("references")),
  };
}

/** Reads the lines of one header field, unfolded and without its name. RFC 5322 §2.2.3 */
function linesOf(mail: ParsedMail): (name: string) => string[] {
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

// RFC 5321 §4.1.2 (Dot-string, Domain) with the lengths of §4.5.3.1. Quoted local parts and address literals are
// refused, since nobody orders from them.
const atom = "[a-z0-9!#$%&'*+/=?^_`{|}~-]+";
const label = "[a-z0-9](?:[a-z0-9-]{0,61}[a-z0-9])?";
const strictAddress = new RegExp(`^(?=.{1,64}@.{1,255}$)${atom}(?:\\.${atom})*@${label}(?:\\.${label})+$`);

/** The sender. There must be exactly one From with exactly one address. */
function senderOf(mail: ParsedMail, lines: readonly string[]): Pick<Header, "from" | "fromName"> {
  const from = oneAddress(mail.from, lines);
  if (from === undefined) return {};
  const name = oneLine(mail.from?.value[0]?.name ?? "");
  return { from, ...(name === "" ? {} : { fromName: name }) };
}

function replyTo(mail: ParsedMail, lines: readonly string[]): Pick<Header, "replyTo"> {
  const address = oneAddress(mail.replyTo, lines);
  return address === undefined ? {} : { replyTo: address };
}

/** The address of a field. The field must stand once and have one address. */
function oneAddress(field: AddressObject | undefined, lines: readonly string[]): string | undefined {
  const [line = "", ...moreLines] = lines;
  const [one, ...more] = field?.value ?? [];
  const address = one?.address?.toLowerCase() ?? "";
  if (moreLines.length > 0 || more.length > 0 || !strictAddress.test(address)) return undefined;
  // RFC 2047 §5: an address is never an encoded word, so it stands in the line as it is.
  return line.toLowerCase().includes(address) ? address : undefined;
}

/** Ids in angle brackets, of printable characters only. RFC 5322 §3.6.4 */
function idsIn(lines: readonly string[]): string[] {
  return lines.flatMap((line) => line.match(/<[!-;=?-~]{1,250}>/g) ?? []);
}

function oneLine(text: string): string {
  return text.replace(/[\p{Cc}\p{Zl}\p{Zp}\s]+/gu, " ").trim();
}

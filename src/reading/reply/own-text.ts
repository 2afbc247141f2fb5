import { speaksAgainst } from "./doubt.ts";
import { isMarked, leadAt } from "./leads.ts";

/** The text of a reply, taken apart. Lines are trimmed. */
export interface ReplyText {
  /** What its sender wrote above the quotation. Blank lines stay, the signature does not. */
  readonly own: readonly string[];
  /** What is quoted, without marks. The sender may have hidden words in it. */
  readonly quoted: readonly string[];
  /** What has no usual place: lines among or below marked ones, and a signature that says something. */
  readonly aside: readonly string[];
}

/** Takes the text of a reply apart where it begins to quote. `subject` is that of the letter that it replies to. */
export function takeApart(text: string, subject: string): ReplyText {
  const lines = text.split(/\r\n|\r|\n/);
  let at = 0;
  while (at < lines.length && leadAt(lines, at, subject) === undefined) at += 1;
  const lead = leadAt(lines, at, subject) ?? { lines: 0, sure: true };
  const above = unsigned(lines.slice(0, at));
  const rest = filled(lines.slice(at + lead.lines));
  const marked = isMarked(rest[0] ?? "");
  // A quotation follows a lead.
  const sure = lead.sure && (rest.length > 0 || lead.lines === 0);
  const below = unsigned(marked ? rest.filter((line) => !isMarked(line)) : sure ? [] : rest);
  return {
    own: above.text.map((line) => line.trim()),
    quoted: marked ? unmarked(rest.filter(isMarked), subject) : sure ? trimmed(rest) : [],
    aside: trimmed([
      ...above.signature,
      ...(sure ? [] : lines.slice(at, at + lead.lines)),
      ...below.text,
      ...below.signature,
    ]),
  };
}

/** Marked lines without their marks, and without a lead that some programs mark as well. */
function unmarked(lines: readonly string[], subject: string): string[] {
  const bare = filled(lines.map((line) => line.replace(/^\s*>/, "")));
  const lead = leadAt(bare, 0, subject);
  return trimmed(lead?.sure === true ? bare.slice(lead.lines) : bare);
}

/**
 * Lines up to the signature, which RFC 3676 §4.3 puts under "-- ". The signature comes beside them if it says
 * something.
 */
function unsigned(lines: readonly string[]): { text: readonly string[]; signature: readonly string[] } {
  const end = lines.indexOf("-- ");
  const signature = end < 0 ? [] : lines.slice(end + 1);
  const says = signature.some((line) => speaksAgainst(line) || /\bkeep/i.test(line));
  return { text: end < 0 ? lines : lines.slice(0, end), signature: says ? signature : [] };
}

function filled(lines: readonly string[]): string[] {
  return lines.filter((line) => line.trim() !== "");
}

function trimmed(lines: readonly string[]): string[] {
  return filled(lines).map((line) => line.trim());
}

import type { ParsedMail } from "mailparser";
import type { Letter } from "../../trade/letter.ts";
import type { FileWords } from "../facts.ts";
import { takeApart } from "../reply/own-text.ts";
import { hasMoreWords, withoutLetterLinks } from "../reply/word-bag.ts";
import { parseMail } from "./letter-parts.ts";

/** Longer pages are not read. In characters. */
const longestPage = 1_000_000;

/** What a letter says in words. */
export type PlainWords = Pick<Letter, "text" | "textUnsure" | "otherTexts">;

/**
 * The text of a letter as plain words. They are empty if they alone would mislead: the letter's page of HTML strikes
 * words out, hides some, or says more than the plain text. RFC 2046 §5.1.4 leaves it to the reader's program which of
 * the two a person sees. If the page only says more, both texts are given beside it.
 */
export async function plainWords(mail: Pick<ParsedMail, "text" | "html">): Promise<PlainWords> {
  const { html = false } = mail;
  const text = withoutLetterLinks(mail.text ?? "");
  const plain = { text };
  if (html === false) return plain;
  const page = pageOf(html);
  if (page === undefined) return { text: "", textUnsure: true };
  const shown = await shownText(page);
  // Some programs leave the plain text empty. Then the page is the letter.
  if (text.trim() === "") return { text: shown };
  // Quoted text is not compared: programs make different texts of a table, and our answers have tables.
  if (!hasMoreWords(takeApart(shown, "").own.join("\n"), text)) return plain;
  return { text: "", otherTexts: [text, shown] };
}

/** The words of a page of HTML that is a file of its own. */
export async function pageWords(html: string): Promise<FileWords> {
  const page = pageOf(html);
  return page === undefined ? { text: "", unsure: true } : { text: await shownText(page) };
}

async function shownText(page: string): Promise<string> {
  const { text = "" } = await parseMail(Buffer.from(`Content-Type: text/html; charset=utf-8\r\n\r\n${page}`));
  return withoutLetterLinks(text);
}

/** What is seen of a page. Undefined if it cannot be known. */
function pageOf(html: string): string | undefined {
  // A style sheet may strike out by class. Hiding by class is not looked for, since the style sheets of all mail
  // programs do it.
  if (html.length > longestPage || /line-through/i.test(html)) return undefined;
  const page = bodyOf(html);
  return struck.test(page) || hidden.test(page) ? undefined : page;
}

const struck = /<(?:s|strike|del)(?:\s[^<>]*)?>/i;
const hidden =
  /display\s*:\s*none|visibility\s*:\s*hidden|mso-hide\s*:\s*all|font-size\s*:\s*0(?![\d.]*[1-9])|<[a-z]\w*\s(?:[^<>]*\s)?hidden[\s=/>]/i;

/** A page without what nobody reads. Outlook on the web marks its own style sheet as hidden, which hides no words. */
function bodyOf(html: string): string {
  return html
    .split("-->")
    .map((piece) => piece.split("<!--", 1)[0])
    .join("")
    .replace(/<(style|script|title)\b[^<>]*>[^<]*<\/\1>|<img\b[^<>]*>/gi, " ");
}

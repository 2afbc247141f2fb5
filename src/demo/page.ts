import { basename } from "node:path";
import { html } from "hono/html";
import { type Markup, momentIn } from "../desk/page.ts";
import { lettersTable } from "../desk/pages/letters.ts";
import { style } from "../desk/style.ts";
import type { LetterRecord } from "../trade/record.ts";

/** Enclosures of one answer that the page leads to. */
const mostLinks = 4;

/** Files of an answer, as links from the page. */
export interface AnswerFiles {
  readonly answerFile?: string;
  readonly enclosures: readonly string[];
}

interface Row extends AnswerFiles {
  readonly letter: LetterRecord;
  readonly letterFile: string;
}

/** The desk's page of letters as a file that leads to the demonstration's letters and answers. */
export async function demoPage(maker: string, letters: readonly Row[], timeZone: string): Promise<string> {
  const table = lettersTable(
    letters.map(({ letter, letterFile, answerFile, enclosures }) => ({
      letter,
      received: momentIn(letter.receivedAt, timeZone),
      path: hrefOf(letterFile),
      ...(answerFile === undefined ? {} : { answerPath: hrefOf(answerFile) }),
      orders: html`${letter.orders.join(", ")}`,
      enclosed: enclosedIn(enclosures),
    })),
  );
  const page = await html`<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Letters and answers</title>
<style>${style}</style>
<main><h1>${maker}: letters and answers</h1>
${table}</main>
</html>
`;
  return page.toString();
}

function enclosedIn(files: readonly string[]): Markup {
  const more = files.length - mostLinks;
  return html`${files.slice(0, mostLinks).map((file) => html`<a href="${hrefOf(file)}">${basename(file, ".pdf")}</a><br>`)}${more > 0 ? `and ${more} more` : ""}`;
}

function hrefOf(file: string): string {
  return file.split("/").map(encodeURIComponent).join("/");
}

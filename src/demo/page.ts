import { basename } from "node:path";
import { html } from "hono/html";
import type { HtmlEscapedString as HtmlEscaped } from "hono/utils/html";
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

/** A page that lists the demonstration's letters and leads to their answers. */
export function demoPage(maker: string, letters: readonly Row[]): string {
  const page = html`<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Letters and answers</title>
<style>
body { font: 16px/1.45 system-ui, sans-serif; color: #202124; margin: 2rem auto; max-width: 80rem; padding: 0 1rem }
table { border-collapse: collapse; width: 100% }
th, td { text-align: left; vertical-align: top; padding: .4rem .8rem .4rem 0; border-bottom: 1px solid #ddd8cc }
td[class] a { color: inherit }
td a { display: inline-block; padding: .15rem 0 }
.fail { color: #9e2a1d } .pass { color: #1f6b3a } .confirm { color: #7a5200 } .waiting { color: #1d5480 } .person { color: #5b3a86 }
/* On a phone every letter is a block of its own, and says what stands where. */
@media (max-width: 45rem) {
  body { margin: 1rem auto }
  h1 { font-size: 1.4rem }
  table, tbody, tr, td { display: block }
  tr:first-child { display: none }
  tr { border-bottom: 1px solid #ddd8cc; padding: .7rem 0 }
  td { border: 0; padding: .1rem 0; overflow-wrap: anywhere }
  td:empty { display: none }
  td:first-child { font-weight: 600 }
  td[title]::before { content: attr(title) ": "; color: #5f6368 }
}
</style>
<h1>${maker}: letters and answers</h1>
<table>
<tr><th>Letter<th>From<th>Order<th>Verdict<th>Problems<th>Enclosed</tr>
${letters.map(rowOf)}
</table>
</html>
`;
  return must(page).toString();
}

function rowOf({ letter, letterFile, answerFile, enclosures }: Row): HtmlEscaped {
  const verdict = letter.verdict ?? "person";
  const more = enclosures.length - mostLinks;
  return must(html`<tr>
<td>${link(letterFile, letter.subject || "(no subject)")}</td>
<td title="From">${letter.from}</td>
<td title="Order">${letter.orders.join(", ")}</td>
<td title="Verdict" class="${verdict}">${answerFile === undefined ? verdict : link(answerFile, verdict)}</td>
<td title="Problems">${[...new Set(letter.problems.map(({ check }) => check))].join(", ")}</td>
<td title="Enclosed">${enclosures.slice(0, mostLinks).map((file) => html`${link(file, basename(file, ".pdf"))}<br>`)}${more > 0 ? `and ${more} more` : ""}</td>
</tr>
`);
}

function link(file: string, words: string): HtmlEscaped {
  const href = file.split("/").map(encodeURIComponent).join("/");
  return must(html`<a href="${href}">${words}</a>`);
}

function must(made: HtmlEscaped | Promise<HtmlEscaped>): HtmlEscaped {
  if (made instanceof Promise) throw new Error("the page has a part that comes later");
  return made;
}

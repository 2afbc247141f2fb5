import { basename } from "node:path";
import { html } from "hono/html";
import type { LetterRecord } from "../trade/record.ts";

/** Enclosures of one answer that the page leads to. */
const mostLinks = 4;

/** Files of an answer, as links from the page. */
export interface AnswerFiles {
  readonly answerFile?: string;
  readonly enclosures: readonly string[];
}

/** A page that lists the demonstration's letters and leads to their answers. */
export function demoPage(
  maker: string,
  letters: readonly (AnswerFiles & { readonly letter: LetterRecord; readonly letterFile: string })[],
): string {
  const page = html`<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Letters and answers</title>
<style>
body { font: 16px/1.45 system-ui, sans-serif; color: #202124; margin: 2rem auto; max-width: 80rem; padding: 0 1rem }
table { border-collapse: collapse; width: 100% }
th, td { text-align: left; vertical-align: top; padding: .4rem .8rem .4rem 0; border-bottom: 1px solid #ddd8cc }
.fail { color: #9e2a1d } .pass { color: #1f6b3a } .confirm { color: #7a5200 } .waiting { color: #1d5480 } .person { color: #5b3a86 }
</style>
<h1>${maker}: letters and answers</h1>
<table>
<tr><th>Letter<th>From<th>Order<th>Verdict<th>Problems<th>Enclosed</tr>
${letters.map(({ letter, letterFile, answerFile, enclosures }) => {
  const verdict = letter.verdict ?? "person";
  const shown =
    answerFile === undefined ? verdict : html`<a class="${verdict}" href="${answerFile}">${verdict}</a>`;
  return html`<tr>
<td><a href="${letterFile}">${letter.subject || "(no subject)"}</a>
<td>${letter.from}
<td>${letter.orders.join(", ")}
<td class="${verdict}">${shown}
<td>${[...new Set(letter.problems.map(({ check }) => check))].join(", ")}
<td>${enclosures.slice(0, mostLinks).map((file) => html`<a href="${file.split("/").map(encodeURIComponent).join("/")}">${basename(file, ".pdf")}</a><br>`)}${enclosures.length > mostLinks ? `and ${enclosures.length - mostLinks} more` : ""}
</tr>`;
})}
</table>
</html>
`;
  if (page instanceof Promise) throw new Error("the page has a part that comes later");
  return page.toString();
}

import { html } from "hono/html";
import type { LetterRecord } from "../trade/record.ts";

/** A page that lists the demonstration's letters and leads to their answers. */
export function demoPage(
  maker: string,
  letters: readonly {
    readonly letter: LetterRecord;
    readonly letterFile: string;
    readonly answerFile?: string;
  }[],
): string {
  const page = html`<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Letters and answers</title>
<style>
body { font: 16px/1.45 system-ui, sans-serif; color: #202124; margin: 2rem auto; max-width: 60rem; padding: 0 1rem }
table { border-collapse: collapse; width: 100% }
th, td { text-align: left; vertical-align: top; padding: .4rem .8rem .4rem 0; border-bottom: 1px solid #ddd8cc }
.fail { color: #9e2a1d } .pass { color: #1f6b3a } .confirm { color: #7a5200 } .waiting { color: #1d5480 } .person { color: #5b3a86 }
</style>
<h1>${maker}: letters and answers</h1>
<table>
<tr><th>Letter<th>From<th>Order<th>Verdict<th>Problems</tr>
${letters.map(({ letter, letterFile, answerFile }) => {
  const verdict = letter.verdict ?? "person";
  const shown =
    answerFile === undefined ? verdict : html`<a class="${verdict}" href="${answerFile}">${verdict}</a>`;
  return html`<tr>
<td><a href="${letterFile}">${letter.subject || "(no subject)"}</a>
<td>${letter.from}
<td>${letter.orders.join(", ")}
<td class="${verdict}">${shown}
<td>${[...new Set(letter.problems.map(({ check }) => check))].join(", ")}
</tr>`;
})}
</table>
</html>
`;
  if (page instanceof Promise) throw new Error("the page has a part that comes later");
  return page.toString();
}

import { html } from "hono/html";
import { composeAnswer, nothingEnclosed } from "../../answer/answer.ts";
import { enclose } from "../../intake/enclose.ts";
import { usualCaps } from "../../intake/open.ts";
import { type TriedFile, tryFiles } from "../../intake/try.ts";
import { type Ask, type Front, Refused } from "../front.ts";
import { type Markup, page, stamp } from "../page.ts";

/** What is taken at once. */
export const mostTried = { files: 40, bytes: 25_000_000 } as const;

/** Where sheets are tried before they are sent. Nothing of them is kept. */
export function tryPage(c: Ask, front: Front, result?: Markup): Response | Promise<Response> {
  const visitor = c.get("visitor");
  return page(
    c,
    front,
    { title: "Try sheets" },
    html`${result ?? ""}
<p>Order sheets (PDF), a station list (.xlsx or .csv), or a letter with them (.eml), are checked as if they had been sent. Nothing is kept, and nobody is answered.</p>
<form method="post" action="/try" enctype="multipart/form-data" class="drop">
${visitor === undefined ? "" : html`<input type="hidden" name="token" value="${visitor.token}">`}
<p><label for="files">Files: choose them, or drop them here</label><input id="files" type="file" name="files" multiple required></p>
<p><button class="main">Check them</button></p></form>
<p class="faint">At most ${mostTried.files} files, ${mostTried.bytes / 1_000_000} MB together.</p>`,
  );
}

/** Checks what was given, and shows the answer that its sender would get. */
export async function tried(c: Ask, front: Front, files: readonly TriedFile[]): Promise<Response> {
  if (files.length === 0) throw new Refused(400, "Choose a file first.");
  if (files.length > mostTried.files)
    throw new Refused(413, `At most ${mostTried.files} files are checked at once.`);
  const { desk } = front;
  const { report, attachments, pictures } = await tryFiles(desk, files, { ...usualCaps, files: 200 });
  const enclosed = await enclose(report, attachments, { ...desk, pictures });
  const { text } = composeAnswer(report, desk.catalogue, { ...nothingEnclosed, pictures: enclosed.pictures });
  const made = [...enclosed.marked, ...enclosed.missing.sheets, ...enclosed.filled, ...enclosed.proofs];
  return tryPage(
    c,
    front,
    html`<section aria-label="Result"><p>${stamp(report.verdict)}</p><pre>${text.trimEnd()}</pre>
${made.length === 0 ? "" : html`<h2>Sheets and proofs</h2><ul>${made.map(({ file, bytes }) => html`<li><a download="${file}" href="data:application/pdf;base64,${Buffer.from(bytes).toString("base64")}">${file}</a></li>`)}</ul>`}
${
  enclosed.pictures.length === 0
    ? ""
    : html`<h2>What was seen</h2>${enclosed.pictures.map(({ file, bytes }) => html`<p><img alt="What was seen on ${file}" src="data:image/png;base64,${Buffer.from(bytes).toString("base64")}"></p>`)}`
}</section>`,
  );
}

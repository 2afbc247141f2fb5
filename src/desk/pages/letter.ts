import { html } from "hono/html";
import { wordsOf } from "../../checks/run.ts";
import { againstLettingIn } from "../../intake/let-in.ts";
import { may } from "../../ports/accounts.ts";
import type { LetterRecord } from "../../trade/record.ts";
import { type Ask, type Front, Refused, visitorOf } from "../front.ts";
import { momentIn, orderPath, ownForm, page, stamp } from "../page.ts";
import { noteIn, notePart } from "./note.ts";
import { asideForm, letInForm } from "./people.ts";

/** What is left of an erased letter. */
function erasedPage(c: Ask, front: Front, record: LetterRecord): Response | Promise<Response> {
  const { letter, receivedAt, from = "", verdict, sheets, problems } = record;
  const checks = [...new Set(problems.map(({ check }) => check))];
  return page(
    c,
    front,
    { title: `Letter ${letter}` },
    html`<div class="row"><p>Letter ${letter}, ${momentIn(receivedAt, front.desk.timeZone)}, counted as ${from}</p>${stamp(verdict)}</div>
<p>What it said is erased. It had ${sheets} sheets.</p>
${checks.length === 0 ? "" : html`<h2>Problems</h2><ul>${checks.map((check) => html`<li><a href="/checks/${check}">${check}</a></li>`)}</ul>`}`,
  );
}

/** A letter as it came, its words alone, with what was answered and what happened to it. */
export async function letterPage(c: Ask, front: Front, letter: number, said?: string): Promise<Response> {
  const visitor = visitorOf(c);
  const { store, reader, timeZone } = front.desk;
  const record = await store.letters.read(letter).catch(() => {
    throw new Refused(404, `No letter ${letter} is in the record.`);
  });
  if (record.isErased === true) return erasedPage(c, front, record);
  const bytes = await store.letters.bytesOf(letter);
  const note = noteIn(bytes);
  const opened = note === undefined ? await reader.letter(bytes) : undefined;
  const answer = await store.answers.of(letter);
  const sent = answer === undefined ? undefined : await reader.letter(answer.bytes);
  const history = await store.letters.history(letter);
  return page(
    c,
    front,
    { title: record.subject || `Letter ${letter}`, said },
    html`<div class="row"><p>Letter ${letter}${record.from === undefined ? "" : ` from ${record.from}`}, ${momentIn(record.receivedAt, timeZone)}</p>${stamp(record.verdict)}</div>
<dl><dt>Stands at</dt><dd>${record.state}${record.why === undefined ? "" : `: ${record.why}`}</dd>
${record.orders.length === 0 ? "" : html`<dt>Orders</dt><dd>${record.orders.map((number) => html`<a href="${orderPath(number)}">${number}</a> `)}</dd>`}</dl>
${againstLettingIn(record) === undefined ? letInForm(letter, record.from ?? "", visitor) : ""}
${record.state === "received" || (note !== undefined && record.state !== "held") ? "" : asideForm(letter, visitor)}
${
  note !== undefined
    ? html`<h2>What one of us did</h2>${notePart(note)}`
    : html`<h2>As it came</h2>
<p class="faint">Its words alone: nothing in it is loaded or run.</p>
${opened?.ok === true ? html`<pre>${opened.value.text}</pre>${(opened.value.otherTexts ?? []).map((text) => html`<pre>${text}</pre>`)}` : html`<p>It could not be opened safely.</p>`}
<p><a href="/letters/${letter}/original">The letter as a file (.eml)</a></p>`
}
${
  record.attachments.length === 0
    ? ""
    : html`<h2>Files</h2><ul>${record.attachments.map(({ id, file, kind }) => html`<li><a href="/files/${id}">${file}</a> <span class="faint">${kind}</span></li>`)}</ul>`
}
${
  record.problems.length === 0
    ? ""
    : html`<h2>Problems</h2><ul>${[...new Set(record.problems.map((problem) => wordsOf(problem).says))].map((says) => html`<li>${says}</li>`)}</ul>`
}
<h2>Answer</h2>
${
  answer === undefined
    ? html`<p class="faint">None.</p>`
    : html`<p>To ${answer.recipient}${record.answer?.sentAt === undefined ? "" : `, ${momentIn(record.answer.sentAt, timeZone)}`}</p>
<pre>${sent?.ok === true ? sent.value.text : "It cannot be shown."}</pre>
<p><a href="/letters/${letter}/answer">The answer as a file (.eml)</a></p>
${
  may(visitor.account.role, "act") && ["sent", "refused"].includes(record.state)
    ? html`<form class="acts" method="post" action="/letters/${letter}/again">${ownForm(visitor)}<label>Why it is sent again<input name="why" size="40" required></label><button>Send it again</button></form>`
    : ""
}`
}
<h2>What happened</h2>
<ol>${history.map(({ at, actor, what, words }) => html`<li>${momentIn(at, timeZone)} ${actor}: ${what}${words === "" ? "" : ` (${words})`}</li>`)}</ol>`,
  );
}

import { html } from "hono/html";
import type { LetterRecord } from "../../trade/record.ts";
import { type Ask, type Front, visitorOf } from "../front.ts";
import { type Markup, momentIn, orderPath, page, stamp } from "../page.ts";

/** Letters on one page. */
const most = 50;

/** Letters and what became of them, the latest first. */
export async function lettersPage(c: Ask, front: Front): Promise<Response> {
  const { store, timeZone } = front.desk;
  visitorOf(c);
  const before = Number(c.req.query("before"));
  const letters = await store.letters.list(
    most + 1,
    Number.isSafeInteger(before) && before > 0 ? before : undefined,
  );
  const shown = letters.slice(0, most);
  return page(
    c,
    front,
    { title: "Letters" },
    html`${shown.length === 0 ? html`<p>No letter has come yet. The worker puts each here as soon as it has read it.</p>` : lettersTable(shown.map((letter) => rowOf(letter, timeZone)))}
${letters.length > most ? html`<p><a href="/letters?before=${shown.at(-1)?.letter ?? 0}">Older ones</a></p>` : ""}`,
  );
}

/** A letter in the table, with links to what there is of it. */
export interface LetterRow {
  readonly letter: LetterRecord;
  readonly received: string;
  /** Where the letter, and where its answer can be read. */
  readonly path: string;
  readonly answerPath?: string;
  readonly orders: Markup;
  readonly enclosed?: Markup;
}

/** Letters in a table; on a phone each is a block. */
export function lettersTable(rows: readonly LetterRow[]): Markup {
  const hasEnclosed = rows.some(({ enclosed }) => enclosed !== undefined);
  return html`<div class="wide"><table class="stack"><tr><th>Letter</th><th>Received</th><th>From</th><th>Orders</th><th>Verdict</th><th>Problems</th>${hasEnclosed ? html`<th>Enclosed</th>` : ""}</tr>
${rows.map(
  ({ letter, received, path, answerPath, orders, enclosed }) => html`<tr>
<td><a href="${path}">${letter.subject || "(no subject)"}</a></td>
<td data-label="Received">${received}</td>
<td data-label="From">${letter.from ?? ""}</td>
<td data-label="Orders">${orders}</td>
<td data-label="Verdict">${answerPath === undefined ? stamp(letter.verdict ?? "person") : html`<a href="${answerPath}">${stamp(letter.verdict ?? "person")}</a>`}</td>
<td data-label="Problems">${[...new Set(letter.problems.map(({ check }) => check))].join(", ")}</td>
${hasEnclosed ? html`<td data-label="Enclosed">${enclosed ?? ""}</td>` : ""}</tr>`,
)}</table></div>`;
}

function rowOf(letter: LetterRecord, timeZone: string): LetterRow {
  return {
    letter,
    received: momentIn(letter.receivedAt, timeZone),
    path: `/letters/${letter.letter}`,
    orders: html`${letter.orders.map((number) => html`<a href="${orderPath(number)}">${number}</a> `)}`,
  };
}

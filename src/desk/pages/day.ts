import { html, raw } from "hono/html";
import { barsOf } from "../../audit/page.ts";
import { readPeriod } from "../../audit/period.ts";
import { sectionsOf } from "../../audit/rows.ts";
import { lessonsOf } from "../../audit/text.ts";
import { calendarOf } from "../../calendar/business-days.ts";
import { dateIn } from "../../calendar/dates.ts";
import { type Ask, type Front, Refused, visitorOf } from "../front.ts";
import { page } from "../page.ts";

/** So many days are audited on one page at most. */
const mostDays = 92;

/** The audit of a day, or of the days from one to another. */
export async function dayPage(c: Ask, front: Front): Promise<Response> {
  const { store, timeZone, clock, rules } = front.desk;
  visitorOf(c);
  const today = dateIn(clock.now(), timeZone);
  const first = c.req.query("from") || today;
  const last = c.req.query("to") || first;
  const days = (Date.parse(last) - Date.parse(first)) / (24 * 3_600_000) + 1;
  if (![first, last].every((date) => /^\d{4}-\d{2}-\d{2}$/.test(date)) || !(days >= 1 && days <= mostDays))
    throw new Refused(400, `Name a first and a last day, no more than ${mostDays} days.`);
  const period = await readPeriod(
    store.audited,
    { first, last },
    rules.reminding ?? calendarOf({ timeZone }),
  );
  return page(
    c,
    front,
    { title: first === last ? `Day ${first}` : `Days ${first} to ${last}` },
    html`<form action="/day" class="acts"><label>From<input type="date" name="from" value="${first}"></label>
<label>To<input type="date" name="to" value="${last}"></label><button>Show</button></form>
${period.audited.letters.length > 0 ? "" : html`<p>No letter came then. Choose other days above; what waits for a person stands below.</p>`}
${lessonsOf(period).map(({ title, says }) => html`<h2>${title}</h2><ul>${says.map((one) => html`<li>${one}</li>`)}</ul>`)}
${sectionsOf(period).map(
  ({
    title,
    lines: [head = [], ...lines],
    note,
    isDrawn,
  }) => html`<section aria-label="${title}"><h2>${title}</h2>
${isDrawn ? html`<div class="wide">${raw(barsOf(title, lines))}</div>` : ""}
<div class="wide"><table class="stack"><tr>${head.map((cell) => html`<th>${cell}</th>`)}</tr>
${lines.map((line) => html`<tr>${line.map((cell, i) => html`<td data-label="${head[i] ?? ""}">${cell}</td>`)}</tr>`)}</table></div>
${note === undefined ? "" : html`<p class="faint">${note}</p>`}</section>`,
)}`,
  );
}

import { html } from "hono/html";
import { type CheckTally, figuresOf } from "../../audit/figures.ts";
import { fileChecks, letterChecks, orderChecks, sheetChecks } from "../../checks/catalogue.ts";
import { explained } from "../../checks/explained.ts";
import { type AnyCheck, severityWords } from "../../checks/run.ts";
import { type Ask, type Front, Refused, visitorOf } from "../front.ts";
import { page } from "../page.ts";

const groups: readonly { readonly title: string; readonly checks: readonly AnyCheck[] }[] = [
  { title: "On an attachment", checks: fileChecks },
  { title: "On a sheet", checks: sheetChecks },
  { title: "On an order", checks: orderChecks },
  { title: "On a letter", checks: letterChecks },
];

/** So many days back it is counted how often checks fire. */
const days = 28;

function endingsOf(one: CheckTally | undefined): string {
  if (one === undefined) return "";
  return `${one.yes} yes, ${one.decided} settled by us, ${one.corrected} corrected, ${one.withdrawn} withdrawn, ${one.open} no answer`;
}

/** All checks, with what each finds, how often it fired, and how its questions ended. */
export async function checksPage(c: Ask, front: Front): Promise<Response> {
  visitorOf(c);
  const { store, clock } = front.desk;
  // The end of a time is no part of it, and what happens at this very moment counts.
  const now = new Date(clock.now().getTime() + 1);
  const from = new Date(now.getTime() - days * 24 * 3_600_000);
  const { byCheck, questions } = figuresOf(await store.audited(from, now), from, now);
  const fired = new Map(byCheck.map(({ name, slips }) => [name, slips]));
  const ended = new Map(questions.map((one) => [one.check, one]));
  return page(
    c,
    front,
    { title: "Checks" },
    html`${groups.map(
      ({ title, checks }) => html`<h2>${title}</h2>
<div class="wide"><table class="stack"><tr><th>Check</th><th>What is wrong</th><th>Weight</th><th>Slips in ${days} days</th><th>How its questions ended</th></tr>
${checks.map(
  ({ id, title: what, severity }) =>
    html`<tr><td><a href="/checks/${id}">${id}</a></td><td>${what}</td><td data-label="Weight">${severity}</td><td data-label="Slips">${fired.get(id) ?? 0}</td><td data-label="Ended">${endingsOf(ended.get(id))}</td></tr>`,
)}</table></div>`,
    )}`,
  );
}

/** One check with its reason, source and examples. */
export function checkPage(c: Ask, front: Front, id: string): Response | Promise<Response> {
  visitorOf(c);
  const check = explained(id, front.desk.catalogue);
  if (check === undefined) throw new Refused(404, `There is no check “${id}”.`);
  return page(
    c,
    front,
    { title: check.title },
    html`<p class="faint">${check.id}</p>
<p>It ${severityWords[check.severity]}.</p>
<p>${check.why}</p>
<p>Source: ${check.source}.</p>
<h2>What it finds, for example</h2>
<ul class="tickets">${check.finds.map(
      ({ shows, says, fix }) => html`<li class="ticket"><h3>${shows}</h3><p>${says}</p><p>${fix}</p></li>`,
    )}</ul>
<h2>What it lets pass</h2>
<ul>${check.passes.map((shows) => html`<li>${shows}</li>`)}</ul>`,
  );
}

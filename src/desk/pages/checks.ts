import { html } from "hono/html";
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

/** All checks, with what each finds. */
export function checksPage(c: Ask, front: Front): Response | Promise<Response> {
  visitorOf(c);
  return page(
    c,
    front,
    { title: "Checks" },
    html`${groups.map(
      ({ title, checks }) => html`<h2>${title}</h2>
<div class="wide"><table class="stack"><tr><th>Check</th><th>What is wrong</th><th>Weight</th></tr>
${checks.map(
  ({ id, title: what, severity }) =>
    html`<tr><td><a href="/checks/${id}">${id}</a></td><td>${what}</td><td data-label="Weight">${severity}</td></tr>`,
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

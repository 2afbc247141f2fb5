import { randomUUID } from "node:crypto";
import { html } from "hono/html";
import type { HtmlEscapedString } from "hono/utils/html";
import { may, type Role } from "../ports/accounts.ts";
import type { Verdict } from "../trade/problem.ts";
import type { Ask, Front, Visitor } from "./front.ts";

/** A part of a page. */
export type Markup = HtmlEscapedString | Promise<HtmlEscapedString>;

/** Pages that the top of each page leads to. */
const places: readonly { readonly path: string; readonly name: string; readonly role: Role }[] = [
  { path: "/", name: "Today", role: "see" },
  { path: "/people", name: "People", role: "see" },
  { path: "/orders", name: "Orders", role: "see" },
  { path: "/letters", name: "Letters", role: "see" },
  { path: "/day", name: "Day", role: "see" },
  { path: "/checks", name: "Checks", role: "see" },
  { path: "/try", name: "Try sheets", role: "see" },
  { path: "/accounts", name: "Accounts", role: "administer" },
  { path: "/erase", name: "Erase", role: "administer" },
];

/** Signs that turn the direction of the words behind them. Unicode Standard Annex #9, 2.1 to 2.3 */
const turning = /[\u202A-\u202E\u2066-\u2069]/g;

/** A whole page. `said` is what came of what was just done; it has the focus, so that one goes on from there. */
export async function page(
  c: Ask,
  { desk }: Front,
  { title, said }: { readonly title: string; readonly said?: string | undefined },
  body: Markup,
): Promise<Response> {
  const visitor = c.get("visitor");
  const whole = await html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title} · ${desk.from.name}</title>
<link rel="stylesheet" href="/style.css">
<link rel="icon" href="data:,">
<script src="/script.js" defer></script>
</head>
<body>
<a class="skip" href="#main">To the content</a>
<header><div>
<strong>${desk.from.name}</strong>
${visitor === undefined ? "" : topOf(c, visitor)}
</div></header>
<main id="main" tabindex="-1">
<h1>${title}</h1>
${said === undefined || said === "" ? "" : html`<p class="said" role="status" tabindex="-1" autofocus>${said}</p>${visitor === undefined ? "" : html`<p><a href="/people">What waits next</a></p>`}`}
${body}
</main>
</body>
</html>
`;
  // What a stranger has typed turns about none of the words around it.
  return c.html(String(whole).replaceAll(turning, "\uFFFD"));
}

function topOf(c: Ask, { account, token }: Visitor): Markup {
  const here = places.findLast(
    ({ path }) => path === c.req.path || (path !== "/" && c.req.path.startsWith(path)),
  );
  const open = places.filter(({ role }) => may(account.role, role));
  return html`<nav aria-label="Pages">
${open.map(({ path, name }) => html`<a href="${path}"${path === here?.path ? html` aria-current="page"` : ""}>${name}</a>`)}
</nav>
<form method="post" action="/sign-out"><input type="hidden" name="token" value="${token}">
<span class="faint">${account.name}</span> <button>Sign out</button></form>`;
}

/** The hidden field of a form that must not be taken twice, however often its button is pressed. */
export function onceForm(): Markup {
  return html`<input type="hidden" name="once" value="${randomUUID()}">`;
}

/** The hidden field of every form. */
export function ownForm({ token }: Visitor): Markup {
  return html`<input type="hidden" name="token" value="${token}">`;
}

/** Verdicts in the words of the page; no verdict, if nothing is left of an order. */
export function stamp(verdict: Verdict | undefined): Markup {
  const words = { pass: "pass", fail: "fail", confirm: "asks", waiting: "waiting", person: "person" };
  return verdict === undefined
    ? html`<span class="stamp">withdrawn</span>`
    : html`<span class="stamp ${verdict}">${words[verdict]}</span>`;
}

/** A moment as the desk's clock shows it: "2026-11-09 14:03". */
export function momentIn(moment: Date, timeZone: string): string {
  return new Intl.DateTimeFormat("sv-SE", { timeZone, dateStyle: "short", timeStyle: "short" }).format(
    moment,
  );
}

/** How the address of an order's page begins with its number in it. */
export function orderPath(number: string): string {
  return `/orders/${encodeURIComponent(number)}`;
}

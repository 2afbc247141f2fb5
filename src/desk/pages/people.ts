import { html } from "hono/html";
import { type Point, placesIn, type Waiting } from "../../audit/people.ts";
import { readOldest } from "../../intake/tell-people.ts";
import { may } from "../../ports/accounts.ts";
import { type Ask, type Front, type Visitor, visitorOf } from "../front.ts";
import { type Markup, momentIn, onceForm, orderPath, ownForm, page } from "../page.ts";

/** Of each thing so many points are shown, on a page so many things. */
const mostPoints = 12;
const mostThings = 30;

/** So many letters and so many orders are read. */
const mostRead = 500;

/** All that waits for somebody, first things first, each with what settles it. */
export async function peoplePage(c: Ask, front: Front, said?: string): Promise<Response> {
  const { desk } = front;
  const visitor = visitorOf(c);
  const { waiting, isCut } = await readOldest(desk.store, desk.clock.now(), mostRead);
  const asked = Number(/^\d{1,6}$/.exec(c.req.query("from") ?? "")?.[0] ?? 0);
  const from = asked < waiting.length ? asked : 0;
  const shown = waiting.slice(from, from + mostThings);
  return page(
    c,
    front,
    { title: "People", said },
    waiting.length === 0
      ? html`<p>Nothing waits for a person. What a sender cannot settle alone will stand here, with whom to call.</p>`
      : html`${partOf(from, shown.length, waiting.length)}
<ol class="tickets" start="${from + 1}">${shown.map((one) => ticket(one, front, visitor))}</ol>
${linksAround(from, waiting.length)}
${isCut ? html`<p>Only the ${mostRead} oldest letters and orders are counted here. What waits behind them is listed by burin people, and comes up as these are settled.</p>` : ""}`,
  );
}

/** Which part of all that waits is shown, where it is not all. */
function partOf(from: number, shown: number, all: number): Markup | "" {
  return shown === all ? "" : html`<p>${from + 1} to ${from + shown} of ${all} that wait.</p>`;
}

/** The ways to the things before and behind. */
function linksAround(from: number, all: number): Markup | "" {
  const before = Math.max(0, from - mostThings);
  const behind = all - from - mostThings;
  if (from === 0 && behind <= 0) return "";
  return html`<p>${from > 0 ? html`<a href="/people?from=${before}">The ${from - before} before</a> ` : ""}${
    behind > 0
      ? html`<a href="/people?from=${from + mostThings}">The next ${Math.min(behind, mostThings)}</a>`
      : ""
  }</p>`;
}

const kinds = {
  undelivered: "its answer did not arrive",
  copy: "its manager had no copy",
  held: "not taken, and nothing of it is checked",
  note: "what one of us did could not be taken",
  order: "",
  letter: "about no order",
} as const satisfies Record<Waiting["what"], string>;

/** One thing that waits, in a ticket. */
function ticket(one: Waiting, { desk }: Front, visitor: Visitor): Markup {
  const { what, order, project, contacts, points, since, letters } = one;
  const [letter] = letters;
  const name =
    order === undefined ? `Letter ${letter}` : order === "" ? "An order without a number" : `Order ${order}`;
  const path = order ? orderPath(order) : `/letters/${letter}`;
  const title = [name, project ?? "", kinds[what]].filter((part) => part !== "").join(", ");
  const more = points.length - mostPoints;
  return html`<li class="ticket person">
<div class="row"><h2><a href="${path}">${title}</a></h2><span class="faint">since ${momentIn(since, desk.timeZone)}</span></div>
${contacts.map((contact) => html`<p>Call ${contact}</p>`)}
<ul class="points">${points.slice(0, mostPoints).map((point) => pointItem(point, one, visitor))}</ul>
${more > 0 ? html`<p class="faint">and ${more} more</p>` : ""}
${what === "order" ? "" : letterForm(one, visitor)}
</li>`;
}

function pointItem(point: Point, { what, order }: Waiting, visitor: Visitor): Markup {
  const { number, letter, says } = point;
  const name =
    number === undefined
      ? html`<a href="/letters/${letter}">Letter ${letter}</a>`
      : html`${number}. ${placesIn(point)}`;
  // What has to be released once more is released on the order's page.
  const isOfOrder = number === undefined && letter === undefined;
  if (what !== "order" || isOfOrder) return html`<li>${says}</li>`;
  // Without a number an order has no page, and its points are settled by none.
  const form =
    number === undefined ? asideForm(letter ?? 0, visitor) : order ? pointForm(order, number, visitor) : "";
  return html`<li>${name} ${says}
${form}</li>`;
}

/** What can be done about one point of an order. `no` is the last letter that has answered it with NO. */
export function pointForm(
  order: string,
  number: number,
  visitor: Visitor,
  {
    buyer = "",
    stops = false,
    no,
  }: { readonly buyer?: string; readonly stops?: boolean; readonly no?: number } = {},
): Markup {
  if (!may(visitor.account.role, "act")) return html``;
  return html`<form class="acts" method="post" action="${orderPath(order)}/points">${ownForm(visitor)}${onceForm()}
<input type="hidden" name="number" value="${number}"><input type="hidden" name="buyer" value="${buyer}"><input type="hidden" name="no" value="${no ?? ""}">
<label>Reason, or words for the sender, about ${number}<input name="why" size="40" required></label>
${
  stops
    ? html`<button name="act" value="waive">Let it stand</button>`
    : html`<button name="act" value="yes">It is meant so</button> <button name="act" value="no">It is not</button>`
}
<button name="act" value="say">Write this to the sender</button></form>`;
}

/** Says that what a letter said is dealt with. */
export function asideForm(letter: number, visitor: Visitor): Markup {
  if (!may(visitor.account.role, "act")) return html``;
  return html`<form class="acts" method="post" action="/letters/${letter}/aside">${ownForm(visitor)}
<label>What was done about letter ${letter}; its sender may be told<input name="why" size="40" required></label>
<button>It is dealt with</button></form>`;
}

/** What can be done about a letter that was held, or whose answer did not arrive. */
function letterForm({ what, letters: [letter = 0], contacts }: Waiting, visitor: Visitor): Markup {
  if (what !== "held") return asideForm(letter, visitor);
  return html`${letInForm(letter, contacts[0] ?? "", visitor)}${asideForm(letter, visitor)}`;
}

/** Lets in a letter that was held. */
export function letInForm(letter: number, sender: string, visitor: Visitor): Markup {
  if (!may(visitor.account.role, "act")) return html``;
  return html`<form class="acts" method="post" action="/letters/${letter}/let-in">${ownForm(visitor)}
<label>Whose letter ${letter} is<input name="as" type="email" value="${sender}" required></label>
<label>Why it is genuine<input name="why" size="30" required></label>
<button>Let it in</button></form>`;
}

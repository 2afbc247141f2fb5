import { html } from "hono/html";
import type { ListedOrder, Sought } from "../../ports/store.ts";
import type { Verdict } from "../../trade/problem.ts";
import { type Ask, type Front, visitorOf } from "../front.ts";
import { type Markup, momentIn, orderPath, page, stamp } from "../page.ts";

/** Orders on one page, and of each verdict on the first. */
const most = { page: 50, first: 12 };

interface Group {
  /** What the address of its page calls it. */
  readonly name: string;
  readonly sought: Pick<Sought, "verdicts" | "forPerson" | "released">;
  readonly title: string;
  readonly none: string;
}

/** Orders by their verdicts; before them those of which something waits for one of us, whatever their verdict. */
const groups: readonly Group[] = [
  {
    name: "person",
    sought: { forPerson: true },
    title: "For a person",
    none: "No order waits for one of us.",
  },
  ofVerdict("fail", "Failing", "No order has to be mended."),
  ofVerdict("confirm", "Asking", "No order waits for an answer."),
  ofVerdict("waiting", "Waiting for sheets", "No order waits for sheets."),
  {
    name: "pass",
    sought: { verdicts: ["pass"], released: false },
    title: "Passed",
    none: "No order has passed that is not released.",
  },
  {
    name: "released",
    sought: { verdicts: ["pass"], released: true },
    title: "Released",
    none: "No order is released to engraving.",
  },
];

function ofVerdict(verdict: Verdict, title: string, none: string): Group {
  return { name: verdict, sought: { verdicts: [verdict] }, title, none };
}

/** What stands where: what waits for a person first, then orders by their verdicts. */
export async function todayPage(c: Ask, front: Front): Promise<Response> {
  const { store, timeZone } = front.desk;
  visitorOf(c);
  const listed = await Promise.all(
    groups.map(async (group) => ({
      ...group,
      orders: await store.orders.list({ ...group.sought, most: most.first + 1 }),
    })),
  );
  return page(
    c,
    front,
    { title: "Today" },
    html`${searchForm("")}
<p><a href="/people">Everything that waits for a person, with whom to call</a></p>
${listed.map(
  ({ name, title, none, orders }) => html`<section aria-label="${title}"><h2>${title}</h2>
${orders.length === 0 ? html`<p class="faint">${none}</p>` : tickets(orders.slice(0, most.first), timeZone)}
${orders.length > most.first ? html`<p><a href="/orders?verdict=${name}">All that are ${title.toLowerCase()}</a></p>` : ""}</section>`,
)}`,
  );
}

/** Orders by a search, or of one verdict, a page at a time. */
export async function ordersPage(c: Ask, front: Front): Promise<Response> {
  const { store, timeZone } = front.desk;
  visitorOf(c);
  const search = (c.req.query("search") ?? "").slice(0, 200);
  const chosen = groups.find(({ name }) => name === c.req.query("verdict"));
  const before = Number(c.req.query("before"));
  const orders = await store.orders.list({
    ...chosen?.sought,
    ...(search === "" ? {} : { search }),
    ...(Number.isSafeInteger(before) && before > 0 ? { before } : {}),
    most: most.page + 1,
  });
  const shown = orders.slice(0, most.page);
  const next = new URLSearchParams({
    ...(chosen === undefined ? {} : { verdict: chosen.name }),
    ...(search === "" ? {} : { search }),
    before: String(shown.at(-1)?.place ?? 0),
  });
  return page(
    c,
    front,
    { title: chosen?.title ?? "Orders" },
    html`${searchForm(search, search === "" && chosen === undefined)}
${
  shown.length === 0
    ? html`<p>${search === "" ? "No order is here." : `No order is found by “${search}”. Every word has to begin something of the order: its number, project, sender, telephone, station or a legend.`}</p>`
    : html`${search === "" ? html`<h2>The latest first</h2>` : html`<h2 tabindex="-1" autofocus>Found</h2>`}${tickets(shown, timeZone)}`
}
${orders.length > most.page ? html`<p><a href="/orders?${next.toString()}">Older ones</a></p>` : ""}`,
  );
}

/** It has the focus where somebody came to search. */
function searchForm(search: string, isFirst = false): Markup {
  return html`<form role="search" action="/orders" class="acts">
<label>Order, project, sender, phone, station or legend<input type="search" name="search" value="${search}" size="40"${isFirst ? html` autofocus` : ""}></label><button>Search</button></form>`;
}

function tickets(orders: readonly ListedOrder[], timeZone: string): Markup {
  return html`<ul class="tickets">${orders.map(
    ({
      number,
      buyer,
      project,
      verdict,
      changedAt,
      letter,
      isReleased,
    }) => html`<li class="ticket ${verdict ?? ""}">
<div class="row"><h3>${nameOf(number, letter)} ${project ?? ""}</h3>${stamp(verdict)}</div>
<div class="row faint"><span>${buyer}</span><span>${isReleased ? "released · " : ""}${momentIn(changedAt, timeZone)}</span></div></li>`,
  )}</ul>`;
}

/** An order without a number has no page; it is read in its letter. */
function nameOf(number: string, letter: number | undefined): Markup {
  if (number !== "") return html`<a href="${orderPath(number)}">${number}</a>`;
  return letter === undefined
    ? html`Without a number`
    : html`<a href="/letters/${letter}">Without a number</a>`;
}

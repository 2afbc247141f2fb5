import { html } from "hono/html";
import {
  deletedWords,
  elsewhereWords,
  erasePerson,
  planErasing,
  sizeOf,
  type Whom,
} from "../../intake/erase.ts";
import type { ErasePlan } from "../../ports/store.ts";
import { byOf } from "../actions.ts";
import type { Fields } from "../asked.ts";
import { type Ask, type Front, Refused, visitorOf } from "../front.ts";
import { type Markup, momentIn, ownForm, page } from "../page.ts";

/** So many letters are listed one by one. */
const most = 200;

/** Whom to erase, and what would go. Nothing is changed. */
export async function erasePage(c: Ask, front: Front, typed: string, said?: string): Promise<Response> {
  const address = typed.trim().toLowerCase();
  const plan = address === "" ? undefined : await planErasing(front.desk, { address, givesUp: false });
  return page(
    c,
    front,
    { title: "Erase a person", said },
    html`<p>Letters, files, answers, addresses, names and legends go for good. That a letter came, to what verdict and which
checks, stays under a stand-in, so that the figures of every day stay. ${elsewhereWords} Whether you must or may erase,
ask whoever is responsible for data protection at your firm.</p>
<form action="/erase" class="acts"><div><label for="of">Whose letters and orders</label>
<input id="of" name="address" type="email" value="${address}" required></div><button>Show what would go</button></form>
${plan === undefined ? "" : planPart(plan, address, front, ownForm(visitorOf(c)))}`,
  );
}

function planPart(plan: ErasePlan, address: string, { desk }: Front, own: Markup): Markup {
  const { letters, orders, inTheWay, elsewhere } = plan;
  const isAny = letters.length + orders.length + inTheWay.length > 0;
  return html`<h2>${address}</h2>
${isAny ? "" : html`<p>The record has nothing that goes with this address.</p>`}
${orders.length === 0 ? "" : html`<p>Orders: ${orders.map((one) => one || "(no number)").join(", ")}</p>`}
${
  letters.length === 0
    ? ""
    : html`<p>${sizeOf(plan)}:</p><ul>${letters
        .slice(0, most)
        .map(
          ({ letter, receivedAt, subject }) =>
            html`<li><a href="/letters/${letter}">Letter ${letter}</a>, ${momentIn(receivedAt, desk.timeZone)}: ${subject}</li>`,
        )}</ul>`
}
${inTheWay.length === 0 ? "" : html`<h3>In the way</h3><ul>${inTheWay.map(({ what, why }) => html`<li>${what}: ${why}</li>`)}</ul>`}
${elsewhere.length === 0 ? "" : html`<p>Letters in orders of others go with those: ${elsewhere.map(({ letter }) => html`<a href="/letters/${letter}">${letter}</a> `)}</p>`}
${
  isAny
    ? html`<form method="post" action="/erase">${own}<input type="hidden" name="address" value="${address}">
<p><label for="confirm">Type the address once more</label><input id="confirm" name="confirm" autocapitalize="none" autocomplete="off" required></p>
<p><label for="erase-why">Reason; it stays in the record, so name nobody in it</label><input id="erase-why" name="why" maxlength="200" required></p>
<p><label><input type="checkbox" name="gives-up" value="yes"> Give up orders that are not done with, and erase them too</label></p>
<p><button class="main">Erase for good</button></p></form>`
    : ""
}`;
}

/** Erases a person, once the address is typed twice. */
export async function erased(c: Ask, front: Front, field: Fields): Promise<Response> {
  const whom: Whom = { address: field("address").toLowerCase(), givesUp: field("gives-up") === "yes" };
  if (whom.address === "" || field("confirm").toLowerCase() !== whom.address)
    throw new Refused(400, "The address typed once more is another. Nothing is erased.");
  const by = byOf(c, field("why"));
  if (by.why.toLowerCase().includes(whom.address))
    throw new Refused(400, "The reason stays in the record: name nobody in it. Nothing is erased.");
  const { standIn, letters, orders, deleted } = await erasePerson(front.desk, whom, by);
  if (standIn === undefined) {
    c.status(409);
    return erasePage(
      c,
      front,
      whom.address,
      "Nothing is erased: something is in the way, or nothing is there.",
    );
  }
  return page(
    c,
    front,
    { title: "Erased" },
    html`<p role="status">Erased: ${sizeOf({ letters, orders })}. They are counted as ${standIn}.</p>
${deletedWords(deleted).map((words) => html`<p>${words}</p>`)}<p>${elsewhereWords}</p>`,
  );
}

import { html } from "hono/html";
import { areWords } from "../../checks/asked.ts";
import { wordsOutside } from "../../checks/run.ts";
import { answerable, answerByLink } from "../../intake/by-link.ts";
import { type Behind, behindLink } from "../../intake/link.ts";
import type { OrderRecord } from "../../trade/record.ts";
import { type Ask, type Front, Refused } from "../front.ts";
import { type Markup, page } from "../page.ts";

/** What a buyer sees who follows the link in an answer: the questions of its orders. Opening it changes nothing. */
export async function replyPage(c: Ask, front: Front, token: string, said?: string): Promise<Response> {
  const { orders } = await behind(front, token);
  const open = orders.filter((order) => answerable(order).length > 0);
  return page(
    c,
    front,
    { title: "Your questions", said },
    open.length === 0
      ? html`<p>No question is open that you can answer here. What still has to be done stands in our last letter.</p>`
      : html`${open.map((order) => orderForm(order, token))}`,
  );
}

function orderForm(order: OrderRecord, token: string): Markup {
  return html`<form method="post" action="/answer/${token}"><h2>Order ${order.number}${order.project === undefined ? "" : `, ${order.project}`}</h2>
<input type="hidden" name="order" value="${order.number}">
${answerable(order).map(({ number, problem, station, position }) => {
  const { says, fix } = wordsOutside(problem);
  // Questions that read the same have one number and one answer.
  const alike = order.questions.filter((one) => one.number === number).length;
  const places =
    alike > 1 ? [`${alike} sheets`] : [station, position === undefined ? undefined : `position ${position}`];
  const where = places.filter((part) => part !== undefined).join(", ");
  return html`<fieldset class="ticket confirm"><legend>Question ${number}${where === "" ? "" : `: ${where}`}</legend>
<p><b>${says}</b></p><p>${fix}</p>
<p>${(areWords(problem) ? ofWords : ofQuestion).map(([value, label]) => html`<label><input type="radio" name="q-${number}" value="${value}"> ${label}</label> `)}</p></fieldset>`;
})}
<p><button class="main">Send these answers</button></p>
<p class="faint">Answer as many as you like; the others stay open. A corrected sheet comes in a reply to our letter.</p></form>`;
}

const ofQuestion = [
  ["yes", "Yes, it is meant as it stands"],
  ["no", "No, I send a corrected sheet"],
];
const ofWords = [["yes", "It asks for nothing; nobody has to read it"]];

/** Takes the answers of one order. */
export async function replied(
  c: Ask,
  front: Front,
  token: string,
  field: (name: string) => string,
): Promise<Response> {
  const found = await behind(front, token);
  const order = found.orders.find(({ number }) => number === field("order"));
  if (order === undefined) throw new Refused(404, "This link is about another order.");
  const acts = answerable(order).flatMap(({ number }) => {
    const kind = field(`q-${number}`);
    return kind === "yes" || kind === "no" ? ({ kind, number } as const) : [];
  });
  if (acts.length === 0) throw new Refused(400, "Answer a question first, with yes or no.");
  const said = await answerByLink(front.desk, found, order, acts);
  if (!said.done) c.status(409);
  return replyPage(c, front, token, said.words);
}

async function behind({ desk }: Front, token: string): Promise<Behind> {
  const found = await behindLink(token, desk);
  if (found === undefined)
    throw new Refused(404, "This link leads nowhere, or its time is over. Reply to our letter instead.");
  return found;
}

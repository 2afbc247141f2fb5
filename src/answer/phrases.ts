import { type Catalogue, mostGangs } from "../catalogue/catalogue.ts";
import { maySettle } from "../checks/asked.ts";
import { senderUnproven } from "../checks/letter/sender-unproven.ts";
import { managerWord } from "../checks/order/manager-word.ts";
import { everyProblem, type OrderReport, type Report } from "../judging/report.ts";
import { isNoNumber } from "../orders/no-number.ts";
import { isAsReleased } from "../orders/piece.ts";
import type { Order } from "../trade/order.ts";
import { type Verdict, verdictOf } from "../trade/problem.ts";
import { counted, listed, oneLine } from "./one-line.ts";
import type { Ways } from "./outline.ts";

/** How many numbered items there are of each kind; for `waiting`, how many sheets are missing. */
export type Tally = Readonly<Record<Verdict, number>>;

export const words = {
  pass: "PASS",
  fail: "FAIL",
  confirm: "CONFIRM",
  waiting: "WAITING",
  person: "A PERSON WILL LOOK AT THIS",
} as const satisfies Record<Verdict, string>;

/** The word that an answer begins with. Nothing can pass of an order of which nothing is left. */
export function wordOf({ verdict, orders, withdrawn }: Report): string {
  return verdict === "pass" && orders.length === 0 && withdrawn.length > 0 ? "WITHDRAWN" : words[verdict];
}

/** "3 things to fix". */
export function tallyWords(verdict: Verdict, tally: Tally): string {
  const phrases = {
    fail: `${counted(tally.fail, "thing")} to fix`,
    confirm: `${counted(tally.confirm, "question")} to answer`,
    person: counted(tally.person, "open point"),
    waiting: tally.waiting === 0 ? "more sheets to come" : `${counted(tally.waiting, "sheet")} still to come`,
    pass: "nothing to fix",
  } satisfies Record<Verdict, string>;
  return phrases[verdict];
}

/** The first line after the verdict. */
export function headlineOf(report: Report, tally: Tally): string {
  const { orders: all, files, problems, verdict } = report;
  const what = tallyWords(verdict, tally);
  if (all.length === 0 && verdict === "pass" && report.withdrawn.length > 0)
    return `nothing is left of ${namedOrders(report.withdrawn.map(({ order }) => order))}.`;
  const none = withoutSheet[cameWith(report)];
  if (all.length === 0) return verdict === "person" ? none : `${what}; ${none}`;
  const around = verdictOf([...files.flatMap((file) => file.problems), ...problems]);
  if (all.length > 1 && around === verdict && verdict !== "pass") return `${what} in this letter.`;
  const held = all.filter((order) => order.verdict === verdict);
  const concerned = held.length === 0 ? all : held;
  const orders = ordersInWords(concerned);
  const are = concerned.length > 1 ? "are" : "is";
  if (verdict === "pass") return `${orders} ${are} complete, ${what}.`;
  if (verdict === "person" && tally.person === awaitingWord(concerned).length)
    return `${orders} ${are} complete, and ${concerned.length > 1 ? "wait" : "waits"} for the manager's word.`;
  if (verdict === "waiting") return `${orders} ${are} right so far, ${what}.`;
  return `${what} before ${orders} can be engraved.`;
}

/** Orders that nothing but their manager's word stands in the way of. */
function awaitingWord(orders: readonly OrderReport[]): OrderReport[] {
  return orders.filter(({ problems }) => problems.some(({ check }) => check === managerWord.id));
}

const withoutSheet = {
  reply: "thank you for your reply.",
  nothing: "no order sheet came with this letter.",
  unreadable: "no sheet that could be read came with this letter.",
} as const;

/** What came with a letter that has no readable sheet. */
export function cameWith({ problems }: Report): keyof typeof withoutSheet {
  const noSheet = problems.find(({ check }) => check === "no-sheet");
  if (noSheet === undefined) return "unreadable";
  return noSheet.wording === "reply" ? "reply" : "nothing";
}

/** The number of an order, fit for a line. Undefined if it has none, or a placeholder such as "TBD". */
export function numberOf({ number }: Order): string | undefined {
  return isNoNumber(number) ? undefined : oneLine(number, 40);
}

/** "order BW-2207", "orders A, B and 3 more". */
export function ordersInWords(orders: readonly OrderReport[]): string {
  const numbers = orders.flatMap(({ order }) => numberOf(order) ?? []);
  if (numbers.length === 0) return orders.length > 1 ? "these orders" : "this order";
  return namedOrders(numbers.length === orders.length ? numbers : [...numbers, "one without a number"]);
}

function namedOrders(numbers: readonly string[]): string {
  return `${numbers.length > 1 ? "orders" : "order"} ${listed(numbers, 3)}`;
}

/**
 * What happens next, and who does it. `kept`: some sheets need not come again. `ways`: how else than by
 * a reply questions can be answered.
 */
export function nextSteps(
  report: Report,
  tally: Tally,
  { kept, ways }: { readonly kept: boolean; readonly ways: Ways | undefined },
  { maker }: Catalogue,
): string[] {
  const { orders, verdict } = report;
  const managers = awaitingWord(orders);
  const person = tally.person - managers.length;
  if (verdict === "pass" && orders.length === 0) return [];
  if (verdict === "pass" && orders.length > 0 && orders.every(isReleased))
    return [
      `${orders.length > 1 ? "The orders are" : "The order is"} released: the engraving room has what it needs.`,
      `If a legend is wrong after all, call ${maker.phone} at once. What is engraved cannot be changed.`,
    ];
  const stale = orders.filter((order) => order.released !== undefined && !isReleased(order));
  const it = stale.length > 1 ? "they were" : "it was";
  if (verdict === "pass" && stale.length > 0)
    return [
      `You need do nothing more. The engraving room still has ${ordersInWords(stale)} as ${it} before the change. A person at ${maker.name} releases ${stale.length > 1 ? "them" : "it"} once more; only then is the change cut.`,
      `If a legend is wrong, call ${maker.phone} at once.`,
    ];
  if (verdict === "pass")
    return [
      `You need do nothing more. A person at ${maker.name} releases ${orders.length > 1 ? "the orders; only then are they" : "the order; only then is it"} cut.`,
      `If a legend is wrong, tell us before that: reply to this letter or call ${maker.phone}.`,
    ];
  return [
    ...(tally.fail > 0
      ? ["Correct what stands under “To fix” and send only the corrected sheets, in a reply to this letter."]
      : []),
    ...(tally.confirm > 0
      ? [
          isSettledBySender(report)
            ? "Answer each question in a reply to this letter, by its number: YES if it is meant as it stands, NO with a corrected sheet. A person reads what you answer in other words."
            : "Reply to this letter with an answer to each question, by its number. A person reads your answer.",
          ...(ways?.link === undefined || !isSettledBySender(report)
            ? []
            : [`Or answer with a click: ${ways.link}`]),
          ...(ways === undefined
            ? []
            : [`In a new letter instead of a reply, give the reference ${ways.reference}.`]),
        ]
      : []),
    ...(person > 0 ? [`A person at ${maker.name} looks at this letter and writes to you.`] : []),
    ...managers.flatMap(({ managing }) =>
      managing === undefined
        ? []
        : [
            `${oneLine(managing.manager.name, 60)} has to agree before the order passes. You need do nothing for it.`,
          ],
    ),
    ...(tally.waiting > 0 ? ["Send the missing sheets when they are ready, in a reply to this letter."] : []),
    ...(kept && !isHeld(report)
      ? [
          tally.fail > 0
            ? "Sheets not marked “Fix” are kept; do not send them again."
            : "What came is kept. Send a sheet again only if you change it.",
        ]
      : []),
    ...(orders.length > 0 ? ["Nothing is cut before the order has passed."] : []),
  ];
}

/** Whether an order is handed to engraving as it stands. */
function isReleased({ order, released, changed }: OrderReport): boolean {
  return (
    (released !== undefined && isAsReleased(order.sheets, released)) ||
    (changed?.note?.acts ?? []).some(({ kind }) => kind === "release")
  );
}

/** Whether a person has to see the letter first. Nothing of such a letter is kept. */
function isHeld({ problems }: Report): boolean {
  return problems.some(({ check }) => check === senderUnproven.id);
}

/** Whether a word of the sender alone settles some question. */
function isSettledBySender(report: Report): boolean {
  return everyProblem(report).some(maySettle);
}

export const cautions: readonly string[] = [
  "Legends are cut exactly as typed.",
  "This desk does not know the wiring. For emergency lighting and disconnects, local code and a licensed electrician decide.",
];

/** For a letter without any sheet. */
export function howToOrder(catalogue: Catalogue): string[] {
  const { maker } = catalogue;
  const most = mostGangs(catalogue);
  return [
    `Fill one device sheet for each push-button device, and one plate sheet for each plate of 2 to ${most} gangs. A plate of ${most} gangs needs ${most} device sheets.`,
    "Fill the sheets on a computer and save them as PDF files. Handwriting, scans and photos cannot be read.",
    "Write the same order number on every sheet of an order, and the same station mark on a plate and its devices. Project, contact and addresses are enough on one sheet of the order, if all come in one letter.",
    "Or fill in one station list instead of all the sheets: a row for each device. We make the sheets of it and show you them.",
    `Attach the sheets or the list to a letter to ${maker.email}.`,
    `For anything else, call ${maker.phone}.`,
  ];
}

/** Who writes. */
export function signatureOf({ maker }: Catalogue): string[] {
  return [`Burin, the intake desk of ${maker.name}`, maker.about, `${maker.email}, ${maker.phone}`];
}

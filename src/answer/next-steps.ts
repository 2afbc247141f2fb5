import type { Catalogue } from "../catalogue/catalogue.ts";
import { maySettle } from "../checks/asked.ts";
import { senderUnproven } from "../checks/letter/sender-unproven.ts";
import { everyProblem, type OrderReport, type Report } from "../judging/report.ts";
import { isAsReleased } from "../orders/piece.ts";
import { oneLine } from "./one-line.ts";
import type { Ways } from "./outline.ts";
import { awaitingWord, ordersInWords } from "./phrases.ts";
import type { Tally } from "./tally.ts";

/**
 * What happens next, and who does it. The first step stands in the head: what the reader has to do first. `kept`: some
 * sheets need not come again. `ways`: how else than by a reply questions can be answered.
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
      "You need do nothing more.",
      `The engraving room still has ${ordersInWords(stale)} as ${it} before the change.`,
      `A person at ${maker.name} releases ${stale.length > 1 ? "them" : "it"} once more; only then is the change cut.`,
      `If a legend is wrong, call ${maker.phone} at once.`,
    ];
  if (verdict === "pass")
    return [
      "Please read below what will be cut. You need do nothing more.",
      `A person at ${maker.name} releases ${orders.length > 1 ? "the orders; only then are they" : "the order; only then is it"} cut.`,
      `If a legend is wrong, tell us before that: reply to this letter or call ${maker.phone}.`,
    ];
  return [
    ...(tally.fail > 0
      ? ["Correct what stands under “To fix” and send only the corrected sheets, in a reply to this letter."]
      : []),
    ...(tally.confirm > 0
      ? [
          "Answer each question in a reply to this letter, by its number.",
          ...(isSettledBySender(report)
            ? [
                "YES says that it is meant as it stands, NO that a corrected sheet comes. A person reads what you answer in other words.",
              ]
            : []),
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
    ...(tally.waiting > 0 || verdict === "waiting"
      ? ["Send the missing sheets when they are ready, in a reply to this letter."]
      : []),
    ...(kept && !isHeld(report)
      ? [
          tally.fail > 0
            ? "Sheets not marked “Fix” are kept; do not send them again."
            : "What came is kept. Send a sheet again only if you change it.",
        ]
      : []),
    ...whatIsCut(orders, maker.phone),
  ];
}

/** What is cut of orders that have not passed: nothing, but where the engraving room has an order already. */
function whatIsCut(orders: readonly OrderReport[], phone: string): string[] {
  const handed = orders.filter(({ released }) => released !== undefined);
  const others = orders.filter(({ released }) => released === undefined);
  const nothing =
    handed.length === 0
      ? "Nothing is cut before the order has passed."
      : `Nothing of ${ordersInWords(others)} is cut before that.`;
  return [
    ...(others.length === 0 ? [] : [nothing]),
    ...(handed.length === 0
      ? []
      : [
          `The engraving room has ${ordersInWords(handed)} from before. What is engraved cannot be changed; if it is urgent, call ${phone}.`,
        ]),
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

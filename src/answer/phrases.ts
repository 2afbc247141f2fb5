import { type Catalogue, mostGangs } from "../catalogue/catalogue.ts";
import { managerWord } from "../checks/order/manager-word.ts";
import type { OrderReport, Report } from "../judging/report.ts";
import { isNoNumber } from "../orders/no-number.ts";
import type { Order } from "../trade/order.ts";
import { type Verdict, verdictOf } from "../trade/problem.ts";
import { listed, oneLine } from "./one-line.ts";
import { type Tally, tallyWords } from "./tally.ts";

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

/** The first line after the verdict. */
export function headlineOf(report: Report, tally: Tally): string {
  const { orders: all, files, problems, verdict } = report;
  const what = tallyWords(verdict, tally);
  if (all.length === 0 && verdict === "pass" && report.withdrawn.length > 0)
    return `nothing is left of ${namedOrders(report.withdrawn.map(({ order }) => order))}.`;
  const none = withoutSheet[cameWith(report)];
  if (all.length === 0) return verdict === "person" && tally.confirm === 0 ? none : `${what}; ${none}`;
  const around = verdictOf([...files.flatMap((file) => file.problems), ...problems]);
  if (all.length > 1 && around !== "pass") return `${what} in this letter.`;
  const open = all.filter((order) => order.verdict !== "pass");
  const concerned = open.length === 0 ? all : open;
  const orders = ordersInWords(concerned);
  const are = concerned.length > 1 ? "are" : "is";
  if (verdict === "pass") return `${orders} ${are} complete, ${what}.`;
  if (verdict === "waiting") return `${orders} ${are} right so far, ${what}.`;
  const awaited = awaitingWord(concerned).length;
  if (verdict === "person" && tally.person === awaited && tally.confirm + tally.waiting === 0)
    return `${orders} ${are} complete, and ${concerned.length > 1 ? "wait" : "waits"} for the manager's word.`;
  return `${what} before ${orders} can be engraved.`;
}

/** Orders that nothing but their manager's word stands in the way of. */
export function awaitingWord(orders: readonly OrderReport[]): OrderReport[] {
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

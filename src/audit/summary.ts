import type { Words } from "../answer/message.ts";
import { counted, listed, oneLine } from "../answer/one-line.ts";
import { dateIn } from "../calendar/dates.ts";
import { everyCheck } from "../checks/run.ts";
import { isForPerson } from "../judging/for-person.ts";
import { isAsReleased } from "../orders/piece.ts";
import type { Managed } from "../trade/managed.ts";
import type { OrderRecord } from "../trade/record.ts";

/** Orders in one summary; of more only the number is told. */
const mostOrders = 60;
const mostSlips = 5;

/** How the orders that somebody manages stand, and what became of them since a moment. Undefined if there is nothing to tell. */
export function composeSummary(
  { project, buyer, manager }: Managed,
  orders: readonly OrderRecord[],
  since: Date,
  now: Date,
  timeZone: string,
): Words | undefined {
  const told = orders.filter((order) => isOpen(order) || order.changedAt >= since);
  if (told.length === 0) return undefined;
  const name = project ?? buyer ?? "large orders";
  const count = (is: (order: OrderRecord) => boolean): number => told.filter(is).length;
  const more = told.length - mostOrders;
  const slips = slipsIn(told, since);
  const text = [
    `${manager.name}, this is how the orders that you manage stood on ${dateIn(now, timeZone)}.`,
    [
      `${told.length} open or changed since ${dateIn(since, timeZone)}:`,
      `${count(({ verdict }) => verdict === "pass")} passed,`,
      `${count(isReleased)} released,`,
      `${count((order) => isOpen(order) && waitsForUs(order))} waiting for one of us,`,
      `${count((order) => isOpen(order) && !waitsForUs(order))} waiting for the buyer.`,
    ].join(" "),
    told
      .slice(0, mostOrders)
      .map((order) => lineOf(order, timeZone))
      .join("\n"),
    ...(more > 0 ? [`And ${more} more.`] : []),
    ...(slips.length === 0 ? [] : [`What was wrong most often: ${listed(slips, mostSlips)}.`]),
    "",
  ].join("\n\n");
  return { subject: `Orders of ${oneLine(name, 60)}: the week to ${dateIn(now, timeZone)}`, text };
}

function isReleased({ sheets, released }: OrderRecord): boolean {
  return released !== undefined && isAsReleased(sheets, released);
}

function isEngraved({ released }: OrderRecord): boolean {
  return released?.pieces.every(({ engraved }) => engraved) === true;
}

/** Something is still to be done for it, by somebody. */
function isOpen(order: OrderRecord): boolean {
  return order.verdict !== undefined && !(isReleased(order) && order.verdict === "pass");
}

function waitsForUs({ verdict, questions, carried }: OrderRecord): boolean {
  return (
    verdict === "pass" ||
    verdict === "person" ||
    questions.some(({ problem }) => isForPerson(problem)) ||
    carried.some(({ what }) => what === "words")
  );
}

/** "- BW-2207, ines@brightwire.example: waiting; 2 sheets to come (changed 2026-11-09)". */
function lineOf(order: OrderRecord, timeZone: string): string {
  const { number, buyer, verdict, missing, questions, changedAt, released } = order;
  const stands = isReleased(order)
    ? `released on ${released?.on}${isEngraved(order) ? ", engraved" : ""}`
    : verdict === "pass"
      ? "passed, waits for its release"
      : (verdict ?? "withdrawn");
  const parts = [
    stands,
    ...(missing.length === 0 ? [] : [`${counted(missing.length, "sheet")} to come`]),
    ...(questions.length === 0
      ? []
      : [`${counted(new Set(questions.map((one) => one.number)).size, "point")} open`]),
  ];
  return `- ${oneLine(number || "without a number", 40)}, ${oneLine(buyer, 60)}: ${parts.join("; ")} (changed ${dateIn(changedAt, timeZone)})`;
}

/** "A word that may be misspelt (4)": what stopped or was asked in letters since then, most frequent first. */
function slipsIn(orders: readonly OrderRecord[], since: Date): string[] {
  const letters = orders.flatMap((order) => order.letters.filter(({ receivedAt }) => receivedAt >= since));
  const found = [...new Map(letters.map((one) => [one.letter, one])).values()].flatMap(({ problems }) =>
    problems.filter(({ severity }) => severity !== "notes"),
  );
  const titles = new Map(everyCheck.map(({ id, title }) => [id, title]));
  return [...Map.groupBy(found, ({ check }) => check)]
    .toSorted(([, one], [, other]) => other.length - one.length)
    .map(([check, all]) => `${titles.get(check) ?? check} (${all.length})`);
}

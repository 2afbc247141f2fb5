import { composeMessage } from "../answer/message.ts";
import { oneLine } from "../answer/one-line.ts";
import { wordsOf } from "../checks/run.ts";
import type { Report } from "../judging/report.ts";
import type { BuyerState } from "../judging/state.ts";
import { stateOf } from "../judging/touched.ts";
import { isAsReleased } from "../orders/piece.ts";
import type { Alarm } from "../ports/store.ts";
import type { Desk } from "./desk.ts";
import { noticePrefix } from "./etiquette.ts";

/** What the engraving room has to be told of a letter: released orders that it leaves otherwise than passed. */
export function alarmOf({ orders, sheets, problems: loose }: Report): Alarm | undefined {
  const touched = orders.flatMap(({ order, released, verdict, problems }) => {
    if (released === undefined || verdict === "pass") return [];
    const ids = new Set(order.sheets.map(({ id }) => id));
    const own = sheets.filter(({ sheet }) => ids.has(sheet.id)).flatMap((one) => one.problems);
    const says = [...problems, ...own, ...loose]
      .filter((problem) => problem.verdict !== "pass")
      .map((problem) => wordsOf(problem).says);
    return [{ order: order.number, on: released.on, says: [...new Set(says)] }];
  });
  return touched.length === 0 ? undefined : touched;
}

/** Released orders that stood otherwise before, or had something open, and are again as they were released. */
export function heldAgain({ orders }: Report, state: BuyerState): Alarm {
  return orders.flatMap(({ order, released, verdict }) => {
    const before = stateOf(order, state);
    if (released === undefined || before === undefined || verdict !== "pass") return [];
    const isOpen = before.questions.some(({ state: is }) => is === "open");
    const wasStopped = isOpen || !isAsReleased(before.sheets, released);
    if (!wasStopped || !isAsReleased(order.sheets, released)) return [];
    const says = ["It is as it was released. What you have of it holds."];
    return [{ order: order.number, on: released.on, says, holds: true }];
  });
}

/** Tells the engraving room at once of letters that touch what is released. True if it was told of some, and of all. */
export async function sendAlarms({ store, sender, clock, from, log, rules }: Desk): Promise<boolean> {
  if (rules.room === undefined) return false;
  const now = clock.now();
  const letters = await store.people.takeAlarms(now);
  let isTold = letters.length > 0;
  // Each is tried, since all of them are marked as told.
  for (const { letter, from: writer, alarm } of letters) {
    const messageId = `<${noticePrefix}alarm.${letter}.${now.getTime()}@${from.address.split("@")[1]}>`;
    const [stops, holds] = [alarm.filter((one) => !one.holds), alarm.filter((one) => one.holds)];
    const text = [
      ...(stops.length === 0
        ? []
        : [
            `Stop, please: letter ${letter} of ${writer ?? "no single sender"} touches what was released.`,
            ...told(stops),
            "Cut no more of it before one of us tells you what holds. Nothing of this was released anew.",
          ]),
      ...(holds.length === 0 ? [] : ["Go on, please, if you have stopped:", ...told(holds)]),
      "",
    ].join("\n\n");
    const subject =
      stops.length > 0
        ? `STOP: order ${numbersOf(stops)} has changed`
        : `GO ON: order ${numbersOf(holds)} can be cut`;
    const envelope = {
      from,
      to: rules.room,
      date: now,
      messageId,
      references: [],
      auto: "auto-generated",
    } as const;
    const bytes = await composeMessage(envelope, { subject, text });
    const { kind, words } = await sender
      .send({ messageId, recipient: rules.room, bytes })
      .catch((cause: unknown) => ({ kind: "later" as const, words: String(cause) }));
    // An alarm that may have gone is not sent again. It stands on the people's list all the same.
    if (kind !== "later" && kind !== "refused") continue;
    await store.people.dropAlarm(letter);
    log.warn({ letter, words }, "the engraving room could not be told of a change");
    isTold = false;
  }
  return isTold;
}

function numbersOf(alarm: Alarm): string {
  return alarm.map(({ order }) => oneLine(order, 40)).join(", ");
}

function told(alarm: Alarm): string[] {
  return alarm.map(({ order, on, says }) =>
    [
      `Order ${oneLine(order, 40)}, released on ${on}:`,
      ...says.map((line) => `- ${oneLine(line, 300)}`),
    ].join("\n"),
  );
}

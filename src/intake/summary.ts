import { composeMessage } from "../answer/message.ts";
import { composeSummary } from "../audit/summary.ts";
import { dateIn } from "../calendar/dates.ts";
import { gatherOrders } from "../orders/gather.ts";
import { managedBy } from "../orders/managed.ts";
import type { Managed } from "../trade/managed.ts";
import type { OrderRecord } from "../trade/record.ts";
import type { Desk } from "./desk.ts";
import { noticePrefix } from "./etiquette.ts";

/** Orders that are looked through for one summary, those that changed last. */
const mostLooked = 1_000;
/** From so many o'clock on a summary is sent. */
const hour = 7;
const weekMs = 7 * 86_400_000;

/** Tells managers once a week how their orders stand, on the day that the settings name. */
export async function sendSummaries(desk: Desk): Promise<void> {
  const { store, clock, rules, timeZone, log } = desk;
  const now = clock.now();
  const today = new Intl.DateTimeFormat("en-US", {
    timeZone,
    weekday: "long",
    hour: "2-digit",
    hourCycle: "h23",
  });
  const parts = new Map(today.formatToParts(now).map(({ type, value }) => [type, value]));
  const due = (rules.summaries ?? []).filter(
    ({ on }) => on === parts.get("weekday")?.toLowerCase() && Number(parts.get("hour")) >= hour,
  );
  if (due.length === 0) return;
  const orders = await recentOrders(store);
  for (const { managed } of due) {
    const key = JSON.stringify([
      managed.project,
      managed.buyer,
      managed.stationsAbove,
      managed.manager.address,
    ]);
    // Of two workers one takes it. What may have gone is not sent again.
    if (!(await store.people.takeSummary(key, dateIn(now, timeZone)))) continue;
    const own = orders.filter((order) => isManaged(order, managed, desk));
    const words = composeSummary(managed, own, new Date(now.getTime() - weekMs), now, timeZone);
    if (words === undefined) continue;
    const { from, sender } = desk;
    const recipient = managed.manager.address;
    const messageId = `<${noticePrefix}summary.${now.getTime()}.${rules.summaries?.findIndex((one) => one.managed === managed)}@${from.address.split("@")[1]}>`;
    const envelope = {
      from,
      to: recipient,
      date: now,
      messageId,
      references: [],
      auto: "auto-generated",
    } as const;
    const { kind, words: why } = await sender
      .send({ messageId, recipient, bytes: await composeMessage(envelope, words) })
      .catch((cause: unknown) => ({ kind: "later" as const, words: String(cause) }));
    if (kind !== "later" && kind !== "refused") continue;
    await store.people.dropSummary(key);
    log.warn({ why }, "a manager could not be told how his orders stand");
  }
}

/** The orders that changed last, each once. */
async function recentOrders(store: Desk["store"]): Promise<OrderRecord[]> {
  const listed = await store.orders.list({ most: mostLooked });
  const numbers = new Set(listed.map(({ number }) => number));
  return (await Promise.all([...numbers].map((number) => store.orders.named(number)))).flat();
}

function isManaged({ sheets, buyer }: OrderRecord, managed: Managed, { catalogue }: Desk): boolean {
  return gatherOrders(sheets).some((order) => managedBy(order, buyer, catalogue.managed ?? []) === managed);
}

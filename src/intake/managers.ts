import { orderKey } from "../judging/state.ts";
import { isOf, managerOfSheets } from "../orders/managed.ts";
import type { Answered } from "../ports/store.ts";
import { forwardedInline } from "../reading/letter/forwarded-inline.ts";
import { readHeader } from "../reading/letter/letter.ts";
import { forwardedIn } from "../reading/letter/machine-report.ts";
import type { Managing } from "../trade/manager.ts";
import type { SenderProof } from "../trade/sender-proof.ts";
import type { Sheet } from "../trade/sheet.ts";
import type { Desk, Rules } from "./desk.ts";
import type { Forwarded } from "./forwarded.ts";
import type { OpenedLetter } from "./opened-letter.ts";

/**
 * What the sender of a letter manages; nothing unless it is proved that he sent it. Senders are taken at their word
 * only where the settings say so.
 */
export function managedBy(
  from: string | undefined,
  proof: SenderProof | "not asked",
  { managing, known }: Pick<Rules, "managing" | "known">,
): readonly Managing[] {
  const isBelieved = from !== undefined && proof === "none" && known.some((one) => isOf(from, one));
  if (proof !== "pass" && proof !== "not asked" && !isBelieved) return [];
  return managing.filter(({ manager }) => manager.address === from);
}

/** Whose words a forwarded letter has: its writer's, and of whoever forwards it. */
export interface WordsApart {
  readonly writer: string;
  readonly manager: string;
}

/** A letter of a manager that forwards another. */
export interface ForwardedByManager {
  readonly forwarded: Forwarded;
  /** All words of both, where it is forwarded in the text. */
  readonly text?: string;
  readonly apart?: WordsApart;
}

/** Whose letter a manager has forwarded: attached whole, or in the text of his own. */
export async function forwardedByManager(
  { letter: { from, text, subject }, sheets }: Pick<OpenedLetter, "letter" | "sheets">,
  bytes: Uint8Array,
  { ours, staff, managing }: Pick<Rules, "ours" | "staff" | "managing">,
): Promise<ForwardedByManager> {
  const attached = await Promise.all(forwardedIn(bytes).map(async (one) => (await readHeader(one)).from));
  // What he quotes of himself or of us, and a header that names no address beside no sheet, is no buyer's letter.
  const inline = forwardedInline(text, subject).filter(
    (one) =>
      one.bySubject === undefined ||
      (one.from === undefined ? sheets.length > 0 : one.from !== from && !ours.includes(one.from)),
  );
  if (attached.length + inline.length === 0) return { forwarded: { kind: "no" } };
  const [buyer, ...others] = new Set([...attached, ...inline.map((one) => one.from)]);
  const isOurs = [...ours, ...staff, ...managing.map(({ manager }) => manager.address), from].includes(buyer);
  if (buyer === undefined || others.length > 0 || isOurs)
    return {
      forwarded: { kind: "unclear", why: "a manager forwarded it, and it is not clear whose letter it was" },
    };
  const forwarded: Forwarded = { kind: "of", buyer };
  const [first] = inline;
  if (first === undefined) return { forwarded, apart: { writer: "", manager: text } };
  const { above, text: writer } = first;
  return { forwarded, text: [above, writer].join("\n\n").trim(), apart: { writer, manager: above } };
}

/** Why sheets that a manager forwards may not touch the orders of their buyer; undefined if all are the manager's. */
export async function notManaged(
  buyer: string,
  sheets: readonly Sheet[],
  own: readonly Managing[],
  { store, rules }: Desk,
): Promise<string | undefined> {
  if (sheets.length === 0) return "a manager forwarded it, and no sheet came with it";
  const byOrder = Map.groupBy(sheets, ({ order = "" }) => orderKey(order));
  const { orders } = await store.buyers.stateOf(buyer, [...byOrder.keys()]);
  const areAll = [...byOrder].every(([key, some]) => {
    const before = orders.find(({ number }) => orderKey(number) === key)?.sheets ?? [];
    return own.some((one) => one === managerOfSheets(buyer, [...before, ...some], rules.managing));
  });
  return areAll ? undefined : "a manager forwarded it, and it brings orders that another manages, or nobody";
}

/**
 * Whether the desk writes to the buyer of a forwarded letter. A manager must not make it write to strangers: the
 * settings name the buyer, or he has been answered before and has an order of this manager.
 */
export async function mayWriteTo(
  buyer: string,
  own: readonly Managing[],
  { store, rules }: Desk,
): Promise<boolean> {
  if (own.some((one) => one.buyer !== undefined && isOf(buyer, one.buyer))) return true;
  if (!(await store.buyers.knows(buyer))) return false;
  const { orders } = await store.buyers.stateOf(buyer, []);
  return orders.some(({ sheets }) =>
    own.some((one) => one === managerOfSheets(buyer, sheets, rules.managing)),
  );
}

/** The answers of ours that a manager may give his word about: all of their orders are his, and one buyer's. */
export async function answeredForManager(
  answered: readonly Answered[],
  own: readonly Managing[],
  { store, rules }: Desk,
): Promise<{ readonly buyer: string; readonly goesOn: readonly Answered[] } | undefined> {
  const [first] = answered;
  if (first === undefined || own.length === 0) return undefined;
  const { buyer } = first;
  if (answered.some((one) => one.buyer !== buyer || one.why !== undefined)) return undefined;
  const numbers = [...new Set(answered.flatMap(({ orders }) => orders))];
  const { orders } = await store.buyers.stateOf(buyer, numbers);
  const keys = new Set(numbers.map(orderKey));
  const about = orders.filter(({ number }) => keys.has(orderKey(number)));
  const isManaged = ({ sheets }: { readonly sheets: readonly Sheet[] }): boolean =>
    own.some((one) => one === managerOfSheets(buyer, sheets, rules.managing));
  return about.length > 0 && about.every(isManaged) ? { buyer, goesOn: answered } : undefined;
}

import { takeNote } from "../../../src/intake/check-note.ts";
import type { Desk } from "../../../src/intake/desk.ts";
import { takeDue, takeLetter } from "../../../src/intake/take.ts";
import type { Outgoing } from "../../../src/ports/sender.ts";
import type { Act } from "../../../src/trade/note.ts";
import type { LetterRecord, OrderRecord } from "../../../src/trade/record.ts";
import { aloneAt, deviceIn, plateOf, type QuickLetter, type QuickSheet, quickBytes } from "../quick.ts";
import { type Ledger, type Number, numbers, people, type Typed, type Who } from "./ledger.ts";

export function sheetOf({ spot, legend, badPhone }: Typed, order: Number): QuickSheet {
  const [mark = "", what = ""] = spot.split(" ");
  const more = { order_number: order, ...(badPhone ? { contact_phone: "12" } : {}) };
  if (what === "plate") return plateOf(mark, 2, more);
  if (what === "alone") return aloneAt(mark, legend, more);
  return deviceIn(mark, Number(what), 2, legend, more);
}

export interface Story {
  readonly desk: Desk;
  readonly ledger: Ledger;
  /** Where packages are put. */
  readonly packages: string;
  /** What the engraving room was told. */
  readonly alarms: Outgoing[];
}

export const at = (minute: number): Date => new Date(Date.UTC(2026, 10, 9, 14, minute));

export const authority = "mx.quillgate.example";

/** A letter of which our mail server found out that its sender's domain sent it. */
export function provedBytes(letter: QuickLetter, who: Who): Uint8Array {
  const domain = people[who].split("@")[1];
  const found = `Authentication-Results: ${authority}; dkim=pass header.d=${domain}\r\n`;
  return Buffer.concat([Buffer.from(found), quickBytes(letter)]);
}

export async function recordOf({ store }: Desk, number: Number): Promise<OrderRecord | undefined> {
  return (await store.orders.named(number))[0];
}

/** The letter about an order that was answered last. */
export async function lastAnswered(desk: Desk, number: Number): Promise<LetterRecord | undefined> {
  const order = await recordOf(desk, number);
  return [...(order?.letters ?? []), ...(order?.replies ?? [])]
    .filter(({ answer, why }) => answer !== undefined && why === undefined)
    .toSorted((a, b) => a.letter - b.letter)
    .at(-1);
}

export async function post(
  { desk, ledger }: Story,
  who: Who,
  letter: Pick<QuickLetter, "sheets" | "scans" | "text"> & { readonly to?: LetterRecord | undefined },
): Promise<{ readonly letter: number; readonly quick: QuickLetter }> {
  const n = ledger.sent.length;
  const { to, ...rest } = letter;
  const quick: QuickLetter = {
    id: `letter-${n}`,
    from: people[who],
    dated: at(ledger.minute),
    receivedAt: at(ledger.minute),
    ...rest,
    ...(to?.answer === undefined ? {} : { inReplyTo: to.answer.messageId }),
  };
  ledger.sent.push(quick);
  const taken = await takeLetter(desk, provedBytes(quick, who), quick.receivedAt);
  while (await takeDue(desk));
  return { letter: taken.letter, quick };
}

let noted = 0;

/** Takes a note of one of our own people; false if it cannot be taken. */
export async function note({ desk }: Story, order: Number, act: Act): Promise<boolean> {
  const record = await recordOf(desk, order);
  if (record === undefined) return false;
  const { buyer } = record;
  const by = { by: "Rosa Imhoff", why: "they said so" };
  const { kind } = await takeNote(desk, { id: `a${++noted}`, buyer, order, ...by, acts: [act] });
  while (await takeDue(desk));
  return kind === "judged";
}

/** All that the record has of the buyer's orders. */
export async function snapshot(desk: Desk): Promise<string> {
  const records = await Promise.all(numbers.map((number) => recordOf(desk, number)));
  return JSON.stringify(records);
}

export async function allLetters({ store }: Desk): Promise<LetterRecord[]> {
  const states = await store.letters.states();
  const count = Object.values(states).reduce((sum, some) => sum + some, 0);
  return Promise.all(Array.from({ length: count }, (_, n) => store.letters.read(n + 1)));
}

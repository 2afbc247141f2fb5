import { senderUnproven } from "../checks/letter/sender-unproven.ts";
import { mailboxOf } from "../checks/mailbox.ts";
import type { By } from "../ports/store.ts";
import type { LetterRecord } from "../trade/record.ts";
import type { Desk } from "./desk.ts";
import type { Said } from "./settle.ts";
import { laneOf } from "./take.ts";

/** Lets in a letter that was held: a copy of it is judged as a letter of this sender, and answered. */
export async function letIn(desk: Desk, record: LetterRecord, by: By, as?: string): Promise<Said> {
  const { store, clock, rules } = desk;
  const { letter } = record;
  const against = againstLettingIn(record);
  if (against !== undefined) return { done: false, words: against };
  const sender = (as ?? record.from)?.trim().toLowerCase();
  if (sender === undefined)
    return { done: false, words: "The letter has no single sender: say whose it is, with an address." };
  const why = againstSender(sender, desk);
  if (why !== undefined) return { done: false, words: why };
  const lane = laneOf(sender, rules.sharedDomains);
  const copy = await store.letters.letIn(
    letter,
    { sender, ...(lane === undefined ? {} : { lane }) },
    by,
    clock.now(),
  );
  return copy === undefined
    ? { done: false, words: `Letter ${letter} was let in before.` }
    : { done: true, words: `Let in as letter ${copy} of ${sender}. The worker judges and answers it.` };
}

/** Why a letter cannot be let in; undefined for one that was held or filed in silence. */
export function againstLettingIn({
  letter,
  state,
  problems,
  isNote,
  isErased,
}: LetterRecord): string | undefined {
  if (isErased === true) return `Letter ${letter} is erased.`;
  if (isNote === true) return `Letter ${letter} is a note of one of us; nobody has sent it.`;
  if (state === "received") return `Letter ${letter} is not judged yet. Wait until it is.`;
  const isHeld =
    state === "held" || state === "silent" || problems.some(({ check }) => check === senderUnproven.id);
  return isHeld ? undefined : `Letter ${letter} was taken; there is nothing to let in.`;
}

/** Why a letter cannot count as this sender's: its answer would go nowhere, or to ourselves. */
function againstSender(sender: string, { rules, from }: Desk): string | undefined {
  if (!["ordinary", "odd"].includes(mailboxOf(sender).kind)) return `“${sender}” is no e-mail address.`;
  return [...rules.ours, from.address.toLowerCase()].includes(sender)
    ? `${sender} is our own address: say whose letter it is.`
    : undefined;
}

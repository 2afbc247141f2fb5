import { composeMessage, type Words } from "../answer/message.ts";
import type { Report } from "../judging/report.ts";
import type { Outcome } from "../ports/store.ts";
import type { Note } from "../trade/note.ts";
import { messageIdOf } from "./compose.ts";
import type { Desk } from "./desk.ts";
import { noteKey } from "./note-answer.ts";

/** A report on nothing: a note that only has a letter sent judges no order. */
const nothing: Report = {
  verdict: "pass",
  files: [],
  sheets: [],
  orders: [],
  problems: [],
  earlier: [],
  replaced: [],
  late: [],
  untouched: [],
  withdrawn: [],
  held: false,
};

/** Has a letter sent that is about no one order. Without one, the settings no longer ask for it. */
export async function noteLetter(
  { store, clock, from, secret }: Desk,
  note: Note,
  letter: { readonly recipient: string; readonly words: Words } | undefined,
): Promise<Outcome> {
  const { version } = await store.buyers.stateOf(note.buyer, []);
  const outcome = {
    letter: { subject: note.why, references: [], text: "", attachments: [] },
    report: nothing,
    buyer: note.buyer,
    version,
    changes: [],
    by: note.by,
  };
  if (letter === undefined) return { ...outcome, state: "silent", why: "the settings no longer ask for it" };
  const { recipient, words } = letter;
  const messageId = messageIdOf(noteKey(note), from.address, secret);
  const envelope = {
    from,
    to: recipient,
    date: clock.now(),
    messageId,
    references: [],
    auto: "auto-generated",
  } as const;
  const bytes = await composeMessage(envelope, words);
  return { ...outcome, state: "ready", answer: { messageId, recipient, subject: words.subject, bytes } };
}

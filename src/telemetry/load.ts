import type { Load } from "../ports/load.ts";
import type { Sender, Sending } from "../ports/sender.ts";

/** What a desk has to do and has done since it was started, for whoever watches it. */
export interface Watched extends Load {
  /** Since when the oldest letter lies in each mailbox; undefined where none does. */
  readonly oldest: () => ReadonlyMap<string, Date | undefined>;
  /** How often the answers of each outcome. */
  readonly answers: () => ReadonlyMap<Sending["kind"], number>;
  /** A sender whose answers are counted. */
  readonly counted: (sender: Sender) => Sender;
}

export function openLoad(): Watched {
  const mailboxes = new Map<string, () => Date | undefined>();
  const answers = new Map<Sending["kind"], number>(
    (["sent", "refused", "later", "unknown"] as const).map((kind) => [kind, 0]),
  );
  return {
    lies: (mailbox, oldest) => void mailboxes.set(mailbox, oldest),
    oldest: () => new Map([...mailboxes].map(([name, oldest]) => [name, oldest()])),
    answers: () => answers,
    counted: (sender) => ({
      ...sender,
      async send(answer) {
        const sending = await sender.send(answer);
        answers.set(sending.kind, (answers.get(sending.kind) ?? 0) + 1);
        return sending;
      },
    }),
  };
}

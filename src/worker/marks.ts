import type { Mail, Mark } from "../ports/mailbox.ts";

/** The letters of a mailbox that are begun. */
export interface Begun {
  /** Begins a letter; gives what to call when it is done with. */
  readonly begin: (mail: Pick<Mail, "mark" | "receivedAt">) => () => Promise<void>;
  /** When the first was received that is not done with. */
  readonly oldest: () => Date | undefined;
}

/**
 * Moves the mark of a mailbox behind each letter that is done with, once all before it are. Letters are begun in the
 * order of the mailbox and done with in any.
 */
export function openMarks(set: (mark: Mark) => Promise<void>): Begun {
  const begun: { readonly mail: Pick<Mail, "mark" | "receivedAt">; isDone: boolean }[] = [];
  return {
    begin(mail) {
      const one = { mail, isDone: false };
      begun.push(one);
      return async () => {
        one.isDone = true;
        let last: Mark | undefined;
        while (begun[0]?.isDone) last = begun.shift()?.mail.mark ?? last;
        if (last !== undefined) await set(last);
      };
    },
    oldest: () => begun[0]?.mail.receivedAt,
  };
}

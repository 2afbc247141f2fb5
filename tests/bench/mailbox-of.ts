import type { Mail, Mailbox } from "../../src/ports/mailbox.ts";
import type { Outgoing, Sender } from "../../src/ports/sender.ts";
import { nameOf } from "./desk-for.ts";

/** A mailbox in memory that letters are delivered to. It gives them one by one, as they are asked for. */
export function openMailboxOf(name: string): Mailbox & { readonly deliver: (bytes: Uint8Array) => void } {
  const lying: Mail[] = [];
  let uid = 0;
  let rung = Promise.withResolvers<void>();
  return {
    name,
    deliver(bytes) {
      lying.push({
        name: `${name}/${++uid}`,
        size: bytes.length,
        receivedAt: new Date(),
        mark: { validity: "1", uid },
        bytes: () => Promise.resolve(bytes),
        shelve: () => Promise.resolve(),
      });
      rung.resolve();
    },
    async *letters({ signal }) {
      signal.addEventListener("abort", () => rung.resolve());
      while (!signal.aborted) {
        const mail = lying.shift();
        if (mail !== undefined) yield mail;
        else {
          await rung.promise;
          rung = Promise.withResolvers<void>();
        }
      }
    },
    close: () => Promise.resolve(),
  };
}

/** A sender that sends nothing and tells which letter was answered. */
export function tellingSender(): Sender & {
  readonly answered: (letter: Uint8Array) => Promise<void>;
  readonly count: () => number;
} {
  const answers = new Map<string, PromiseWithResolvers<void>>();
  let count = 0;
  const of = (name: string) => {
    const found = answers.get(name) ?? Promise.withResolvers<void>();
    answers.set(name, found);
    return found;
  };
  return {
    send: ({ bytes }: Outgoing) => {
      count++;
      of(nameOf(bytes, "in-reply-to")).resolve();
      return Promise.resolve({ kind: "sent", words: "250 told" });
    },
    find: () => Promise.resolve(false),
    answered: (letter) => of(nameOf(letter)).promise,
    count: () => count,
  };
}

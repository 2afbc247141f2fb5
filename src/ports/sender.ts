/** A finished answer. The bytes are what is sent, to its recipient, to those who get a copy, and to no other. */
export interface Outgoing {
  readonly messageId: string;
  readonly recipient: string;
  /** Who gets the same bytes in the same transaction. An answer whose copy is refused is sent all the same. */
  readonly copies?: readonly string[];
  readonly bytes: Uint8Array;
}

/**
 * What became of it. `later`: certainly not sent, try again. `unknown`: it may or may not have gone;
 * never send again before `find` has looked.
 */
export type Sending =
  | {
      readonly kind: "sent";
      readonly words: string;
      /** Those of its copies that were refused, and the server's words. They are not sent again. */
      readonly unreached?: string;
    }
  | { readonly kind: "refused" | "later" | "unknown"; readonly words: string };

export interface Sender {
  /** Signs in and sends nothing. Rejects when answers could not be sent just now. */
  readonly tryOut?: () => Promise<void>;
  readonly send: (answer: Outgoing) => Promise<Sending>;
  /**
   * Whether an answer with this Message-ID went out. Undefined if nobody can ever see that. Rejects if it cannot be
   * seen just now.
   */
  readonly find: (messageId: string) => Promise<boolean | undefined>;
}

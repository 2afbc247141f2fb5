/** A finished answer. The bytes are what is sent, to this one recipient and no other. */
export interface Outgoing {
  readonly messageId: string;
  readonly recipient: string;
  readonly bytes: Uint8Array;
}

/**
 * What became of it. `later`: certainly not sent, try again. `unknown`: it may or may not have gone;
 * never send again before `find` has looked.
 */
export type Sending =
  | { readonly kind: "sent"; readonly words: string }
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

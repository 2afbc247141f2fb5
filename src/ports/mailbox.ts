/** A letter as it lies in a mailbox. */
export interface Mail {
  /** What the mailbox calls it, for the log alone; it proves nothing. */
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly receivedAt: Date;
}

export interface Mailbox {
  /** The letters that lie there, oldest first. Seeing one twice does no harm. */
  readonly letters: () => AsyncIterable<Mail>;
}

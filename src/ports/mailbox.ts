/** How far a mailbox has been handled: every letter up to `uid` under this UIDVALIDITY. */
export interface Mark {
  readonly validity: string;
  readonly uid: number;
}

/** What a letter came to, for people who look into the mailbox. */
export type Shelf = "passed" | "to-correct" | "waiting" | "person" | "silent";

/** A letter as it lies in a mailbox. */
export interface Mail {
  /** What the mailbox calls it, for the log alone; it proves nothing. */
  readonly name: string;
  /** In bytes, as the mailbox says. */
  readonly size: number;
  readonly receivedAt: Date;
  /** The whole letter; undefined when it is gone meanwhile (moved or deleted by people). */
  readonly bytes: () => Promise<Uint8Array | undefined>;
  /**
   * Puts the letter on its shelf: a keyword and, if the settings say so, a move. May be done again. It is no error if
   * the letter is gone, or if the server can do neither.
   */
  readonly shelve: (shelf: Shelf) => Promise<void>;
  /** Where the mailbox stands once this letter is handled; absent for a mailbox without UIDs. */
  readonly mark?: Mark;
}

export interface Mailbox {
  readonly name: string;
  /** By its name other workers mean the same mailbox, so that one of them watches it. */
  readonly isShared?: true;
  /**
   * The letters after `since`, oldest first. With `once` it ends when none is left. Otherwise it waits for new ones
   * (IDLE and polling), comes back after lost connections, and ends with the signal.
   */
  readonly letters: (options: {
    readonly since?: Mark;
    readonly once: boolean;
    readonly signal: AbortSignal;
    /** Is called when the mailbox was looked at, whether or not there was something new. */
    readonly looked?: () => void;
    /** Is called when it cannot be looked at just now, with the reason; no addresses. */
    readonly failed?: (why: string) => void;
  }) => AsyncIterable<Mail>;
  readonly close: () => Promise<void>;
}

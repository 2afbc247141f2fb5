/** What lies undone in the mailboxes of a worker. */
export interface Load {
  /** Tells how to find when the oldest letter was received that lies undone in a mailbox. */
  readonly lies: (mailbox: string, oldest: () => Date | undefined) => void;
}

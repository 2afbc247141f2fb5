import type { Attachment } from "./attachment.ts";

/** One e-mail as it was read. Absent headers are absent. */
export interface Letter {
  /** The one address in From, lower case; absent when there is none or more than one. */
  readonly from?: string;
  readonly fromName?: string;
  /** The one address in Reply-To, lower case. */
  readonly replyTo?: string;
  readonly subject: string;
  /** From the Date field. The mailbox's own time of arrival is kept beside the letter. */
  readonly date?: Date;
  readonly messageId?: string;
  readonly inReplyTo?: string;
  readonly references: readonly string[];
  /**
   * The text as plain words. Empty if its page of HTML strikes out or hides words, or says more than the plain text.
   */
  readonly text: string;
  /** The text cannot be known for certain, since its page of HTML strikes words out or hides some. */
  readonly textUnsure?: true;
  /** Other texts that a person may see: its page of HTML if that says more, and the texts of forwarded letters. */
  readonly otherTexts?: readonly string[];
  readonly attachments: readonly Attachment[];
}

/** When a letter came. */
export interface Came {
  /** When the mailbox had it. */
  readonly receivedAt: Date;
  /** What its own Date field says. */
  readonly dated?: Date;
}

/** Letters by their numbers, as they stand in the ids of their files. */
export type Arrivals = ReadonlyMap<string, Came>;

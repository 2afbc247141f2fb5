import MailComposer from "nodemailer/lib/mail-composer";

/** Everything about an answer that is not its words. */
export interface Envelope {
  readonly from: { readonly name: string; readonly address: string };
  readonly to: string;
  /** Who gets a copy; whoever reads the answer sees it. */
  readonly copies?: readonly string[];
  readonly date: Date;
  readonly messageId: string;
  /** The letter being answered. */
  readonly inReplyTo?: string;
  readonly references: readonly string[];
  /** RFC 3834 §5: an answer, unless it is sent of our own accord. */
  readonly auto?: "auto-replied" | "auto-generated";
}

/** ECMA-376-1 §12.3.23, from memory: the type of a workbook. */
export const workbookType = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** A file that goes with an answer. */
export interface Enclosure {
  readonly file: string;
  readonly type: "application/pdf" | "image/png" | typeof workbookType;
  readonly bytes: Uint8Array;
  /** For a picture that the page shows: by what the page calls it. RFC 2392 */
  readonly cid?: string;
}

/** By what a page calls a picture within its letter. */
export function cidOf(name: string): string {
  return `${name}@burin`;
}

export interface Words {
  readonly subject: string;
  readonly text: string;
  readonly html?: string;
}

/** An answer as the bytes to be sent (RFC 5322, text and HTML, enclosures). The same input gives the same bytes. */
export function composeMessage(
  envelope: Envelope,
  { subject, text, html }: Words,
  enclosures: readonly Enclosure[] = [],
): Promise<Uint8Array> {
  const { from, to, copies = [], date, messageId, inReplyTo, references, auto = "auto-replied" } = envelope;
  return new MailComposer({
    from: { ...from },
    to: { name: "", address: to },
    ...(copies.length === 0 ? {} : { cc: copies.map((address) => ({ name: "", address })) }),
    date,
    messageId,
    // RFC 5322 §3.6.4: the answered letter's references, then that letter.
    ...(inReplyTo === undefined ? {} : { inReplyTo, references: [...references, inReplyTo] }),
    subject,
    text,
    ...(html === undefined ? {} : { html }),
    attachments: enclosures.map(({ file, type, bytes, cid }) => ({
      filename: file,
      contentType: type,
      content: Buffer.from(bytes),
      ...(cid === undefined ? {} : { cid, contentDisposition: "inline" as const }),
    })),
    headers: {
      // RFC 3834 §5: what a machine has made says so, and asks other machines not to answer it.
      "Auto-Submitted": auto,
      "X-Auto-Response-Suppress": "All",
    },
    baseBoundary: messageId.replaceAll(/[^A-Za-z0-9]/g, ""),
    disableFileAccess: true,
    disableUrlAccess: true,
  })
    .compile()
    .build();
}

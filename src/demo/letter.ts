import MailComposer from "nodemailer/lib/mail-composer";
import type { LetterDescription } from "./describe.ts";

/** A described letter as the bytes that a mailbox would hold. */
export function composeLetter(
  { name, from, date, subject, text }: LetterDescription,
  mail: {
    to: string;
    attachments: readonly { readonly file: string; readonly bytes: Uint8Array }[];
    inReplyTo?: string;
  },
): Promise<Uint8Array> {
  const messageId = `<${name}@${/@([^>]+)/.exec(from)?.[1]}>`;
  return new MailComposer({
    from,
    to: mail.to,
    date: new Date(date),
    messageId,
    ...(mail.inReplyTo === undefined ? {} : { inReplyTo: mail.inReplyTo, references: [mail.inReplyTo] }),
    subject,
    text,
    attachments: mail.attachments.map(({ file, bytes }) => ({ filename: file, content: Buffer.from(bytes) })),
    baseBoundary: name,
    disableFileAccess: true,
    disableUrlAccess: true,
  })
    .compile()
    .build();
}

import MailComposer from "nodemailer/lib/mail-composer";
import type { LetterDescription } from "./describe.ts";
import { photograph } from "./others.ts";

type Described = Pick<LetterDescription, "name" | "from" | "date" | "subject" | "text" | "logo">;

/** A described letter as the bytes that a mailbox would hold. */
export async function composeLetter(
  { name, from, date, subject, text, logo }: Described,
  mail: {
    to?: string;
    attachments: readonly { readonly file: string; readonly bytes: Uint8Array }[];
    inReplyTo?: string;
  },
): Promise<Uint8Array> {
  const messageId = `<${name}@${/@([^>]+)/.exec(from)?.[1]}>`;
  return new MailComposer({
    from,
    ...(mail.to === undefined ? {} : { to: mail.to }),
    date: new Date(date),
    messageId,
    ...(mail.inReplyTo === undefined ? {} : { inReplyTo: mail.inReplyTo, references: [mail.inReplyTo] }),
    subject,
    text,
    ...(logo ? { html: `<pre>${text}</pre><img src="cid:logo">` } : {}),
    attachments: [
      ...mail.attachments.map(({ file, bytes }) => ({ filename: file, content: Buffer.from(bytes) })),
      ...(logo ? [{ filename: "logo.png", cid: "logo", content: Buffer.from(await photograph()) }] : []),
    ],
    baseBoundary: name,
    disableFileAccess: true,
    disableUrlAccess: true,
  })
    .compile()
    .build();
}

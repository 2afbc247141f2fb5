import PostalMime, { type Attachment } from "postal-mime";
import { readLetter } from "../../src/reading/letter/letter.ts";

/** An attachment as another parser finds it, with the forwarded letters around it, the nearest first. */
interface Theirs {
  readonly attachment: Attachment;
  readonly around: readonly Attachment[];
}

/** What another parser calls an attachment of a letter and ours does not give, each in a few words. */
export async function missedOf(bytes: Uint8Array): Promise<string[]> {
  const theirs = (await attachmentsOf(bytes, [])).filter(({ attachment }) => isFile(attachment));
  if (theirs.length === 0) return [];
  const ours = new Set((await readLetter(bytes)).parts.map((part) => plain(part.bytes)));
  // A forwarded letter that holds no file of its sender's is given as a whole.
  return theirs
    .filter(({ attachment, around }) =>
      [attachment, ...around].every((one) => !ours.has(plain(bytesOf(one)))),
    )
    .map(({ attachment: { mimeType, filename, content } }) =>
      [mimeType, filename ?? "without a name", `${bytesOf({ content }).length} bytes`].join(", "),
    );
}

/** Texts without a name are no files, though that parser gives some of them as such; nor is what holds nothing. */
function isFile(attachment: Attachment): boolean {
  const { mimeType, filename, disposition } = attachment;
  const text = /^text|^message\/(?:delivery-status|disposition-notification|feedback-report)$/.test(mimeType);
  const nameless = (filename ?? "") === "" && disposition !== "attachment";
  return bytesOf(attachment).length > 0 && !(text && nameless);
}

async function attachmentsOf(bytes: Uint8Array, around: readonly Attachment[]): Promise<Theirs[]> {
  const { attachments } = await PostalMime.parse(bytes, { forceRfc822Attachments: true });
  const all: Theirs[] = [];
  for (const attachment of attachments) {
    const isLetter = attachment.mimeType === "message/rfc822";
    const inside = isLetter ? await attachmentsOf(bytesOf(attachment), [attachment, ...around]) : [];
    all.push(...(inside.length === 0 ? [{ attachment, around }] : inside));
  }
  return all;
}

function bytesOf({ content }: Pick<Attachment, "content">): Uint8Array {
  return typeof content === "string" ? Buffer.from(content) : new Uint8Array(content);
}

/** Line ends are left out: parsers differ in which of them belong to a text. */
function plain(bytes: Uint8Array): string {
  return Buffer.from(bytes)
    .toString("latin1")
    .replaceAll(/[\r\n]/g, "");
}

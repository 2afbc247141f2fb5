import { type Leaf, leavesOf } from "./mime.ts";

/** What a mail system reports of a letter of ours. */
export interface DeliveryReport {
  /** The letter did not reach its recipient. Otherwise it is late, or was passed on. */
  readonly failed: boolean;
  /** The mail system's own words; "" where it gives none. */
  readonly words: string;
  /** Whom it did not reach, in small letters; none where the report does not say it. */
  readonly recipients: readonly string[];
}

/** Bytes of a letter that are looked through. A report repeats the letter that came back, with its files. */
const most = 2_000_000;

/** Reads a delivery report (RFC 3464 §2.3). A report in free words counts as a failure. */
export function readDeliveryReport(bytes: Uint8Array): DeliveryReport {
  const status = leaves(bytes).find(({ type }) => type === "message/delivery-status");
  if (status === undefined) return { failed: true, words: "", recipients: [] };
  const text = leafText(status).replaceAll(/\r?\n[ \t]+/g, " ");
  const actions = [...text.matchAll(/^action[ \t]*:[ \t]*([a-z]+)/gim)].map(([, action = ""]) =>
    action.toLowerCase(),
  );
  const [, words = ""] = /^diagnostic-code[ \t]*:(?:[^;\r\n]*;)?[ \t]*(.{1,300})/im.exec(text) ?? [];
  // RFC 3464 §2.3: a block of fields for each recipient.
  const recipients = text.split(/\r?\n[ \t]*\r?\n/).flatMap((block) => {
    const [, address] =
      /^(?:original|final)-recipient[ \t]*:[^;\r\n]*;[ \t]*<?([^\s<>]+)/im.exec(block) ?? [];
    return address !== undefined && /^action[ \t]*:[ \t]*failed/im.test(block) ? [address.toLowerCase()] : [];
  });
  return { failed: actions.length === 0 || actions.includes("failed"), words: words.trim(), recipients };
}

/**
 * What a pattern finds in a letter: in its header, and in what it repeats of another. The first group of each match.
 */
export function foundIn(bytes: Uint8Array, form: RegExp): string[] {
  const texts = [head(bytes), ...leaves(bytes).map(leafText)];
  return [...new Set(texts.flatMap((text) => [...text.matchAll(form)].map(([, found = ""]) => found)))].slice(
    0,
    50,
  );
}

/** Whether a letter replies to an invitation: one of its parts does. RFC 5546 §3.2.3 */
export function repliesToInvitation(bytes: Uint8Array): boolean {
  return leaves(bytes).some(
    (leaf) => leaf.type === "text/calendar" && /^METHOD:(REPLY|COUNTER)\s*$/im.test(leafText(leaf)),
  );
}

/** The letters that are forwarded whole in a letter. RFC 2046 §5.2.1 */
export function forwardedIn(bytes: Uint8Array): Uint8Array[] {
  return leavesOf(bytes)
    .filter(({ type }) => type === "message/rfc822" || type === "message/global")
    .map((leaf) => leaf.bytes);
}

function leaves(bytes: Uint8Array): readonly Leaf[] {
  return leavesOf(bytes.subarray(0, most));
}

function head(bytes: Uint8Array): string {
  return Buffer.from(bytes.subarray(0, 65_536)).toString("latin1");
}

function leafText({ bytes }: Leaf): string {
  return Buffer.from(bytes.subarray(0, 262_144)).toString("latin1");
}

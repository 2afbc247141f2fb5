import { numberKey } from "../orders/keys.ts";
import type { Answered } from "../ports/store.ts";
import { readHeader } from "../reading/letter/letter.ts";
import {
  forwardedIn,
  foundIn,
  readDeliveryReport,
  repliesToInvitation,
} from "../reading/letter/machine-report.ts";
import type { ReadFile } from "../trade/attachment.ts";
import type { Letter } from "../trade/letter.ts";
import type { Desk } from "./desk.ts";
import { type MachineReport, noticePrefix, type Refusal } from "./etiquette.ts";

/** A letter that no machine should answer, with what it brings. */
interface Brought {
  readonly refusal: Refusal;
  readonly letter: Letter;
  readonly bytes: Uint8Array;
  readonly files: readonly ReadFile[];
  readonly links: readonly string[];
  /** Nothing but its header was read. */
  readonly unsafe: boolean;
}

/** Characters of a text that are looked through, and numbers that are looked for. */
const mostText = 50_000;
const mostNumbers = 500;

/** Message-IDs that this desk makes, also for its test messages and notices. */
const ownId = String.raw`<burin\.[0-9a-z.-]{1,80}@[^\s<>@]{1,255}>`;

/**
 * Whether a letter may be filed in silence. Only a machine's report that brings nothing may; everything else waits
 * for a person. A report that an answer of ours came back is filed too, and the answered letter then needs a person.
 */
export async function staysSilent(brought: Brought, desk: Desk): Promise<boolean> {
  const { refusal, letter, bytes, unsafe } = brought;
  const answers = repliesToInvitation(bytes) ? "calendar" : undefined;
  const report = refusal.report ?? answers;
  if (report === undefined || unsafe) return false;
  if (report === "own") return isOwn(letter.messageId, desk);
  if (report === "delivery") {
    const back = await cameBack(bytes, letter, desk);
    if (back !== undefined) return back;
  }
  // Some company systems stamp the fields of a list on ordinary letters.
  if (report === "list" && letter.from !== undefined && (await desk.store.buyers.knows(letter.from)))
    return false;
  if (report === "receipt" && !saysRead(refusal, letter.text)) return false;
  return !bringsFiles(brought, answers ?? report) && !(await namesOrder(letter, repeatedIn(bytes), desk));
}

/**
 * Whether it is our own answer, notice or test message, sent back. Our address alone proves nothing, since anybody
 * can write it.
 */
async function isOwn(messageId: string | undefined, { store }: Desk): Promise<boolean> {
  if (messageId === undefined) return false;
  if (messageId.startsWith("<burin.test.")) return true;
  return messageId.startsWith(`<${noticePrefix}`) || (await store.answers.answered([messageId])).length > 0;
}

/** Whether a delivery report about a letter of ours may be filed; undefined if it is about another letter. */
async function cameBack(
  bytes: Uint8Array,
  letter: Letter,
  { store, clock, log }: Desk,
): Promise<boolean | undefined> {
  const ids = foundIn(bytes, new RegExp(`^(?:x-)?(?:original-)?message-id[ \\t]*:\\s*(${ownId})`, "gim"));
  if (letter.inReplyTo !== undefined) ids.push(letter.inReplyTo);
  // A notice came back: the person who should read it does not get it.
  if (ids.some((id) => id.startsWith(`<${noticePrefix}`))) return false;
  const [answered] = await store.answers.answered(ids);
  // The record does not know this letter of ours. Somebody made it up, or the record has lost it.
  if (answered === undefined) return ids.some((id) => /^<burin\.(?!test\.)/.test(id)) ? false : undefined;
  const { failed, words, recipients } = readDeliveryReport(bytes);
  const { copies = [] } = (await store.answers.of(answered.letter)) ?? {};
  const isCopy = recipients.length > 0 && recipients.every((one) => copies.includes(one));
  // The buyer has his answer. Only a manager lacks the copy.
  if (failed && isCopy)
    await store.letters.copyReturned(
      answered.letter,
      `${recipients.join(", ")}: it came back: ${words}`,
      clock.now(),
    );
  else if (failed) {
    const about = answered.from === undefined ? "your answer" : `your answer to ${answered.from}`;
    await store.letters.returned(
      answered.letter,
      `${about} came back${words === "" ? "" : `: ${words}`}`,
      clock.now(),
    );
    log.warn({ letter: answered.letter }, "an answer came back undelivered");
  }
  return true;
}

/** Whether a receipt says that something was read. One that is known by its subject alone has to say so. */
function saysRead({ why }: Refusal, text: string): boolean {
  if (!why.endsWith("(its subject)")) return true;
  return /\b(read|displayed|opened|gelesen|lu|leído)\b/iu.test(text.slice(0, mostText)) || text.trim() === "";
}

/**
 * Whether the sender brings files. A letter that a report repeats does not count, nor does the invitation that is
 * replied to.
 */
function bringsFiles({ files, links }: Brought, report: MachineReport): boolean {
  const passed: Partial<Record<MachineReport, RegExp>> = {
    calendar: /\.ics$/i,
    delivery: /\.eml$/i,
    receipt: /\.eml$/i,
  };
  const own = (name: string): boolean => passed[report]?.test(name) === true;
  const sent = files.filter(
    ({ kind, file }) => kind !== "decoration" && !(["text", "other", "archive"].includes(kind) && own(file)),
  );
  return sent.length > 0 || links.length > 0;
}

/** Subject and words of the letters that a report repeats. */
function repeatedIn(bytes: Uint8Array): string {
  return forwardedIn(bytes)
    .map((one) => {
      const text = Buffer.from(one.subarray(0, mostText)).toString("latin1");
      const end = text.search(/\r?\n\r?\n/);
      return `${/^subject:.*$/im.exec(text)?.[0] ?? ""}\n${end < 0 ? "" : text.slice(end)}`;
    })
    .join("\n");
}

/** Whether a letter speaks of an order: of one in the record, or in words such as “order KF-1001”. */
async function namesOrder(letter: Letter, repeated: string, desk: Desk): Promise<boolean> {
  const ids = [letter.inReplyTo ?? "", ...letter.references.slice(-20)].filter((id) =>
    id.startsWith("<burin."),
  );
  const answered = await desk.store.answers.answered(ids);
  const subject = await withoutOurSubjects(letter.subject, answered, desk);
  // Our own words that come back are not the sender's.
  const own = letter.text.slice(0, mostText).split("\n");
  const text = [
    subject,
    repeated,
    ...own.filter((line) => answered.length === 0 || !line.startsWith(">")),
  ].join("\n");
  if (
    /\b(?:order|purchase order|p\.?o\.?|job)\b[\s#:.]{0,3}(?:(?:no|nr|number)\b[\s#:.]{0,3})?[a-z]{0,8}[-/_ ]?\d/i.test(
      text,
    )
  )
    return true;
  return desk.store.buyers.numbersKnown(numbersIn(text));
}

async function withoutOurSubjects(
  subject: string,
  answered: readonly Answered[],
  { store }: Desk,
): Promise<string> {
  let left = subject;
  for (const { letter } of answered) {
    const answer = await store.answers.of(letter);
    const ours = answer === undefined ? "" : (await readHeader(answer.bytes)).subject;
    if (ours !== "") left = left.replaceAll(ours, " ");
  }
  return left;
}

/**
 * What may be an order number: every word with a digit, and every two words side by side. Given as they are compared.
 */
function numbersIn(text: string): string[] {
  const words = text.match(/[\p{L}\p{N}][\p{L}\p{N}./_#-]{0,40}/gu) ?? [];
  const pairs = words.map((word, i) => `${word}${words[i + 1] ?? ""}`);
  const keys = [...words, ...pairs].filter((word) => /\p{N}/u.test(word)).map(numberKey);
  return [...new Set(keys)].slice(0, mostNumbers);
}

import addressparser from "nodemailer/lib/addressparser";
import type { HeaderLine } from "../trade/header.ts";
import { withoutComments } from "./authentication.ts";

/** What has to be known of a letter before it may be answered. */
export interface Manners {
  readonly headers: readonly HeaderLine[];
  /** The one sender; absent where there is none or more than one. */
  readonly from?: string;
  /** The addresses at which this desk receives letters, in small letters. */
  readonly ours: readonly string[];
  /** Whether the mailbox's server writes Return-Path at delivery. Only then does its absence mean something. */
  readonly returnPathWritten: boolean;
}

/** What a machine reports; nobody waits for an answer to it. */
export type MachineReport = "delivery" | "absence" | "list" | "calendar" | "receipt" | "own";

/** Why a letter must not be answered by a machine; undefined when it may. */
export interface Refusal {
  readonly why: string;
  /** A report may be filed in silence if it brings nothing. Every other letter waits for a person. */
  readonly report?: MachineReport;
}

/** Why a letter must not be answered. A reason that makes it a machine's report comes before any other. */
export function refusalOf(manners: Manners): Refusal | undefined {
  const refusals = rules.flatMap((rule) => rule(manners) ?? []);
  const twice = refusals.find(({ why }) => why.endsWith(moreThanOnce));
  // What bears our own address is ours or forged, whatever else it says.
  const own = refusals.find(({ report }) => report === "own");
  return twice ?? own ?? refusals.find(({ report }) => report !== undefined) ?? refusals[0];
}

/** A header that says a thing twice is not believed. */
const moreThanOnce = "more than once";

/** How the Message-ID of a notice begins. A machine that answers one would be answered without end. */
export const noticePrefix = "burin.notice.";

type Rule = (manners: Manners) => Refusal | undefined;

const onceOnly = new Set([
  "content-transfer-encoding",
  "content-type",
  "date",
  "in-reply-to",
  "message-id",
  "references",
  "reply-to",
  "subject",
]);

const rules: readonly Rule[] = [
  // RFC 3464 §2, RFC 8098 §3, RFC 5965 §2: reports of deliveries, readings and abuse are multipart/report.
  ({ headers }) => {
    const type = (structured(headers, "content-type")[0] ?? "").toLowerCase();
    if (!/^\s*multipart\/report\b/.test(type)) return undefined;
    const why = "it is a report of a mail system (multipart/report)";
    if (/report-type\s*=\s*"?delivery-status\b/.test(type)) return { why, report: "delivery" };
    return /report-type\s*=\s*"?disposition-notification\b/.test(type) ? { why, report: "receipt" } : { why };
  },
  // RFC 5546 §3.2.3, §3.2.7: a reply to an invitation. An invitation itself is for a person.
  ({ headers }) => {
    const type = (structured(headers, "content-type")[0] ?? "").toLowerCase();
    if (!/^\s*text\/calendar\b/.test(type)) return undefined;
    return /method\s*=\s*"?(reply|counter)\b/.test(type)
      ? { why: "it replies to an invitation (text/calendar)", report: "calendar" }
      : { why: "it is an invitation (text/calendar)" };
  },
  // RFC 3834 §2: never answer what a machine sent. §5: the keyword stands before any semicolon.
  ({ headers }) => {
    const said = structured(headers, "auto-submitted").map((value) =>
      (value.split(";")[0] ?? "").trim().toLowerCase(),
    );
    const machines = said.filter((keyword) => keyword !== "no");
    if (machines.length === 0) return undefined;
    const why = "a machine sent it (Auto-Submitted)";
    // What a machine writes of its own accord may be an order.
    return machines.every((keyword) => keyword === "auto-replied") ? { why, report: "absence" } : { why };
  },
  // RFC 5322 §3.6: each of these stands once. A signature covers the lowest, and we would read another.
  ({ headers }) => {
    const names = headers.map(({ name }) => name).filter((name) => onceOnly.has(name));
    const twice = names.find((name, i) => names.indexOf(name) < i);
    return twice === undefined ? undefined : { why: `its header has ${twice} ${moreThanOnce}` };
  },
  // RFC 5321 §4.5.5, RFC 3834 §2: a null return path asks for no answer.
  ({ headers, returnPathWritten }) => {
    const [path] = structured(headers, "return-path");
    if (path?.replaceAll(/\s/g, "") === "<>") return { why: "its return path is empty" };
    return path === undefined && returnPathWritten ? { why: "it has no return path" } : undefined;
  },
  // RFC 2369, RFC 2919: mailing lists; some company systems stamp these on ordinary letters, so a person looks.
  ({ headers }) => {
    const fields = headers.filter(({ name }) => /^list-[a-z-]{1,30}$/.test(name));
    // RFC 2919 §2, RFC 2369 §3.4: a list names itself, and where to write to it.
    const list = fields.find(({ name }) => name === "list-id" || name === "list-post");
    const [field] = fields;
    if (list !== undefined) return { why: `it came through a mailing list (${list.name})`, report: "list" };
    return field === undefined ? undefined : { why: `it came through a mailing list (${field.name})` };
  },
  // RFC 5230 §4.6 with RFC 2076 §3.9: bulk, list and junk.
  ({ headers }) =>
    valuesOf(headers, "precedence").some((value) => /^(bulk|list|junk)\b/i.test(value.trim()))
      ? { why: "it is bulk mail (Precedence)" }
      : undefined,
  // Common practice, no source: what absence programs write there.
  ({ headers }) =>
    valuesOf(headers, "precedence").some((value) => /^auto[_-]?reply\b/i.test(value.trim()))
      ? { why: "it is an automatic reply (Precedence)", report: "absence" }
      : undefined,
  // [MS-OXCMAIL] §2.1.3.2.20: which automatic answers the sender does not want.
  ({ headers }) =>
    valuesOf(headers, "x-auto-response-suppress").some((value) => /\b(all|oof|autoreply)\b/i.test(value))
      ? { why: "it asks for no automatic answer (X-Auto-Response-Suppress)" }
      : undefined,
  // Common practice, no source: what vacation programs and older machines write.
  ({ headers }) => {
    const reply = headers.find(
      ({ name, value }) => absenceFields.has(name) && !/^(no|false|0)$/i.test(value.trim()),
    );
    if (reply !== undefined) return { why: `a machine sent it (${reply.name})`, report: "absence" };
    const mark = headers.find(({ name }) => name === "x-loop" || name === "x-autogenerated");
    return mark === undefined ? undefined : { why: `a machine sent it (${mark.name})` };
  },
  // Common practice, no source: the words with which mail programs begin the subject of a report.
  ({ headers }) => {
    const subject = valuesOf(headers, "subject")[0]?.trim() ?? "";
    const known = reportSubjects.find(({ begins }) => begins.test(subject));
    return known === undefined ? undefined : { why: known.why, report: known.report };
  },
  // Common practice, no source: a mail system's own address, and words that only a mail system writes.
  ({ headers, from = "" }) =>
    /^(mailer-daemon|postmaster)@/.test(from) &&
    /deliver|returned|failure/i.test(valuesOf(headers, "subject")[0] ?? "")
      ? { why: "it is a report of a mail system (its sender and subject)", report: "delivery" }
      : undefined,
  ({ headers }) =>
    ["in-reply-to", "references"].some((name) =>
      valuesOf(headers, name).join(" ").includes(`<${noticePrefix}`),
    )
      ? { why: "it replies to a notice of this desk" }
      : undefined,
  ({ from, ours }) =>
    from !== undefined && ours.includes(from)
      ? { why: "it comes from this desk itself", report: "own" }
      : undefined,
  // RFC 3834 §2, RFC 5230 §4.6: senders that are programs.
  ({ from = "" }) => (isProgram(from) ? { why: "its sender is a program" } : undefined),
  // RFC 5230 §4.5: only letters that name us as a recipient are answered.
  ({ headers, ours }) => {
    const to = ["to", "cc", "resent-to", "resent-cc"].flatMap((name) => valuesOf(headers, name));
    const named = to
      .flatMap((value) => addressparser(value, { flatten: true }))
      .map(({ address }) => address.toLowerCase());
    return named.some((address) => ours.includes(address))
      ? undefined
      : { why: "it does not name this desk as a recipient" };
  },
  ({ from }) => (from === undefined ? { why: "it has no single sender to answer" } : undefined),
];

/** Common practice, no source: fields of absence programs. */
const absenceFields = new Set([
  "x-autoreply",
  "x-auto-reply",
  "x-autorespond",
  "x-autoresponder",
  "x-autoreply-from",
]);

/**
 * Common practice, no source. The words must be followed by a colon or by nothing: people do not begin a subject so.
 */
const reportSubjects: readonly { begins: RegExp; why: string; report: MachineReport }[] = [
  {
    begins:
      /^(automatic reply|auto[- ]?reply|auto(matic)? response|out of( the)? office( auto[- ]?reply)?|automatische antwort|abwesenheitsnotiz|réponse automatique|absence du bureau|respuesta automática|fuera de (la )?oficina)\s*(:|$)/iu,
    why: "it is an absence note (its subject)",
    report: "absence",
  },
  {
    begins: /^(read|not read|gelesen|lu|leído)\s*:/iu,
    why: "it is a read receipt (its subject)",
    report: "receipt",
  },
  {
    begins: /^(accepted|declined|tentative|tentatively accepted)\s*:/iu,
    why: "it replies to an invitation (its subject)",
    report: "calendar",
  },
  {
    begins:
      /^(undeliverable|unzustellbar|non remis)\s*:|^(undelivered mail returned to sender|delivery status notification( \((failure|delay)\))?|mail delivery (failed|failure)(: returning message to sender)?|mail system error - returned mail|failure notice)$/iu,
    why: "it is a report of a mail system (its subject)",
    report: "delivery",
  },
];

function isProgram(address: string): boolean {
  const program =
    /^(mailer-daemon|postmaster|listserv|majordomo|bounces?|owner-.+|.+-(request|owner|bounces?)|(.*[-._])?(no[-._]?reply|do[-._]?not[-._]?reply)([-._].*)?)$/i;
  // A plus sign and what follows it sort the letters of one mailbox (RFC 5233).
  return program.test((address.split("@")[0] ?? "").split("+")[0] ?? "");
}

/**
 * Where an answer goes. RFC 5322 §3.6.2 names Reply-To, but anybody can write any address there. So Reply-To counts
 * only if it is of the sender's own domain and that domain vouches for the letter.
 */
export function answerAddress(
  { from, replyTo }: { readonly from: string; readonly replyTo?: string },
  domain: string | undefined,
  ours: readonly string[],
): string {
  const good =
    replyTo !== undefined &&
    replyTo.split("@")[1] === domain &&
    from.split("@")[1] === domain &&
    !ours.includes(replyTo) &&
    !isProgram(replyTo);
  return good ? replyTo : from;
}

/** The values of a field that has fixed words, without comments. */
function structured(headers: readonly HeaderLine[], name: string): string[] {
  return valuesOf(headers, name).map((value) => withoutComments(value) ?? value);
}

function valuesOf(headers: readonly HeaderLine[], name: string): string[] {
  return headers.filter((line) => line.name === name).map(({ value }) => value);
}

import type { RecentAnswers } from "../ports/store.ts";
import { headerLines } from "../reading/letter/header-lines.ts";
import { readHeader } from "../reading/letter/letter.ts";
import type { Header } from "../reading/letter/letter-header.ts";
import type { Desk, MostAnswers } from "./desk.ts";
import { refusalOf } from "./etiquette.ts";

const hour = 3_600_000;
const day = 24 * hour;

/** How many letters are looked for to find a thread. The latest count. */
const mostReferences = 100;

/** A letter over a limit. It waits for its turn, or for a person if that would take too long. */
export interface TooMany {
  readonly sender: string;
  readonly why: string;
  /** Absent when a person is to look. */
  readonly until?: Date;
}

/**
 * Whether this letter comes after more answers than a desk gives. Letters over the limit wait and are answered later.
 * A person looks when as many wait as are answered in a day, or when one has waited for a day.
 */
export async function tooMany(
  { store, clock, rules }: Desk,
  bytes: Uint8Array,
  waitsSince: Date | undefined,
): Promise<TooMany | undefined> {
  const header = await readHeader(bytes);
  const sender = header.from;
  // A letter that gets no answer breaks no limit.
  if (sender === undefined || isRefused(bytes, sender, rules)) return undefined;
  const now = clock.now().getTime();
  const most = Math.max(...Object.values(rules.mostAnswers));
  const recent = await store.answers.since(new Date(now - day), sender, await threadOf(header, store), most);
  const over = overLimit(recent, rules.mostAnswers, now);
  if (over === undefined) return undefined;
  // A letter that has waited before is itself among those that wait.
  const others = recent.waiting - (waitsSince === undefined ? 0 : 1);
  const isEndless = others >= rules.mostAnswers.toOneADay || now - (waitsSince?.getTime() ?? now) > day;
  return { sender, why: over.why, ...(isEndless ? {} : { until: new Date(over.until) }) };
}

/**
 * The Message-ID that stands for a thread. A reply to an answer of ours has the thread of that answer. Otherwise it
 * is the first reference, or the letter itself.
 */
export async function threadOf(
  { messageId, inReplyTo, references }: Pick<Header, "messageId" | "inReplyTo" | "references">,
  store: Desk["store"],
): Promise<string> {
  const before = [...references.slice(-mostReferences), ...(inReplyTo === undefined ? [] : [inReplyTo])];
  return (await store.answers.threadOf(before)) ?? references[0] ?? inReplyTo ?? messageId ?? "";
}

function isRefused(bytes: Uint8Array, from: string, { ours, returnPathWritten }: Desk["rules"]): boolean {
  return refusalOf({ headers: headerLines(bytes), from, ours, returnPathWritten }) !== undefined;
}

/** The limit that a letter would break, and when it would break none any more. */
function overLimit(
  { toOne, toAll, inThread }: RecentAnswers,
  most: MostAnswers,
  now: number,
): { readonly why: string; readonly until: number } | undefined {
  const limits = [
    {
      times: toOne,
      most: most.toOne,
      span: hour,
      why: "more letters in an hour than one sender is answered",
    },
    { times: toAll, most: most.toAll, span: hour, why: "more answers in an hour than this desk gives" },
    {
      times: toOne,
      most: most.toOneADay,
      span: day,
      why: "more letters in a day than one sender is answered",
    },
    {
      times: inThread,
      most: most.inThreadADay,
      span: day,
      why: "more answers in a day than one thread of letters gets",
    },
  ];
  const broken = limits.flatMap((limit) => {
    const within = limit.times.map((time) => time.getTime()).filter((time) => time > now - limit.span);
    // There is room again once fewer answers than the limit are left in the span.
    const last = within.at(-limit.most);
    return last === undefined ? [] : [{ why: limit.why, until: last + limit.span }];
  });
  return broken.toSorted((a, b) => b.until - a.until)[0];
}

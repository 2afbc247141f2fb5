import type { Rig } from "../rig/rig.ts";
import { fieldOf, query, rowsOf, type Setup } from "./burin.ts";

/** What became of the letters sent. */
export interface Count {
  readonly answered: number;
  /** Neither answered nor waiting for a person. */
  readonly unanswered: number;
  /** Not in the record. */
  readonly lost: number;
  /** Answers that the worker handed over more than once. */
  readonly twice: number;
  readonly person: number;
  readonly personAnswered: number;
  /** Handed over once and delivered more often, which a mail server may do that dies at the wrong moment. */
  readonly redelivered: number;
}

/** Message-ID of a letter → the queue ids under which its answers were handed over, one a copy. */
export type Answers = ReadonlyMap<string, readonly string[]>;

export async function answersIn(rig: Rig, address: string): Promise<Answers> {
  const answers = new Map<string, string[]>();
  for (const letter of await rig.lettersOf(address)) {
    const to = fieldOf(letter, "In-Reply-To");
    if (to === undefined) continue;
    answers.set(to, [...(answers.get(to) ?? []), /with ESMTPSA id (\w+)/.exec(letter)?.[1] ?? "?"]);
  }
  return answers;
}

/** `sent` is the name and the content key of each letter. */
export function count(setup: Setup, sent: ReadonlyMap<string, string>, answers: Answers): Count {
  const rows = new Map(rowsOf(setup).map((row) => [row.key, row]));
  const found = {
    answered: 0,
    unanswered: 0,
    lost: 0,
    twice: 0,
    person: 0,
    personAnswered: 0,
    redelivered: 0,
  };
  for (const [name, key] of sent) {
    const copies = answers.get(`<${name}@brightwire.example>`) ?? [];
    const state = rows.get(key)?.state;
    const handedOver = new Set(copies).size;
    if (state === undefined) found.lost++;
    if (handedOver > 1) found.twice++;
    if (copies.length > handedOver) found.redelivered++;
    if (handedOver > 0) found.answered++;
    if (state === "held") found.person++;
    if (state === "held" && handedOver > 0) found.personAnswered++;
    if (state !== "held" && handedOver === 0) found.unanswered++;
  }
  return found;
}

/** How many letters have come to their end. */
export function finishedIn(setup: Setup): number {
  return rowsOf(setup).filter(({ state }) => ["sent", "held"].includes(state)).length;
}

/** Whether every letter is in the record and nothing is left to be done for any. */
export function isQuiet(setup: Setup, letters: number): boolean {
  const rows = rowsOf(setup);
  return rows.length >= letters && finishedIn(setup) === rows.length;
}

/** Letters that a worker had in hand when it died; `key` differs each time that a letter changes hands. */
export function inHandOf(setup: Setup): readonly { readonly key: string; readonly state: string }[] {
  return query(
    setup.record,
    `select letters.id || '/' || fence as key, state from letters join jobs on jobs.letter = letters.id
     where claimed_until is not null and state in ('received', 'ready', 'sending')`,
  ) as { key: string; state: string }[];
}

/** How often letters have been taken up so far. */
export function claimsOf(setup: Setup): number {
  const [row] = query(setup.record, "select sum(fence) as claims from jobs") as { claims: number }[];
  return row?.claims ?? 0;
}

import { randomUUID } from "node:crypto";
import { areBuyersWords, maySettle } from "../checks/asked.ts";
import type { Act } from "../trade/note.ts";
import type { OrderRecord } from "../trade/record.ts";
import { takeNote } from "./check-note.ts";
import type { Desk } from "./desk.ts";
import type { Behind } from "./link.ts";
import type { Said } from "./settle.ts";

/**
 * The open questions of an order that its sender alone may settle, and words that he may take back; one of each number.
 */
export function answerable({ questions, released }: OrderRecord): OrderRecord["questions"] {
  const seen = new Set<number>();
  return questions.filter(
    ({ number, problem }) =>
      (maySettle(problem) || (released === undefined && areBuyersWords(problem))) &&
      !seen.has(number) &&
      seen.add(number),
  );
}

/** Takes what the sender has answered on the page. The order is judged again at once. */
export async function answerByLink(
  desk: Desk,
  { letter, recipient }: Behind,
  { buyer, number }: OrderRecord,
  acts: readonly Extract<Act, { kind: "yes" | "no" }>[],
): Promise<Said> {
  const note = {
    id: randomUUID(),
    buyer,
    order: number,
    by: recipient,
    why: "answered on the page that our letter leads to",
    acts,
    isSenders: true,
    repliesTo: letter,
  } as const;
  const taken = await takeNote(desk, note);
  if (taken.kind === "wrong") return { done: false, words: `It could not be taken: ${taken.why}.` };
  return {
    done: true,
    words: `Thank you. We have your answer about order ${number}, and write to you how the order stands now.`,
  };
}

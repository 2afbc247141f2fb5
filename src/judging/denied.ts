import { askedWords } from "../checks/asked.ts";
import { projectKey } from "../lettering/glossary.ts";
import { ageOf } from "../orders/age.ts";
import type { KeptWord } from "../trade/kept-word.ts";
import type { KnownQuestion, QuestionOf } from "../trade/question.ts";
import { type BuyerState, orderKey } from "./state.ts";
import type { Submission } from "./submission.ts";

/** A letter that answers. */
interface Answerer extends NonNullable<Submission["letter"]> {
  readonly from: string | undefined;
  /** The latest letter whose answer of ours it replies to. */
  readonly repliesTo: number;
}

/**
 * Whether a letter's YES to a question is held up by a NO. The NO holds against whoever answers an earlier answer of
 * ours, since that did not tell of it. Nobody else holds who said NO himself and now says YES.
 */
export function isDenied(
  { denied = [] }: KnownQuestion,
  { number, came, from, repliesTo }: Answerer,
  { arrivals }: BuyerState,
): boolean {
  const known = new Map([...arrivals, [number, came]]);
  return denied.some(({ letter, by }) => {
    const isOwn = by !== undefined && by === from;
    return repliesTo < letter && !(isOwn && ageOf(`${number}/0`, `${letter}/0`, known) === "newer");
  });
}

/** Kept words without those that are open questions answered NO. `settles`: the questions that are settled now. */
export function withoutDenied(
  kept: readonly KeptWord[],
  { orders }: BuyerState,
  settles: readonly QuestionOf[],
): readonly KeptWord[] {
  const denied = orders.flatMap(({ number, sheets, questions }) => {
    const settled = new Set(
      settles.filter(({ order }) => orderKey(order) === orderKey(number)).map(({ key }) => key),
    );
    const open = questions.filter(
      ({ state, key, denied: no = [] }) => state === "open" && no.length > 0 && !settled.has(key),
    );
    return askedWords(
      open.map(({ problem }) => problem),
      sheets,
    );
  });
  if (denied.length === 0) return kept;
  const keyOf = ({ word, project }: KeptWord): string => `${word} ${projectKey(project)}`;
  const keys = new Set(denied.map(keyOf));
  return kept.filter((one) => !keys.has(keyOf(one)));
}

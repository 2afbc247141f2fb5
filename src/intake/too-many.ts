import type { Desk } from "./desk.ts";

/**
 * Whether this sender, or everybody together, gets more answers than a desk gives in an hour. The last
 * answer within the limit says that a person will look; after it there is none.
 */
export async function tooMany(
  { store, clock, rules }: Desk,
  from: string,
): Promise<{ why: string; mayAnswer: boolean } | undefined> {
  const hourAgo = new Date(clock.now().getTime() - 3_600_000);
  const { toOne, toAll } = await store.answersSince(hourAgo, from);
  if (toAll >= rules.mostAnswers.toAll)
    return { why: "more answers in an hour than this desk gives", mayAnswer: false };
  if (toOne < rules.mostAnswers.toOne - 1) return undefined;
  return {
    why: "more letters in an hour than one sender is answered",
    mayAnswer: toOne < rules.mostAnswers.toOne,
  };
}

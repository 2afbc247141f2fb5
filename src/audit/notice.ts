import { counted } from "../answer/one-line.ts";
import { dateIn, timeIn } from "../calendar/dates.ts";
import type { Waiting } from "./people.ts";
import { peopleLines } from "./people-text.ts";

/** So many things are told of one by one. Of more only the number is told. */
const most = 40;

/**
 * What customer service is told: the people's list with what is new on it first. `fresh` are the letters that nobody
 * was told of before.
 */
export function composeNotice(
  waiting: readonly Waiting[],
  fresh: ReadonlySet<number>,
  now: Date,
  timeZone: string,
): { subject: string; text: string } {
  const isNew = ({ letters }: Waiting): boolean => letters.some((letter) => fresh.has(letter));
  const [news, old] = [waiting.filter(isNew), waiting.filter((one) => !isNew(one))];
  const listed = (title: string, some: readonly Waiting[]): string[] =>
    some.length === 0
      ? []
      : [
          title,
          ...peopleLines(some.slice(0, most), now),
          ...(some.length > most ? [`… and ${some.length - most} more.`] : []),
        ];
  return {
    subject: `${counted(news.length, "thing")} ${news.length === 1 ? "needs" : "need"} a person`,
    text: [
      `What waits for a person on ${dateIn(now, timeZone)} at ${timeIn(now, timeZone)}.`,
      ...listed("NEW", news),
      ...listed("WAITING SINCE EARLIER", old),
      "“burin people” shows this list at any time. This letter comes when something is new, once an hour at most.",
      "",
    ].join("\n\n"),
  };
}

import { oneLine } from "../answer/one-line.ts";
import { table } from "../answer/table.ts";
import { changesOf } from "./changed.ts";
import type { Period } from "./period.ts";
import { sectionsOf } from "./rows.ts";
import { trendsOf } from "./trends.ts";

/** "2026-11-09", or "2026-11-01 to 2026-11-30". */
export function daysOf({ first, last }: Pick<Period, "first" | "last">): string {
  return first === last ? first : `${first} to ${last}`;
}

/** Sentences about a period, each list under its title. */
export function lessonsOf(period: Period): { readonly title: string; readonly says: readonly string[] }[] {
  return [
    { title: "What has changed", says: changesOf(period) },
    { title: "What it teaches", says: trendsOf(period.figures) },
  ]
    .filter(({ says }) => says.length > 0)
    .map(({ title, says }) => ({ title, says: says.map((sentence) => oneLine(sentence, 300)) }));
}

/** A period as text for a terminal or a letter. */
export function periodText(period: Period): string {
  const { timeZone, figures } = period;
  return [
    `${daysOf(period)} (${timeZone}): ${figures.letters === 0 ? "no letter came" : `${figures.letters} letters`}`,
    ...sectionsOf(period).map(({ title, lines, note }) =>
      [
        title,
        table(
          lines.map((line) => line.map((cell) => oneLine(cell, 80))),
          80,
        ),
        ...(note ? [note] : []),
      ].join("\n"),
    ),
    ...lessonsOf(period).map(({ title, says }) => [title, ...says.map((one) => `- ${one}`)].join("\n")),
  ].join("\n\n");
}

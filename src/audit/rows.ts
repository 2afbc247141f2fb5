import type { Figures, Spread } from "./figures.ts";
import { daysBefore, type Period } from "./period.ts";

/** A title, and lines of which the first names the columns. */
export interface Section {
  readonly title: string;
  readonly lines: readonly (readonly string[])[];
}

/** Lines of one table that are shown; the files have all of them. */
const most = 12;

/** The tables of a period, as a terminal, a page and a chart show them. */
export function sectionsOf({ figures, before }: Period): Section[] {
  const tallies = (title: string, what: string, some: Figures["byCheck"]): Section => ({
    title,
    lines: [
      [what, "slips", "orders"],
      ...some.slice(0, most).map(({ name, slips, orders }) => [name, String(slips), String(orders)]),
    ],
  });
  return [
    {
      title: "Figures",
      lines: [["", "now", `a day of the ${daysBefore} business days before`], ...comparison(figures, before)],
    },
    tallies("Slips by check", "check", figures.byCheck),
    tallies("Slips by buyer", "buyer", figures.byBuyer),
    tallies("Slips by field and edition", "field", figures.byField),
    {
      title: "Questions",
      lines: [
        ["check", "asked", "yes", "decided by us", "corrected", "no answer"],
        ...figures.questions
          .slice(0, most)
          .map(({ check, asked, yes, decided, corrected, open }) => [
            check,
            ...[asked, yes, decided, corrected, open].map(String),
          ]),
      ],
    },
    {
      title: "Waits for a person",
      lines: [
        ["what", "hours"],
        ...figures.forPerson.slice(0, most).map(({ name, hours }) => [name, hours.toFixed(1)]),
      ],
    },
  ].filter(({ lines }) => lines.length > 1);
}

function comparison(now: Figures, before: Figures): string[][] {
  const count = (name: string, of: (figures: Figures) => number): string[] => [
    name,
    String(of(now)),
    (of(before) / daysBefore).toFixed(1),
  ];
  const spread = (name: string, unit: string, of: (figures: Figures) => Spread): string[] => [
    name,
    spreadText(of(now), unit),
    spreadText(of(before), unit),
  ];
  return [
    count("letters", ({ letters }) => letters),
    count("sheets", ({ sheets }) => sheets),
    ...(["pass", "waiting", "confirm", "fail", "person"] as const).map((verdict) =>
      count(`letters: ${verdict}`, ({ byVerdict }) => byVerdict[verdict]),
    ),
    count("orders opened", ({ opened }) => opened),
    ["right at the first letter", yieldText(now), yieldText(before)],
    count("orders passed", ({ passed }) => passed),
    spread("letters to pass", "", ({ rounds }) => rounds),
    spread("hours to pass", " h", ({ hoursToPass }) => hoursToPass),
    spread("time to answer", " s", ({ secondsToAnswer }) => secondsToAnswer),
    count("distinct slips", ({ slips }) => slips),
  ];
}

function yieldText({ opened, rightAtFirst }: Figures): string {
  return opened === 0
    ? "no order"
    : `${rightAtFirst} of ${opened} (${Math.round((100 * rightAtFirst) / opened)} %)`;
}

function spreadText({ median, p90 }: Spread, unit: string): string {
  if (median === undefined || p90 === undefined) return "none";
  const text = (value: number): string =>
    `${Number.isInteger(value) ? String(value) : value.toFixed(1)}${unit}`;
  return `median ${text(median)}, p90 ${text(p90)}`;
}

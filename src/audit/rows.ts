import type { Figures, Spread } from "./figures.ts";
import { daysBefore, type Period } from "./period.ts";

/** A title, and lines of which the first names the columns. */
export interface Section {
  readonly title: string;
  readonly lines: readonly (readonly string[])[];
  /** What its figures count, where that is not plain; of how many lines these are the first. */
  readonly note?: string;
  /** Bars of its second column say the same. */
  readonly isDrawn?: true;
}

/** Lines of one table that are shown. */
const most = 12;

const rightNote =
  "Right from the first letter: of the orders opened, those in which nothing was to be mended or asked until they passed, or until these days ended. Sheets still to come, and a manager's word, are no fault.";

/** The tables of a period, as a terminal, a page and a letter show them. */
export function sectionsOf(period: Period): Section[] {
  const { figures } = period;
  const tallies = (title: string, what: string, some: Figures["byCheck"]): Section => ({
    title,
    ...firstOf(
      [what, "slips", "orders"],
      some.map(({ name, slips, orders }) => [name, String(slips), String(orders)]),
    ),
    isDrawn: true,
  });
  return [
    {
      title: "Figures",
      lines: [["figure", "now", usualTitle(period), "change"], ...comparison(period)],
      note: rightNote,
    },
    tallies("Slips by check", "check", figures.byCheck),
    tallies("Slips by buyer", "buyer", figures.byBuyer),
    tallies("Slips by field and edition", "field", figures.byField),
    {
      title: "Questions",
      ...firstOf(
        ["check", "asked", "yes", "settled by us", "corrected", "withdrawn", "no answer"],
        figures.questions.map(({ check, asked, yes, decided, corrected, withdrawn, open }) => [
          check,
          ...[asked, yes, decided, corrected, withdrawn, open].map(String),
        ]),
      ),
      isDrawn: true as const,
    },
    {
      title: "Waits for a person",
      ...firstOf(
        ["what", "hours"],
        figures.forPerson.map(({ name, hours }) => [name, hours.toFixed(1)]),
      ),
    },
  ].filter(({ lines }) => lines.length > 1);
}

/** The first lines of a table under its head, and how many there are where that is not all. */
function firstOf(
  head: readonly string[],
  lines: readonly (readonly string[])[],
): Pick<Section, "lines" | "note"> {
  return {
    lines: [head, ...lines.slice(0, most)],
    ...(lines.length > most ? { note: `The first ${most} of ${lines.length}.` } : {}),
  };
}

function usualTitle({ businessDays }: Period): string {
  const days = businessDays === 1 ? "a business day" : `${businessDays} business days`;
  return `usual for ${days}, by the ${daysBefore} before`;
}

function comparison({ figures: now, before, businessDays }: Period): string[][] {
  const count = (name: string, of: (figures: Figures) => number): string[] => {
    const usual = (of(before) / daysBefore) * businessDays;
    return [name, String(of(now)), usual.toFixed(1), signed(of(now) - usual)];
  };
  const spread = (name: string, unit: string, of: (figures: Figures) => Spread): string[] => {
    const [one, other] = [of(now).median, of(before).median];
    const change = one === undefined || other === undefined ? "" : `median ${signed(one - other)}${unit}`;
    return [name, spreadText(of(now), unit), spreadText(of(before), unit), change];
  };
  const [right, rightBefore] = [rightShare(now), rightShare(before)];
  return [
    count("letters", ({ letters }) => letters),
    ...(["pass", "waiting", "confirm", "fail", "person"] as const).map((verdict) =>
      count(`letters: ${verdict}`, ({ byVerdict }) => byVerdict[verdict]),
    ),
    count("letters: held for a person", ({ held }) => held),
    count("letters: filed in silence", ({ silent }) => silent),
    count("sheets", ({ sheets }) => sheets),
    count("orders opened", ({ opened }) => opened),
    [
      "right from the first letter",
      yieldText(now),
      yieldText(before),
      right === undefined || rightBefore === undefined ? "" : `${signed(right - rightBefore)} points`,
    ],
    count("orders passed", ({ passed }) => passed),
    spread("letters to pass", "", ({ rounds }) => rounds),
    spread("hours to pass", " h", ({ hoursToPass }) => hoursToPass),
    spread("time to answer", " s", ({ secondsToAnswer }) => secondsToAnswer),
    count("distinct slips", ({ slips }) => slips),
  ];
}

/** "+1.5", "−2.0", "0.0". */
function signed(value: number): string {
  const text = Math.abs(value).toFixed(1);
  if (text === "0.0") return text;
  return `${value < 0 ? "−" : "+"}${text}`;
}

/** In hundredths. */
function rightShare({ opened, rightAtFirst }: Figures): number | undefined {
  return opened === 0 ? undefined : (100 * rightAtFirst) / opened;
}

function yieldText(figures: Figures): string {
  const share = rightShare(figures);
  return share === undefined
    ? "no order"
    : `${figures.rightAtFirst} of ${figures.opened} (${Math.round(share)} %)`;
}

function spreadText({ median, p90 }: Spread, unit: string): string {
  if (median === undefined || p90 === undefined) return "none";
  const text = (value: number): string =>
    `${Number.isInteger(value) ? String(value) : value.toFixed(1)}${unit}`;
  return `median ${text(median)}, p90 ${text(p90)}`;
}

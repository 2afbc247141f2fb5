import type { Tally } from "./figures.ts";
import { daysBefore, type Period } from "./period.ts";

/** Fewer slips than these above or below the usual are chance. */
const least = 2;

/** What slips more often than in the business days before, and what less often, in sentences. */
export function changesOf({ figures, before, businessDays }: Period): string[] {
  // A desk that has just begun knows nothing usual.
  if (before.letters === 0) return [];
  const usually = new Map(before.byCheck.map(({ name, slips }) => [name, slips]));
  const now = new Map(figures.byCheck.map(({ name, slips }) => [name, slips]));
  const names = [...new Set([...now.keys(), ...usually.keys()])];
  const moved = names
    .map((name) => ({
      name,
      slips: now.get(name) ?? 0,
      usual: ((usually.get(name) ?? 0) / daysBefore) * businessDays,
    }))
    .filter(
      ({ slips, usual }) => Math.abs(slips - usual) >= least && (slips >= 2 * usual || usual >= 2 * slips),
    )
    .toSorted((a, b) => b.slips - b.usual - (a.slips - a.usual) || a.name.localeCompare(b.name));
  return [
    ...moved.map(
      ({ name, slips, usual }) =>
        `${name}: ${slips} ${slips === 1 ? "slip" : "slips"}, ${slips > usual ? "more" : "fewer"} than the usual ${usual.toFixed(1)}.`,
    ),
    ...newBuyers(figures.byBuyer, before.byBuyer),
  ];
}

/** Buyers with slips who had none in the business days before. */
function newBuyers(now: readonly Tally[], before: readonly Tally[]): string[] {
  const known = new Set(before.map(({ name }) => name));
  return now
    .filter(({ name, slips }) => slips >= least && !known.has(name))
    .map(({ name, slips }) => `${name} had no slip before, and ${slips} now.`);
}

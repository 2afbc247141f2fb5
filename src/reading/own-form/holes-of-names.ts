import type { Place, SheetKind } from "../../trade/place.ts";
import type { Makes } from "../choices.ts";
import { fillHole, holesOf } from "../holes.ts";
import type { Guess } from "./guess.ts";

/** Fields that one line of an edition says: one field, or all that its name with holes stands for. */
export interface Line {
  readonly name: string;
  readonly means: string;
  readonly label: string;
  readonly guesses: readonly [Guess, ...Guess[]];
}

/** Places that are written with holes if all of them are there. */
const patterns = ["row.{face}.{row}", "row.plate.{row}", "plain.{face}"] as const;

/** Guesses → lines of an edition, in the order of the form. Legends are said in one line if their names allow it. */
export function linesOf(guesses: readonly Guess[], form: SheetKind, makes: Makes): Line[] {
  const lines = patterns.flatMap((means) => lineWithHoles(means, guesses, form, makes) ?? []);
  const covered = new Map(lines.flatMap((line) => line.guesses.map((guess) => [guess, line] as const)));
  return guesses.flatMap((guess): Line[] => {
    const line = covered.get(guess);
    if (line !== undefined) return line.guesses[0] === guess ? [line] : [];
    return [{ name: guess.field.name, means: guess.place ?? unknown, label: guess.label, guesses: [guess] }];
  });
}

/** What a field means that nobody knows yet. It is no place, so that the settings ask for it. */
export const unknown = "?";

function lineWithHoles(
  means: (typeof patterns)[number],
  guesses: readonly Guess[],
  form: SheetKind,
  makes: Makes,
): Line | undefined {
  const byPlace = new Map(guesses.map((guess) => [guess.place, guess]));
  const all = holesOf("", means, form, makes).map((hole) => ({
    hole,
    guess: byPlace.get(fillHole(means, hole) as Place),
  }));
  const own = all.flatMap(({ guess }) => guess ?? []);
  const [first, ...others] = own;
  if (first === undefined || own.length < all.length || own.length < 2) return undefined;
  const fits = (text: (guess: Guess) => string) => (template: string) =>
    all.every(({ hole, guess }) => guess !== undefined && fillHole(template, hole) === text(guess));
  const name = templates(first.field.name, means).find(fits(({ field }) => field.name));
  if (name === undefined) return undefined;
  const label = templates(first.label, means).find(fits((guess) => guess.label)) ?? usualLabel(means, form);
  return { name, means, label, guesses: [first, ...others] };
}

/** A name with a hole for each of some of its numbers, in all ways. */
function templates(text: string, means: string): string[] {
  const numbers = [...text.matchAll(/\d+/g)].map(({ index, 0: digits }) => ({
    index,
    end: index + digits.length,
  }));
  const put = (into: string, at: { index: number; end: number }, hole: string): string =>
    into.slice(0, at.index) + hole + into.slice(at.end);
  if (!(means.includes("{face}") && means.includes("{row}"))) {
    const hole = means.includes("{face}") ? "{face}" : "{row}";
    return numbers.map((at) => put(text, at, hole));
  }
  return numbers.flatMap((a, i) =>
    numbers
      .slice(i + 1)
      .flatMap((b) => [put(put(text, b, "{row}"), a, "{face}"), put(put(text, b, "{face}"), a, "{row}")]),
  );
}

function usualLabel(means: string, form: SheetKind): string {
  const face = means.includes("plate") ? "Plate" : form === "device" ? "Button {face}" : "Gang {face}";
  return means.startsWith("plain") ? `${face}: leave plain` : `${face}, row {row}`;
}

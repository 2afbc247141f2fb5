import { type Stroke, strokesFrom } from "./stroke.ts";

/**
 * Accents by combining character, in the units of the font, drawn around the middle of their letter. An accent above
 * keeps four units from the letter's top, which is more than a stroke's width at any height that is cut. One below
 * begins at the baseline.
 */
const above: Readonly<Record<string, readonly Stroke[]>> = {
  // Grave, acute, circumflex, tilde.
  "\u0300": strokesFrom("-3,8.5 2,4"),
  "\u0301": strokesFrom("3,8.5 -2,4"),
  "\u0302": strokesFrom("-4,4 0,8.5 4,4"),
  "\u0303": strokesFrom("-5,4.5 -4,6.3 -2.5,7 -1,6.5 1,5 2.5,4.5 4,5.2 5,7"),
  // Diaeresis, with its dots as the font draws them. Ring, no narrower than a cutter leaves open.
  "\u0308": strokesFrom("-3,5 -4,6 -3,7 -2,6 -3,5; 3,5 2,6 3,7 4,6 3,5"),
  "\u030A": strokesFrom("0,3.5 2,4.3 3,6.2 2,8.1 0,9 -2,8.1 -3,6.2 -2,4.3 0,3.5"),
};
const below: Readonly<Record<string, readonly Stroke[]>> = {
  "\u0327": strokesFrom("0.5,0 -0.5,-2.5 1,-2.8 2,-3.8 1.8,-5.3 0.5,-6.3 -2,-6.3"),
};

/** Whether an accent stands above its letter. An i or j then has no dot. */
export function standsAbove(accent: string): boolean {
  return above[accent] !== undefined;
}

/** The strokes of a letter with an accent over or under them; undefined for an accent that has no shape here. */
export function accented(letter: readonly Stroke[], accent: string): Stroke[] | undefined {
  const shape = above[accent] ?? below[accent];
  if (shape === undefined || letter.length === 0) return undefined;
  const points = letter.flat();
  const xs = points.map(([x]) => x);
  const middle = (Math.min(...xs) + Math.max(...xs)) / 2;
  const foot = standsAbove(accent) ? Math.max(...points.map(([, y]) => y)) : 0;
  return [...letter, ...shape.map((line) => line.map(([x, y]) => [x + middle, y + foot] as const))];
}

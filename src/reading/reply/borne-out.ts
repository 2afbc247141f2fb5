import { understood } from "./tallies.ts";

/** What the named groups of a pattern have found. */
export type Parts = Readonly<Record<string, string | undefined>>;

/** Words without what a pattern finds and `isTrue` bears out. A sign of courtesy stands in its place. */
export function withoutTrue(said: string, pattern: RegExp, isTrue: (parts: Parts) => boolean): string {
  return said.replace(pattern, (whole: string, ...more: unknown[]) => {
    const parts = more.at(-1);
    return isTrue(typeof parts === "object" ? (parts as Parts) : {}) ? ` ${understood.courtesy} ` : whole;
  });
}

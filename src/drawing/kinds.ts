import { palette } from "./blank/canvas.ts";

/** What is to be done about a problem, from the gravest on. */
export const problemKinds = ["fail", "person", "confirm"] as const;
export type ProblemKind = (typeof problemKinds)[number];

/**
 * How an outline of each kind is drawn. More than colour tells them apart: only what must be corrected has an unbroken
 * line. No finish has these colours.
 */
export const outlineLooks = {
  fail: { colour: "#D8005A", dash: [] },
  person: { colour: palette.accent, dash: [2, 2] },
  confirm: { colour: "#B25E00", dash: [6, 3] },
} as const satisfies Record<ProblemKind, object>;

/** What some problems together ask for most. */
export function gravestKind(problems: readonly { readonly kind: ProblemKind }[]): ProblemKind {
  return problemKinds.find((kind) => problems.some((problem) => problem.kind === kind)) ?? "confirm";
}

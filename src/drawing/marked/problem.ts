import { notices } from "../../reading/our-marks.ts";
import type { Place } from "../../trade/place.ts";
import type { Seen } from "../../trade/sheet.ts";
import { palette } from "../blank/canvas.ts";
import { faulty } from "../proof/marks.ts";

/** One problem as a marked copy shows it. */
export interface MarkedProblem {
  /** As in the answer. */
  readonly number: number;
  readonly says: string;
  readonly fix: string;
  readonly kind: ProblemKind;
  /** Where on this sheet. None, if it is about the sheet as a whole. */
  readonly places: readonly Place[];
  /** Where on its pages, if it is in no field. */
  readonly seen?: readonly Seen[];
}

/** What is to be done about a problem, from the gravest on. */
export const problemKinds = ["fail", "person", "confirm"] as const;
export type ProblemKind = (typeof problemKinds)[number];

/** How each kind shows. More than colour tells them apart: only what must be corrected has an unbroken outline. */
export const looks = {
  fail: {
    colour: faulty,
    dash: [],
    asks: "to be corrected",
    notice: notices.fail,
  },
  person: {
    colour: palette.accent,
    dash: [2, 2],
    asks: "one of us is looking at this",
    notice: notices.person,
  },
  confirm: {
    colour: "#B25E00",
    dash: [6, 3],
    asks: "to be confirmed or corrected",
    notice: notices.confirm,
  },
} as const satisfies Record<ProblemKind, object>;

/** What some problems together ask for most. */
export function gravestKind(problems: readonly MarkedProblem[]): ProblemKind {
  return problemKinds.find((kind) => problems.some((problem) => problem.kind === kind)) ?? "confirm";
}

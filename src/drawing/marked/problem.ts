import { notices } from "../../reading/our-marks.ts";
import type { Place } from "../../trade/place.ts";
import type { Seen } from "../../trade/sheet.ts";
import { outlineLooks, type ProblemKind } from "../kinds.ts";

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

/** What the list of a marked copy is called, and what is to be done, by the gravest of its problems. */
const heads = {
  fail: { title: "What to correct", todo: "Correct" },
  confirm: {
    title: "What we ask",
    todo: "Answer in a reply to our letter. To change something, correct",
  },
  person: {
    title: "What one of us looks at",
    todo: "One of us writes to you. To change something, correct",
  },
} as const satisfies Record<ProblemKind, object>;

export function headOf(problems: readonly MarkedProblem[]): (typeof heads)[ProblemKind] {
  const gravest = (["fail", "confirm", "person"] as const).find((kind) =>
    problems.some((problem) => problem.kind === kind),
  );
  return heads[gravest ?? "person"];
}

/** What each kind of problem asks for, and how it shows. */
export const looks = {
  fail: { ...outlineLooks.fail, asks: "to be corrected", notice: notices.fail },
  person: { ...outlineLooks.person, asks: "one of us is looking at this", notice: notices.person },
  confirm: { ...outlineLooks.confirm, asks: "to be confirmed or corrected", notice: notices.confirm },
} as const satisfies Record<ProblemKind, object>;

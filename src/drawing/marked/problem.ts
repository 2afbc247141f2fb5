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

/** What each kind of problem asks for, and how it shows. */
export const looks = {
  fail: { ...outlineLooks.fail, asks: "to be corrected", notice: notices.fail },
  person: { ...outlineLooks.person, asks: "one of us is looking at this", notice: notices.person },
  confirm: { ...outlineLooks.confirm, asks: "to be confirmed or corrected", notice: notices.confirm },
} as const satisfies Record<ProblemKind, object>;

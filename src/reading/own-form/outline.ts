import type { Box } from "../facts.ts";
import type { FormField } from "../form.ts";

/** One place where a field stands on a page. */
export interface Frame {
  /** Counted from 1. */
  readonly page: number;
  readonly box: Box;
  /** What it says on hovering. */
  readonly tip?: string;
  /** What it stands for, if it is a box or a round button. */
  readonly on?: string;
}

/** A field of a form, whether or not it is filled in. */
export interface OutlinedField extends FormField {
  /** None for a field that stands on no page, or on one that was not looked at. */
  readonly frames: readonly Frame[];
  readonly choices?: readonly { readonly value: string; readonly shown: string }[];
  /** The most characters that it takes. */
  readonly most?: number;
  readonly manyLines?: true;
}

/** Words that are printed on a page and belong together. */
export interface Printed {
  readonly page: number;
  readonly box: Box;
  readonly text: string;
}

/** What a form consists of: enough to say what each of its fields may mean. */
export interface FormOutline {
  readonly kind: "form";
  readonly pages: number;
  readonly fields: readonly OutlinedField[];
  readonly printed: readonly Printed[];
  /** So many frames belong to no field with a name. What is typed there cannot be read. */
  readonly nameless: number;
}

/** The outline of a PDF, or why it has none. */
export type Outline =
  | FormOutline
  | { readonly kind: "other" | "locked" | "damaged" | "dynamic" | "portfolio" | "no-fields" };

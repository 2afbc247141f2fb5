import type { Count } from "./count.ts";

/** What somebody says in a letter beside its sheets. */
export type Statement = ForPerson | Counts;

/** How many sheets there are of what. Nothing else is said there. */
export interface Counts {
  readonly kind: "counts";
  readonly counts: readonly Count[];
  /** The sentence, or a table in one line. */
  readonly words: string;
  /** The attached file that says it; absent for the letter's own text. */
  readonly file?: string;
  /** The manager who says it above the buyer's letter, by name. */
  readonly by?: string;
}

/** What a person has to read. */
export type ForPerson =
  | {
      readonly kind: "said";
      /**
       * "answer": an answer to a question of ours, which other words beside it may bind. "reply": words where such an
       * answer was waited for.
       */
      readonly where: "subject" | "text" | "quotation" | "answer" | "reply";
      /** The sentence as it is written, in one line; a long one is cut. */
      readonly words: string;
    }
  /** The same, of the order's manager. */
  | { readonly kind: "said"; readonly where: "manager"; readonly by: string; readonly words: string }
  /** The same, in a text that is attached. */
  | { readonly kind: "said"; readonly where: "file"; readonly file: string; readonly words: string }
  /** What a file is called, with its folders in an archive. */
  | { readonly kind: "said"; readonly where: "name"; readonly words: string }
  /** The text of the letter or of a file cannot be known for certain: words are hidden or struck out. */
  | { readonly kind: "unsure"; readonly file?: string }
  /** The text is too long to be read by a program. */
  | { readonly kind: "long"; readonly file?: string };

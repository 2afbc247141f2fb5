/** What somebody says in a letter beside its sheets, so that a person has to read it. */
export type Statement =
  | {
      readonly kind: "said";
      readonly where: "subject" | "text" | "quotation";
      /** The sentence as it is written, in one line; a long one is cut. */
      readonly words: string;
    }
  /** The text cannot be known for certain: the letter hides words, or strikes them out. */
  | { readonly kind: "unsure" }
  /** The text is too long to be read by a program. */
  | { readonly kind: "long" };

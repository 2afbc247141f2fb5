/** What somebody says in a letter beside its sheets and a person has to read. */
export type Statement =
  | {
      readonly kind: "said";
      readonly where: "subject" | "text" | "quotation";
      /** The sentence as it is written, in one line; a long one is cut. */
      readonly words: string;
    }
  /** The same, in a text that is attached. */
  | { readonly kind: "said"; readonly where: "file"; readonly file: string; readonly words: string }
  /** What a file is called, with its folders in an archive. */
  | { readonly kind: "said"; readonly where: "name"; readonly words: string }
  /** The text of the letter or of a file cannot be known for certain: words are hidden or struck out. */
  | { readonly kind: "unsure"; readonly file?: string }
  /** The text is too long to be read by a program. */
  | { readonly kind: "long"; readonly file?: string };

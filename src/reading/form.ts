/** One field of a PDF form as a reader found it. */
export interface FormField {
  /** Full name, parents joined with dots. */
  readonly name: string;
  readonly kind: "text" | "tick" | "choice" | "signature" | "button";
  /**
   * Text: one value, "" when empty. Tick boxes and radio buttons: the name of the state that is on, none
   * when off. Lists: every selected value. Line ends are "\n".
   */
  readonly values: readonly string[];
}

/** A field on which two readers agree, or both answers where they do not. */
export interface ReadField extends FormField {
  readonly unsure?: { readonly one: string; readonly other: string };
}

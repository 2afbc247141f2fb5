/** A word of a legend, or a row that might be cut off, that its buyer has confirmed: it is right as it stands, on every sheet of the project. */
export interface KeptWord {
  /** In capitals, without accents. */
  readonly word: string;
  /** The project's name; however it is typed, it is the same project. */
  readonly project: string;
}

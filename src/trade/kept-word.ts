/**
 * A word of a legend, or a row that might be cut off, that its buyer has confirmed. It is right as it stands, on
 * every sheet of the project.
 */
export interface KeptWord {
  /** In capitals, without accents. */
  readonly word: string;
  /** The project's name. All ways to type it are one project. */
  readonly project: string;
}

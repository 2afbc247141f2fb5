/**
 * The words of legends that the maker's desk knows. Case and accents of a question do not count. Answers are in
 * capitals.
 */
export interface Words {
  /** A right word, of legends or of a language that the settings name. */
  readonly isWord: (text: string) => boolean;
  /** A word that legends are made of: CHANCEL is, CHANCE is not. */
  readonly isOfLegends: (text: string) => boolean;
  /** What an abbreviation of the trade stands for; nothing if it is none. */
  readonly expansions: (text: string) => readonly string[];
  /** The buyers of this project have confirmed the word. */
  readonly isConfirmed: (text: string, project: string) => boolean;
  /** Right words a slip or two away from a wrong one, the likeliest first. */
  readonly suggest: (text: string) => readonly string[];
  /** Longer words that begin so, the likeliest first. */
  readonly completions: (beginning: string) => readonly string[];
  /**
   * Words that often stand behind this one and begin so, the likeliest first. Without `before` those that stand
   * behind any word.
   */
  readonly followers: (before: string | undefined, beginning: string) => readonly string[];
  /** A word that may have a single letter behind it: STAIR B. */
  readonly isLettered: (text: string) => boolean;
  /** The common word of legends that this right word is one slip away from. */
  readonly likelier: (text: string) => string | undefined;
  /** The word of legends that this word is, with vowels left out on purpose. */
  readonly squeezed: (text: string) => string | undefined;
}

/** What stands around a word. */
export interface Around {
  /** The words of the whole legend before and after it. */
  readonly before: readonly string[];
  readonly after: readonly string[];
  /** The words of the device's other legends. */
  readonly beside: readonly (readonly string[])[];
}

/**
 * The words of legends that the maker's desk knows. Case and accents of a question do not count. Answers are in
 * capitals.
 */
export interface Words {
  /** A right word, of legends or of a language that the settings name. */
  readonly isWord: (text: string) => boolean;
  /** A word that legends are made of: CHANCEL is, CHANCE is not. */
  readonly isOfLegends: (text: string) => boolean;
  /** A word of a language that the settings do not name, and none of legends or of those that they name. */
  readonly isForeign: (text: string) => boolean;
  /** What an abbreviation of the trade stands for; nothing if it is none. */
  readonly expansions: (text: string) => readonly string[];
  /** The buyers of this project have confirmed the word. */
  readonly isConfirmed: (text: string, project: string) => boolean;
  /** What people are called. */
  readonly isName: (text: string) => boolean;
  /**
   * Right words a slip or two away from a wrong one, the likeliest first. For what is `named` as a person is only
   * the common ones.
   */
  readonly suggest: (text: string, named?: boolean) => readonly string[];
  /** Longer words that begin so, the likeliest first. */
  readonly completions: (beginning: string) => readonly string[];
  /**
   * Words that often stand behind this one and begin so, the likeliest first. Without `before` those that stand
   * behind any word.
   */
  readonly followers: (before: string | undefined, beginning: string) => readonly string[];
  /** A word that may have a single letter behind it: STAIR B. */
  readonly isLettered: (text: string) => boolean;
  /** The word of legends that this right word was probably typed for, by itself or by what stands around it. */
  readonly likelier: (text: string, around?: Around) => string | undefined;
  /** The word of legends that this is short for, with letters left out on purpose. */
  readonly shortFor: (text: string) => string | undefined;
  /** Whether two words one behind the other make the name of a room or a thing. */
  readonly isPhrase: (head: string, tail: string) => boolean;
}

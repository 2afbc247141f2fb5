/**
 * Legends that promise something about safety. The lists are our own, made of the trade's words, and no standard's.
 * Their subjects are those of NFPA 70, 79 and 101 and of UL 924, from memory.
 */
export interface Family {
  /** Why a desk that does not know the wiring has to ask. */
  readonly why: string;
  /** Asked about wherever it stands in a legend; a pattern of whole words. */
  readonly anywhere?: string;
  /** Asked about if it is all that a legend says. */
  readonly alone?: string;
  /** Not asked about, although they contain one of the others: a fireplace, an isolation room. */
  readonly harmless?: string;
}

/** What one language says of safety, in capitals without accents. */
export interface Tongue {
  readonly families: readonly Family[];
  /** Words that families know, and what legends make of them: LIGHT is also LTG. */
  readonly shorts: Readonly<Record<string, string>>;
  /** Words that say nothing: EXIT TO THE STAIR. */
  readonly fillers: string;
}

/** What is known of who really sent a letter. */
export type SenderProof =
  /** The domain in From vouches for the letter. */
  | "pass"
  /** The domain says that the letter is not its own. */
  | "fail"
  /** It could not be found out now. */
  | "temporary"
  | "none";

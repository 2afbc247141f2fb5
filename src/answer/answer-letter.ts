/** A letter that gives one answer, for programs that can begin one. */
export interface AnswerLetter {
  /** The words that it consists of, "3 YES". The line that tells how to answer names them. */
  readonly words: string;
  /** A link that begins the letter (RFC 6068). Its subject is the reference, so that it counts as a reply. */
  readonly link: string;
}

/** A letter to the desk at this address that says these words under this reference. */
export function answerLetter(words: string, email: string, reference: string): AnswerLetter {
  // RFC 6068 §2: all but the “@” may be encoded.
  const to = encodeURIComponent(email).replace("%40", "@");
  const subject = encodeURIComponent(`Reference ${reference}`);
  return { words, link: `mailto:${to}?subject=${subject}&body=${encodeURIComponent(words)}` };
}

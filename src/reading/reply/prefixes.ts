import { mayTurn } from "./other-tongues.ts";
import { tokensOf } from "./word-bag.ts";

/** What mail programs and servers put before a subject that is answered or forwarded. */
const known =
  /^(?:\s*(?:re|fwd?|fw|aw|wg|tr|rv|sv|vs|r|i|antw|doorst|odp|pd|res|enc|rif|ref|vb|vl|ynt|ilt|ext|external)(?:\[\d{1,2}\])?\s?[:：]|\s*\[[^\]]{1,20}\]:?)+/iu;

/** What they put before one that is forwarded. */
const forwarding =
  /^\s*(?:\[[^\]]{1,20}\]:?\s*)?(?:fwd?|wg|tr|rv|enc|i|vb|vs|vl|doorst|pd|ilt)(?:\[\d{1,2}\])?\s?[:：]/iu;

/** Whether a subject says that its letter forwards another. */
export function isForwarding(subject: string): boolean {
  return forwarding.test(subject);
}

export function withoutPrefixes(subject: string): string {
  return subject.replace(known, "").trim();
}

/**
 * Whether a subject is the other one with what mail programs add in front. Before the whole of it, a short word and
 * a colon are a prefix in any language. A longer prefix has to be known, and then the end may be cut off.
 */
export function isSubject(given: string, subject: string): boolean {
  const own = tokensOf(subject);
  if (tokensOf(withoutPrefixes(given)).every((token, i) => token === own[i])) return true;
  const [, word = "", rest = ""] = /^\s*(\p{L}{1,6})(?:\[\d{1,2}\])?\s?[:：]\s*(.+)$/u.exec(given) ?? [];
  return word !== "" && !mayTurn(word) && tokensOf(withoutPrefixes(rest)).join(" ") === own.join(" ");
}

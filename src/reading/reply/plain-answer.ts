import type { Token } from "./tokens.ts";
import type { Run } from "./units.ts";

/** Kinds of words that may stand in any turn around numbers and a yes or a no, and change neither. */
const fillers =
  /^(?:Mark|And|Is|Are|It|The|A|My|Your|Label|At|In|Of|All|As|Follows|Say|ISay|Confirm|Confirmed|Good|Says|Person|Boss|We|Pron|Sure|Adv|Ours|Word|Name|Raised|Answer|Mail|Polite|Sender|Smile|So|There|Too|When|Ok|Num|Count|Nth|Thru)$/u;

/**
 * "The customer has confirmed 5, 6 and 7 as YES": an answer whose words stand in no turn that is known. It says nothing
 * but yes, or nothing but no, and names what to.
 */
export function plainAnswerIn(words: readonly Token[]): Run | undefined {
  const kinds = words.map(({ kind }) => kind);
  const [yes, no] = [
    kinds.filter((kind) => kind === "Yes").length,
    kinds.filter((kind) => kind === "No").length,
  ];
  if ((yes > 0 && no > 0) || kinds.some((kind) => kind !== "Yes" && kind !== "No" && !fillers.test(kind)))
    return undefined;
  if (yes + no === 0) return isPraised(kinds) ? { what: "named", is: true } : undefined;
  const says = yes > 0 ? "Yes" : "No";
  const last = kinds.lastIndexOf(says);
  const numbers = kinds.flatMap((kind, at) => (/^(?:Num|Nth)$/u.test(kind) ? [at] : []));
  // "3 yes, 4": the other number may be left open. "No 4" may be number 4.
  const next = numbers.find((at) => at > last);
  const isLoose =
    numbers.some((at) => at < last) && next !== undefined && kinds.slice(last, next).includes("Mark");
  if (isLoose || (no > 0 && /^(?:Num|Count|Nth|Label|Word|Name|Mark)$/u.test(kinds[last + 1] ?? "")))
    return undefined;
  const run = kinds.join(" ");
  // "As in", "is it", "two of them", "for the owner".
  if (/\bAs (?!A\b|Yes\b|No\b)|\b(?:Is|Are) It\b|\b(?:Num|Count) Of\b|\bCount\b/u.test(run)) return undefined;
  if (/\b(?:Person|Boss|We|Pron)\b/u.test(run) && !/\b(?:Says|Say|Confirm|Confirmed)\b/u.test(run))
    return undefined;
  // "3 words", "thanks for 3", "good questions: 3", "is 3 a yes", "so they say".
  if (
    /\bGood It\b|\b(?:Good|Adj) (?:Word|Name) (?:Is|Are)\b|\bNum (?:Word|Name|Label)\b|\bPolite At\b|\bGood Label\b|\bMark (?:The |A |My )?(?:Word|Name)(?: Mark)?$|^(?:Mark |And )*(?:Is|Are)\b/u.test(
      run,
    )
  )
    return undefined;
  if (Math.max(kinds.lastIndexOf("Say"), kinds.lastIndexOf("Says")) > last) return undefined;
  if (/\b(?:Num|Nth) (?:Are|Is) (?:The )?Label\b/u.test(run)) return undefined;
  if (numbers.length > 0) return { what: "named", is: yes > 0 };
  return kinds.includes("All") ? { what: "set", is: yes > 0 } : undefined;
}

/** "The wordings in 2 and 4 are both correct". */
function isPraised(kinds: readonly string[]): boolean {
  const run = kinds.join(" ");
  return (
    /^(?:(?:And|Too|The|A|My|Your|Label|At|In|Of|All|Word|Name|Raised|Answer|Mark) )*(?:Num)(?: (?:Mark|And|Num|Label))* (?:Is|Are)(?: (?:All|So|Too|Adv|Sure))* (?:Good|Confirmed)(?: (?:So|Too|Ours|Good|Mark))*$/u.test(
      run,
    ) ||
    // "All is correct as it stands, 1, 2 and 3."
    /^(?:All|It) (?:Is|Are)(?: (?:All|Adv|Sure))* (?:Good|Confirmed)(?: (?:So|Good))* Mark Num(?: (?:Mark|And|Num))*$/u.test(
      run,
    )
  );
}

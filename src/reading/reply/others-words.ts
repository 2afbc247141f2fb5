import { fromIn } from "./leads.ts";
import { tokensOf } from "./word-bag.ts";

/** Who writes and who is answered: their words are no other's. */
interface Known {
  /** The sender's names. */
  readonly names: readonly string[];
  /** The text of our answer, below which our own name stands. */
  readonly answer: string;
}

const forwards =
  /^[-–—\s]*(?:begin )?(?:forwarded|weitergeleitete|message (?:transféré|réexpédié)|mensaje reenviado)(?: message| nachricht)?[-–—:\s]*$/iu;
/** "Eve Marsh:", "From Eve:" above what somebody else says. */
const speaker =
  /^(?:(?:from|von|de) (\p{Lu}[\p{L}.'’-]*(?: \p{Lu}[\p{L}.'’-]*){0,2})|((?!(?:Per|Via|Re) )\p{Lu}[\p{L}.'’-]+(?: \p{Lu}[\p{L}.'’-]+){1,2})) ?:$/u;
/** "Da: 3 YES" names Dana, who answers. */
const isAnswer = /^\W*(?:$|\d|(?:yes|no|ok|okay)(?!\p{L}))/iu;
/** Words that say nothing of who writes. */
const common = new Set([
  "the",
  "of",
  "desk",
  "intake",
  "stations",
  "orders",
  "office",
  "mail",
  "email",
  "info",
]);

/** Whether a line begins what somebody else has written: neither the sender of the reply nor this desk. */
export function beginsOthersWords(line: string, { names, answer }: Known): boolean {
  if (forwards.test(line)) return true;
  const [, labelled, named] = speaker.exec(line) ?? [];
  const who = fromIn(line) ?? labelled ?? named;
  if (who === undefined || isAnswer.test(who)) return false;
  const foot = answer.split(/^-- $/m)[1]?.trim() ?? "";
  const own = new Set(
    [...names, foot.split("\n")[0] ?? "", ...(foot.match(/\S+@\S+/gu) ?? [])].flatMap(wordsOf),
  );
  return !wordsOf(who).some((word) => own.has(word));
}

/** The words of a name or an address, without the last part of a domain. */
const wordsOf = (name: string): string[] =>
  tokensOf(name.replace(/@([\w.-]+)\.\p{L}+/gu, " $1 ").replace(/\./gu, " ")).filter(
    (word) => word.length > 1 && !common.has(word),
  );

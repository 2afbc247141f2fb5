import { headerLines } from "../reading/letter/header-lines.ts";
import type { Managing } from "../trade/manager.ts";
import type { SenderProof } from "../trade/sender-proof.ts";
import type { Desk } from "./desk.ts";
import { type Refusal, refusalOf } from "./etiquette.ts";
import { type Forwarded, forwardedBy } from "./forwarded.ts";
import { forwardedByManager, managedBy, type WordsApart } from "./managers.ts";
import type { OpenedLetter } from "./opened-letter.ts";
import { senderProof } from "./sender.ts";

/** Who sent a letter, and what forbids an answer whatever the letter says. */
export interface SentBy {
  readonly proof: SenderProof | "not asked";
  /** Whose letter it is, if our own staff forwarded it. */
  readonly forwarded: Forwarded;
  readonly refusal?: Refusal;
  /** Whose letter it counts as, if one of our own people has let it in. */
  readonly letIn?: string;
  /** What its sender manages. */
  readonly manages: readonly Managing[];
  /** The words of a letter that its manager forwarded in the text of his own. */
  readonly text?: string;
  /** Whose they are, where a manager forwarded it. */
  readonly apart?: WordsApart;
}

/** One of our own people vouches for the sender. */
export function letInAs(buyer: string): SentBy {
  return { proof: "not asked", forwarded: { kind: "no" }, letIn: buyer, manages: [] };
}

/** Asks who sent a letter, and whether it may be answered at all. */
export async function sentBy(opened: OpenedLetter, bytes: Uint8Array, desk: Desk): Promise<SentBy> {
  const { rules } = desk;
  const { from } = opened.letter;
  const proof = from === undefined ? "not asked" : await senderProof(desk, bytes, from);
  const refusal = refusalOf({
    headers: headerLines(bytes),
    ours: rules.ours,
    returnPathWritten: rules.returnPathWritten,
    ...(from === undefined ? {} : { from }),
  });
  const manages = managedBy(from, proof, rules);
  const forwarded =
    manages.length > 0
      ? await forwardedByManager(opened, bytes, rules)
      : { forwarded: await forwardedBy(rules, { from, bytes }, proof) };
  return { proof, ...forwarded, manages, ...(refusal === undefined ? {} : { refusal }) };
}

import type { SenderProof } from "../trade/sender-proof.ts";
import type { Desk } from "./desk.ts";

/** Whose orders a letter may touch and be told of. */
export interface Party {
  /** The buyer whose orders the letter's sheets belong to; "" when there is no sender. */
  readonly buyer: string;
  /** The sender's domain, where it is proved and belongs to one company. */
  readonly domain?: string;
  readonly mayAnswer: boolean;
  /** Why a person must look first. */
  readonly why?: string;
}

/**
 * The one place where it is decided who may see what: an order belongs to whoever first named its number,
 * and to senders of the same proved domain. Anybody else who names it learns nothing of it, not even that
 * it exists; what they send is kept apart, and a person looks.
 */
export async function partyOf(
  sender: {
    readonly from: string | undefined;
    readonly proof: SenderProof | "not asked";
    readonly numbers: readonly string[];
  },
  { store, rules }: Desk,
): Promise<Party> {
  const { from, proof, numbers } = sender;
  if (from === undefined) return { buyer: "", mayAnswer: false, why: "it has no single sender to answer" };
  // An answer to a forged address would go to somebody who has written nothing.
  if (proof === "fail")
    return { buyer: from, mayAnswer: false, why: "its sender's domain says that it is forged" };
  // Whoever can keep a name server from answering can forge a letter.
  if (proof === "temporary")
    return { buyer: from, mayAnswer: false, why: "it could not be found out who sent it" };
  if (proof === "none" && !(await store.knows(from)))
    return { buyer: from, mayAnswer: false, why: "nothing proves who sent it, and the sender is new" };

  const own = from.split("@")[1] ?? "";
  const domain = proof === "pass" && !rules.sharedDomains.includes(own) ? own : undefined;
  const owners = (await Promise.all(numbers.map((number) => store.ownerOf(number)))).filter(
    (owner) => owner !== undefined,
  );
  const others = owners.filter(({ buyer }) => buyer !== from);
  const [colleague] = others;
  const known = domain === undefined ? {} : { domain };
  if (colleague === undefined) return { buyer: from, mayAnswer: true, ...known };
  // One letter goes to one buyer's orders: numbers of several colleagues are for a person to sort.
  if (
    domain !== undefined &&
    owners.every((owner) => owner.domain === domain && owner.buyer === colleague.buyer)
  )
    return { buyer: colleague.buyer, mayAnswer: true, ...known };
  return { buyer: from, mayAnswer: true, why: "it names an order number of another buyer", ...known };
}

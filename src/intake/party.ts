import type { SenderProof } from "../trade/sender-proof.ts";
import type { Desk } from "./desk.ts";
import type { Forwarded } from "./forwarded.ts";

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
 * The one place where it is decided who may see what. An order belongs to whoever first named its number, and to
 * senders of the same proved domain. Anybody else who names it learns nothing of it, not even that it exists. What
 * they send is kept apart, and a person looks.
 */
export async function partyOf(
  sender: {
    readonly from: string | undefined;
    readonly proof: SenderProof | "not asked";
    readonly numbers: readonly string[];
    /** Whose letter it is, if our own staff forwarded it. */
    readonly forwarded?: Forwarded;
  },
  { store, rules }: Desk,
): Promise<Party> {
  const { from, proof, numbers, forwarded = { kind: "no" } } = sender;
  if (from === undefined) return { buyer: "", mayAnswer: false, why: "it has no single sender to answer" };
  // An answer to a forged address would go to somebody who has written nothing.
  if (proof === "fail")
    return { buyer: from, mayAnswer: false, why: "its sender's domain says that it is forged" };
  // Whoever can keep a name server from answering can forge a letter.
  if (proof === "temporary")
    return { buyer: from, mayAnswer: false, why: "it could not be found out who sent it" };
  if (proof === "none" && !isNamed(from, rules.known)) {
    if (!(await store.buyers.knows(from)))
      return { buyer: from, mayAnswer: false, why: "nothing proves who sent it, and the sender is new" };
    // A sender who is proved as a rule, but not this time, may be somebody else.
    if (await store.buyers.proved(from))
      return {
        buyer: from,
        mayAnswer: false,
        why: "nothing proves who sent it, and other letters of the sender are proved",
      };
  }
  if (forwarded.kind === "unclear") return { buyer: from, mayAnswer: false, why: forwarded.why };
  if (forwarded.kind === "of") return partyOfForwarded(forwarded.buyer, numbers, store);

  const own = from.split("@")[1] ?? "";
  const domain = proof === "pass" && !rules.sharedDomains.includes(own) ? own : undefined;
  const owners = (await Promise.all(numbers.map((number) => store.buyers.ownerOf(number)))).filter(
    (owner) => owner !== undefined,
  );
  const others = owners.filter(({ buyer }) => buyer !== from);
  const [colleague] = others;
  const known = domain === undefined ? {} : { domain };
  if (colleague === undefined) return { buyer: from, mayAnswer: true, ...known };
  // One letter goes to one buyer's orders. If it names numbers of several colleagues, a person sorts them.
  if (
    domain !== undefined &&
    owners.every((owner) => owner.domain === domain && owner.buyer === colleague.buyer)
  )
    return { buyer: colleague.buyer, mayAnswer: true, ...known };
  // The answer to a letter that is held says nothing of any order.
  return { buyer: from, mayAnswer: true, why: anothers, ...known };
}

/**
 * The party of a proved letter whose words name orders of one colleague and of nobody else. To anybody else the words
 * name nothing.
 */
export async function colleagueNamed(
  sender: Parameters<typeof partyOf>[0],
  desk: Desk,
): Promise<Party | undefined> {
  if (sender.proof !== "pass" || sender.numbers.length === 0) return undefined;
  const party = await partyOf(sender, desk);
  return party.why === undefined && party.buyer !== sender.from ? party : undefined;
}

const anothers = "it names an order number of another buyer";

/**
 * The party of a forwarded letter. Our staff vouches for the letter and not for a domain, so it reaches its sender's
 * own orders alone.
 */
async function partyOfForwarded(
  buyer: string,
  numbers: readonly string[],
  store: Desk["store"],
): Promise<Party> {
  const owners = await Promise.all(numbers.map((number) => store.buyers.ownerOf(number)));
  if (owners.some((owner) => owner !== undefined && owner.buyer !== buyer))
    return { buyer, mayAnswer: true, why: anothers };
  return { buyer, mayAnswer: true };
}

/**
 * The party of a letter that one of our own people has let in. Whoever lets in a letter that names an order of one
 * other buyer lets it into that order.
 */
export async function partyLetIn(
  buyer: string,
  numbers: readonly string[],
  { store }: Pick<Desk, "store">,
): Promise<Party> {
  const owners = await Promise.all(numbers.map((number) => store.buyers.ownerOf(number)));
  const buyers = new Set(owners.flatMap((owner) => owner?.buyer ?? []));
  const [owner = buyer, ...others] = buyers;
  if (others.length > 0) return { buyer, mayAnswer: true, why: "it names order numbers of several buyers" };
  return { buyer: owner, mayAnswer: true };
}

/** Whether a list of addresses and domains names a sender. */
function isNamed(from: string, names: readonly string[]): boolean {
  return names.includes(from) || names.includes(from.split("@")[1] ?? "");
}

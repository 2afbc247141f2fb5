import { oneLine } from "../answer/one-line.ts";
import { numbersPerhapsIn } from "../judging/named.ts";
import { orderKey } from "../judging/state.ts";
import type { Answered } from "../ports/store.ts";
import { withCopiesMarked } from "../reading/reply/copies.ts";
import { type LineKey, lineKeysOf } from "../reading/reply/furniture.ts";
import type { Letter } from "../trade/letter.ts";
import type { Desk } from "./desk.ts";
import { answeredForManager, mayWriteTo, notManaged, type WordsApart } from "./managers.ts";
import { allWords } from "./open.ts";
import type { OpenedLetter } from "./opened-letter.ts";
import { colleagueNamed, type Party, partyLetIn, partyOf } from "./party.ts";
import { refersTo, withoutReferences } from "./reference.ts";
import { answerWords, type Quoted, readReply, type Said } from "./reply.ts";
import type { SentBy } from "./sent-by.ts";

/** How many letters of a thread are looked for. The latest count. */
const mostReferences = 100;

/** Whose orders a letter touches, and what it replies to. `why` says why a person must look first. */
export interface Understood extends Said {
  readonly reply: boolean;
  /** The answer of ours that it replies to, if its sender may know of it. */
  readonly quoted?: Quoted;
  /** Keys of its lines that stood in earlier letters of its sender. */
  readonly furniture: ReadonlySet<LineKey>;
  /** Whose its words are, where a manager forwarded it. */
  readonly apart?: WordsApart;
  /** The letter as it is read: without references to our answers, and with what is copied from one marked as such. */
  readonly letter: Letter;
  readonly why?: string;
  /** As whom its sender answers our questions. */
  readonly as: { readonly party: boolean; readonly manager: boolean };
  /** Who of our managers wrote or forwarded it, and whom the answer goes to besides, or instead. */
  readonly manager?: { readonly name: string; readonly says: string; readonly to?: string };
}

/** The names under which lines of a letter are remembered: its sender's, and his company's. */
export function sendersOf({ from }: Letter, { rules }: Desk): string[] {
  const domain = from?.split("@").at(-1);
  if (from === undefined || domain === undefined) return [];
  return rules.sharedDomains.includes(domain) ? [from] : [from, domain];
}

/** Asks the record what a letter is about: whose orders, which answers of ours, which lines came before. */
export async function whatItSays(
  { letter, texts, sheets }: OpenedLetter,
  sender: SentBy,
  desk: Desk,
): Promise<Understood> {
  const numbers = [...new Set(sheets.flatMap(({ order }) => order ?? []))];
  const { proof, forwarded, refusal, letIn, manages } = sender;
  const isForwarded = manages.length > 0 && forwarded.kind === "of";
  const writer = { from: letter.from, proof, numbers, forwarded };
  // A letter of words alone reaches the order that it names, as one with sheets does.
  const perhaps = sheets.length === 0 ? numbersPerhapsIn(allWords({ letter, texts })) : [];
  let party =
    letIn === undefined
      ? ((await colleagueNamed({ ...writer, numbers: perhaps }, desk)) ?? (await partyOf(writer, desk)))
      : await partyLetIn(letIn, numbers, desk);
  if (isForwarded && party.why === undefined) {
    const against = await notManaged(party.buyer, sheets, manages, desk);
    if (against !== undefined) party = { ...party, why: against };
  }
  const why = refusal?.why ?? party.why;
  const thread = [letter.inReplyTo ?? "", ...letter.references.slice(-mostReferences)];
  const inThread = await desk.store.answers.answered(thread);
  const referred = await refersTo(letter, desk);
  const answered = inThread.length > 0 ? inThread : referred;
  // A letter that a person must see first replies to nothing, and confirms no word. So does one that gives the
  // reference of another order than its thread's: nobody knows which it answers.
  const isClear = why === undefined && !isForwarded && !isOfOther(referred, inThread);
  const ours = isClear ? answered : [];
  // A letter that was let in is judged by its sheets. Its replies were for a person, who has read them.
  const own: Said =
    letIn === undefined
      ? await readReply({ letter, answered: ours, proof, party, sheets }, desk)
      : { party, goesOn: [] };
  const managed =
    why === undefined && sheets.length === 0 ? await answeredForManager(ours, manages, desk) : undefined;
  const isParty = own.goesOn.length > 0;
  const said =
    managed === undefined || isParty
      ? own
      : { party: { buyer: managed.buyer, mayAnswer: true }, goesOn: managed.goesOn };
  const furniture = await desk.store.buyers.linesSeen(
    sendersOf(letter, desk),
    lineKeysOf(allWords({ letter, texts })),
  );
  const quoted = ours.length === 0 ? undefined : await answerWords({ letter, answered: ours }, desk);
  return {
    ...said,
    letter: answered.length === 0 ? letter : withoutReferences(withCopies(letter, quoted), desk),
    as: { party: isParty, manager: managed !== undefined },
    ...(await managerIn(said.party, { ...sender, why, isWord: managed !== undefined }, desk)),
    reply: answered.length > 0,
    ...(quoted === undefined ? {} : { quoted }),
    furniture,
    ...(sender.apart === undefined ? {} : { apart: sender.apart }),
    ...(why === undefined ? {} : { why }),
  };
}

/** A letter in which what is copied from our answer is marked. */
function withCopies(letter: Letter, quoted: Quoted | undefined): Letter {
  return quoted === undefined ? letter : { ...letter, text: withCopiesMarked(letter.text, quoted) };
}

/** Whether answers that a letter refers to are about other orders than those of its thread. */
function isOfOther(referred: readonly Answered[], inThread: readonly Answered[]): boolean {
  const ofThread = new Set(inThread.flatMap(({ orders }) => orders.map(orderKey)));
  const named = referred.flatMap(({ orders }) => orders.map(orderKey));
  return ofThread.size > 0 && named.length > 0 && !named.some((order) => ofThread.has(order));
}

/** Whom the answer to a letter of a manager goes to, and what it says of the manager. */
async function managerIn(
  { buyer }: Party,
  {
    manages,
    forwarded,
    why,
    isWord,
  }: SentBy & { readonly why: string | undefined; readonly isWord: boolean },
  desk: Desk,
): Promise<Pick<Understood, "manager">> {
  const name = manages[0]?.manager.name;
  if (name === undefined || why !== undefined) return {};
  if (isWord) return { manager: { name, says: `This answers a letter of ${oneLine(name, 60)}.` } };
  if (forwarded.kind !== "of") return {};
  if (await mayWriteTo(buyer, manages, desk))
    return { manager: { name, to: buyer, says: `${oneLine(name, 60)} forwarded your letter to us.` } };
  const says = `This answer goes to you alone: ${buyer} has not written to this desk about this project. Pass it on, please.`;
  return { manager: { name, says } };
}

import { type AskedWord, askedWords, isAboutWord } from "../checks/asked.ts";
import { projectKey } from "../lettering/glossary.ts";
import type { Answered } from "../ports/store.ts";
import { readKeepLines } from "../reading/reply/keep-lines.ts";
import type { KeptWord } from "../trade/kept-word.ts";
import type { Letter } from "../trade/letter.ts";
import type { SenderProof } from "../trade/sender-proof.ts";
import type { Sheet } from "../trade/sheet.ts";
import type { Desk } from "./desk.ts";
import { type Party, partyOf } from "./party.ts";

/** A letter in the thread of answers of ours, with what has been found out about it. */
export interface Reply {
  readonly letter: Letter;
  /** The letters that those answers were made to. */
  readonly answered: readonly Answered[];
  readonly proof: SenderProof | "not asked";
  /** Whose orders its sheets touch. */
  readonly party: Party;
  readonly sheets: readonly Sheet[];
}

/** Whose orders a letter touches, what it keeps of the words that were asked about, and what it is about. */
export interface Said {
  readonly party: Party;
  readonly kept: readonly KeptWord[];
  /** Numbers of orders that it is about although it may bring no sheet of them. */
  readonly about: readonly string[];
}

/**
 * What a reply says of the orders that were answered for. Words are kept by whoever may go on with those orders,
 * and by nobody else.
 */
export async function readReply(reply: Reply, desk: Desk): Promise<Said> {
  const { letter, sheets } = reply;
  const nothing: Said = { party: reply.party, kept: [], about: [] };
  if (reply.answered.length === 0) return nothing;
  const party = sheets.length > 0 ? reply.party : await partyToAnswered(reply, desk);
  if (party.why !== undefined) return { ...nothing, party: sheets.length > 0 ? party : reply.party };

  // Of a letter that a person had to see first nothing was asked.
  const answered = reply.answered.filter(({ buyer, why }) => buyer === party.buyer && why === undefined);
  const kept = /keep/i.test(letter.text) ? await wordsKept(answered, reply, desk) : [];
  // A reply without sheets is about all that was answered for; one with sheets, about those and what it keeps.
  const about = sheets.length > 0 ? kept.map(({ order }) => order) : answered.flatMap(({ orders }) => orders);
  return { party, kept: onceEach(kept), about: [...new Set(about)] };
}

async function wordsKept(answered: readonly Answered[], reply: Reply, desk: Desk): Promise<AskedWord[]> {
  const { letter } = reply;
  const problems = answered.flatMap((one) => one.problems).filter(isAboutWord);
  const spots = problems.flatMap((problem) => problem.spots.map(({ file }) => file));
  const asked = askedWords(problems, await desk.store.orders.sheets([...new Set(spots)]));
  const said = readKeepLines(letter.text, {
    words: asked.map(({ word }) => word),
    ...(await answerWords(reply, desk)),
    names: [letter.fromName ?? "", letter.from?.split("@")[0] ?? ""],
  });
  return asked.filter(({ word }) => said.words.has(word));
}

/** Who the sender is to the orders that were answered for: a reply without sheets names no number itself. */
function partyToAnswered({ letter, answered, proof }: Reply, desk: Desk): Promise<Party> {
  const numbers = [...new Set(answered.flatMap(({ orders }) => orders))];
  return partyOf({ from: letter.from, proof, numbers }, desk);
}

/** What the answer says that the letter replies to. */
export async function answerWords(
  { letter, answered }: Pick<Reply, "letter" | "answered">,
  { store, reader }: Pick<Desk, "store" | "reader">,
): Promise<{ answer: string; subject: string }> {
  const nearest = answered.find(({ answer }) => answer?.messageId === letter.inReplyTo) ?? answered.at(-1);
  const answer = nearest === undefined ? undefined : await store.answers.of(nearest.letter);
  const opened = answer === undefined ? undefined : await reader.letter(answer.bytes);
  if (opened?.ok !== true) return { answer: "", subject: "" };
  const { text, subject } = opened.value;
  return { answer: text, subject };
}

function onceEach(words: readonly KeptWord[]): KeptWord[] {
  return [...new Map(words.map((kept) => [`${kept.word} ${projectKey(kept.project)}`, kept])).values()].map(
    ({ word, project }) => ({ word, project }),
  );
}

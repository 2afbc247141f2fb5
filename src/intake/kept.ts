import { askedWords, isAboutWord } from "../checks/asked.ts";
import { projectKey } from "../lettering/glossary.ts";
import { plainText } from "../orders/keys.ts";
import type { Answered, Store } from "../ports/store.ts";
import { readKeepLines } from "../reading/reply/keep-lines.ts";
import type { ReadFile } from "../trade/attachment.ts";
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
  readonly files: readonly ReadFile[];
  readonly sheets: readonly Sheet[];
  readonly links: readonly string[];
}

/** What a reply keeps of the words that were asked about, and what follows from that. */
export interface Keeping {
  /** Whose orders the reply touches. */
  readonly party: Party;
  readonly kept: readonly KeptWord[];
  /** Numbers of the orders to judge again, and those of their sheets that count for nothing until now. */
  readonly again: readonly string[];
  readonly stopped: readonly Sheet[];
}

/**
 * Words are kept by whoever may go on with the orders that were asked about, and by nobody else. The orders
 * are judged again where the reply says nothing that a person would have to read.
 */
export async function keepWords(reply: Reply, desk: Desk): Promise<Keeping> {
  const { letter, sheets } = reply;
  const nothing: Keeping = { party: reply.party, kept: [], again: [], stopped: [] };
  if (reply.answered.length === 0 || !/keep/i.test(letter.text)) return nothing;
  const party = sheets.length > 0 ? reply.party : await partyToAnswered(reply, desk);
  if (party.why !== undefined) return nothing;

  const answered = reply.answered.filter(({ buyer }) => buyer === party.buyer);
  const problems = answered.flatMap((one) => one.problems).filter(isAboutWord);
  const spots = problems.flatMap((problem) => problem.spots.map(({ file }) => file));
  const asked = askedWords(problems, await desk.store.sheets([...new Set(spots)]));
  const said = readKeepLines(letter.text, {
    words: asked.map(({ word }) => word),
    ...(await answerWords(reply, desk)),
    names: [letter.fromName ?? "", letter.from?.split("@")[0] ?? ""],
  });
  const kept = asked.filter(({ word }) => said.words.has(word));
  if (kept.length === 0) return nothing;

  const came = new Set(sheets.map(({ order }) => plainText(order ?? "")));
  const numbers = new Map(kept.map(({ order }) => [plainText(order), order]));
  const again = [...numbers].filter(([key]) => !came.has(key)).map(([, number]) => number);
  const stopped =
    said.more || bringsMore(reply) ? undefined : await stoppedSheets(again, party.buyer, desk.store);
  return {
    party,
    kept: onceEach(kept),
    ...(stopped === undefined ? { again: [], stopped: [] } : { again, stopped }),
  };
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
  const answer = nearest === undefined ? undefined : await store.answer(nearest.letter);
  const opened = answer === undefined ? undefined : await reader.letter(answer.bytes);
  if (opened?.ok !== true) return { answer: "", subject: "" };
  const { text, subject } = opened.value;
  return { answer: text, subject };
}

/** Files and links beside sheets are for a person to look at. */
function bringsMore({ files, links }: Reply): boolean {
  return links.length > 0 || files.some(({ kind }) => kind !== "sheet" && kind !== "decoration");
}

/**
 * The sheets of some orders that something stopped when the last letter to each was answered. Undefined where
 * other things stand in the way of an order than its sheets: a file that has to come as a sheet, a person.
 */
async function stoppedSheets(
  numbers: readonly string[],
  buyer: string,
  store: Store,
): Promise<readonly Sheet[] | undefined> {
  const found: Sheet[] = [];
  for (const number of numbers) {
    const order = (await store.orders(number)).find((one) => one.buyer === buyer);
    if (order?.verdict === undefined || order.verdict === "person") return undefined;
    const stops = (order.letters.at(-1)?.problems ?? []).filter(({ severity }) => severity === "stops");
    const files = [...new Set(stops.flatMap(({ spots }) => spots.map(({ file }) => file)))];
    const sheets = await store.sheets(files);
    if (sheets.length < files.length || sheets.some((sheet) => sheet.order === undefined)) return undefined;
    found.push(...sheets.filter((sheet) => plainText(sheet.order ?? "") === plainText(number)));
  }
  return found;
}

function onceEach(words: readonly KeptWord[]): KeptWord[] {
  return [...new Map(words.map((kept) => [`${kept.word} ${projectKey(kept.project)}`, kept])).values()].map(
    ({ word, project }) => ({ word, project }),
  );
}

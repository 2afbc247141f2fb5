import { withoutDenied } from "../judging/denied.ts";
import { numbersPerhapsIn, ordersNamedIn } from "../judging/named.ts";
import { makeReport, type Report } from "../judging/report.ts";
import { type BuyerState, newBuyer, orderKey } from "../judging/state.ts";
import { withKept } from "../lettering/with-kept.ts";
import { announcedIn } from "../reading/reply/announces.ts";
import { type Beside, statementsBeside } from "../reading/reply/beside.ts";
import { claimsIn } from "../reading/reply/claims.ts";
import type { Letter } from "../trade/letter.ts";
import type { Statement } from "../trade/statement.ts";
import type { Desk } from "./desk.ts";
import { allWords } from "./open.ts";
import type { OpenedLetter } from "./opened-letter.ts";
import { type Answering, answeringIn } from "./reply.ts";
import type { Understood } from "./understood.ts";
import { withWordsBefore } from "./words-before.ts";

/** A report, and the state that it was made from. */
export interface Judgement {
  readonly report: Report;
  readonly state: BuyerState;
  readonly answering: Answering;
  /** Numbers of the orders that the letter is about. */
  readonly about: readonly string[];
}

/** What a letter answers of our questions, and what else it says that a person has to read. */
function wordsTaken(
  { number, came, read, texts, sheets }: OpenedLetter,
  said: Understood,
  state: BuyerState,
  catalogue: Desk["catalogue"],
): Answering {
  const { furniture, quoted, letter, apart, manager } = said;
  const replied = {
    ...said,
    // Whoever answers under the number of another order may mean that one.
    ...(namesOtherOrder(letter, said, state) ? { goesOn: [] } : {}),
    sheets,
    at: { number, came },
    catalogue,
  };
  return answeringIn(letter, replied, state, (understood) => {
    const known = {
      files: read,
      texts,
      sheets,
      earlier: state.orders.flatMap((order) => order.sheets),
      catalogue,
      furniture,
      quoted: quoted === undefined ? [] : [quoted],
      understood,
    };
    if (apart !== undefined && manager !== undefined)
      return [
        ...statementsBeside({ ...letter, subject: "", text: apart.writer }, known),
        ...ofManager(letter, apart.manager, manager.name, known),
      ];
    const beside = statementsBeside(letter, known);
    const isRead = beside.some((one) => one.kind === "said" && one.where === "subject");
    return isRead || !namesOtherThanSheets(letter, sheets, said, state)
      ? beside
      : [{ kind: "said", where: "subject", words: letter.subject }, ...beside];
  });
}

/** What a manager says above a letter that he forwards. The buyer has not written it, and cannot take it back. */
function ofManager(
  { from, fromName, subject }: Letter,
  text: string,
  by: string,
  known: Beside,
): readonly Statement[] {
  const own: Letter = {
    subject,
    text,
    references: [],
    attachments: [],
    ...(from === undefined ? {} : { from }),
    ...(fromName === undefined ? {} : { fromName }),
  };
  const asHis = (words: string): Statement => ({ kind: "said", where: "manager", by, words });
  const said = statementsBeside(own, { ...known, files: [], texts: [] });
  const isSaid = (words: string): boolean => said.some((one) => "words" in one && one.words === words);
  // The buyer has not promised what his manager says will come.
  const promised = [announcedIn({ ...own, subject: "" }, known.sheets.length > 0)].flatMap((one) =>
    one === undefined || !["more", "later"].includes(one.tells) || isSaid(one.words) ? [] : asHis(one.words),
  );
  return [
    ...said.map((one) =>
      one.kind === "said" ? asHis(one.words) : one.kind === "counts" ? { ...one, by } : one,
    ),
    ...promised,
  ];
}

/** Whether the subject names orders of the buyer, and none that the sheets name or that was answered for. */
function namesOtherThanSheets(
  { subject }: Letter,
  sheets: OpenedLetter["sheets"],
  { goesOn }: Understood,
  state: BuyerState,
): boolean {
  const numbers = sheets.flatMap(({ order = "" }) => (orderKey(order) === "" ? [] : order));
  const meant = [...numbers, ...goesOn.flatMap(({ orders }) => orders)].map((number) => ({ number }));
  return (
    numbers.length > 0 &&
    ordersNamedIn(subject, { orders: meant }).length === 0 &&
    ordersNamedIn(subject, state).length > 0
  );
}

/** Whether the subject names orders of the buyer, and none that was answered for. */
function namesOtherOrder({ subject }: Letter, { goesOn }: Understood, state: BuyerState): boolean {
  const answered = new Set(goesOn.flatMap(({ orders }) => orders.map(orderKey)));
  const named = ordersNamedIn(subject, state);
  return named.length > 0 && answered.size > 0 && !named.some((number) => answered.has(orderKey(number)));
}

/** Judges a letter beside what the record knows of its buyer. Of a held letter nothing earlier is looked at. */
export async function judge(opened: OpenedLetter, said: Understood, desk: Desk): Promise<Judgement> {
  const { number, came, read, sheets, links, unsafe } = opened;
  const { party, reply } = said;
  const held = party.why !== undefined;
  // The sender of a held letter learns nothing of earlier letters, and changes nothing of them. For any other letter,
  // long-ago orders that it names in words are loaded too.
  const perhaps = numbersPerhapsIn(allWords(opened));
  const answered = said.goesOn.flatMap(({ orders }) => orders);
  const numbers = [...new Set([...sheets.flatMap(({ order }) => order ?? []), ...answered, ...perhaps])];
  const state = held
    ? newBuyer(party.buyer)
    : await withWordsBefore(await desk.store.buyers.stateOf(party.buyer, numbers), sheets, desk);
  const answering = wordsTaken(opened, said, state, desk.catalogue);
  const { answers, settles, decides, late, denied, statements } = answering;
  const isOpen = (question: number): boolean => !late.includes(question);
  const words = held ? [] : [...(await desk.store.buyers.keptWords(party.buyer)), ...answering.kept];
  const kept = withoutDenied(words, state, settles);
  // The orders that a letter names count where no sheet came, or where a person reads its words.
  const named =
    sheets.length === 0 || statements.some(({ kind }) => kind !== "counts")
      ? ordersNamedIn(allWords(opened), state)
      : [];
  // A reply without sheets is about every order that was answered for. One with sheets is about the orders whose
  // questions it answers.
  const replied = sheets.length === 0 ? answered : settles.map(({ order }) => order);
  const about = [...new Set([...replied, ...named])];
  const letter = { number, came };
  const announced = announcedIn(
    said.apart === undefined ? said.letter : { ...said.letter, text: said.apart.writer },
    read.some(({ kind }) => kind !== "decoration"),
  );
  const report = makeReport(
    {
      files: read,
      sheets,
      managing: desk.rules.managing,
      decides,
      ...(said.manager === undefined ? {} : { decidedBy: said.manager.name }),
      letter,
      links,
      unsafe,
      held,
      reply,
      kept: answering.kept,
      settles,
      answers: {
        yes: [...answers.yes].filter(isOpen),
        no: [...answers.no].filter(isOpen),
        nothing: [...answers.nothing],
      },
      answersLate: late,
      answersDenied: denied,
      withdraws: [...answers.withdraws],
      about,
      repliesTo: answered,
      statements,
      ...(announced === undefined ? {} : { announced }),
      claims: claimsIn(said.letter),
    },
    withKept(desk.catalogue, kept),
    state,
  );
  return { report, state, answering, about };
}

import { numbersIn } from "../answer/numbered.ts";
import { oneLine } from "../answer/one-line.ts";
import { dateIn } from "../calendar/dates.ts";
import { besideLists } from "../judging/beside-lists.ts";
import { changesOf } from "../judging/changes.ts";
import { needsPerson } from "../judging/for-person.ts";
import { numbersPerhapsIn, ordersNamedIn } from "../judging/named.ts";
import { makeReport, type Report } from "../judging/report.ts";
import { type BuyerState, newBuyer } from "../judging/state.ts";
import { withKept } from "../lettering/with-kept.ts";
import type { Claim, Outcome } from "../ports/store.ts";
import { headerLines } from "../reading/letter/header-lines.ts";
import { announcedIn } from "../reading/reply/announces.ts";
import { statementsBeside } from "../reading/reply/beside.ts";
import { type LineKey, lineKeysOf } from "../reading/reply/furniture.ts";
import type { AttachedText } from "../reading/reply/statements.ts";
import type { ReadFile } from "../trade/attachment.ts";
import type { Came, Letter } from "../trade/letter.ts";
import type { Managing } from "../trade/manager.ts";
import type { SenderProof } from "../trade/sender-proof.ts";
import type { Sheet } from "../trade/sheet.ts";
import { alarmOf } from "./alarm.ts";
import { after } from "./answer.ts";
import { answerTo } from "./compose.ts";
import type { Desk } from "./desk.ts";
import { type Refusal, refusalOf } from "./etiquette.ts";
import { type Forwarded, forwardedBy } from "./forwarded.ts";
import { withLists } from "./lists.ts";
import { answeredForManager, forwardedByManager, managedBy, mayWriteTo, notManaged } from "./managers.ts";
import {
  allWords,
  judgeOpened,
  type OpenLetter,
  openLetter,
  type Pictures,
  picturesOf,
  textsOf,
} from "./open.ts";
import { colleagueNamed, type Party, partyLetIn, partyOf } from "./party.ts";
import { refersTo } from "./reference.ts";
import { type Answering, answeringIn, answerWords, type Quoted, readReply, type Said } from "./reply.ts";
import { senderProof } from "./sender.ts";
import { settleOutcome } from "./settle-outcome.ts";
import { staysSilent } from "./silence.ts";
import { threadOf } from "./too-many.ts";
import { withWordsBefore } from "./words-before.ts";

/** How long to wait where a name server could not be asked about the sender, in seconds. */
const askAgain = 600;

/** How many letters of a thread are looked for. The latest count. */
const mostReferences = 100;

/**
 * Takes a letter from its bytes to the record: open it, see who sent it, see what it says, judge what it changes,
 * answer, store.
 */
export async function checkLetter(
  desk: Desk,
  claim: Claim,
  bytes: Uint8Array,
): Promise<Outcome["state"] | "received"> {
  const found = await open(claim, bytes, desk);
  const sender = claim.letInAs === undefined ? await whoSent(found, bytes, desk) : letInAs(claim.letInAs);
  const { text = found.letter.text } = sender;
  const opened = { ...found, letter: { ...found.letter, text } };
  // Asking again helps only with name servers. What our mail server found stands in the letter and never changes.
  if (sender.proof === "temporary" && desk.rules.authority === undefined && claim.opened < 3) {
    const due = after(askAgain, desk);
    await desk.store.letters.mark(
      claim,
      "received",
      "the sender could not be proved just now",
      desk.clock.now(),
      due,
    );
    return "received";
  }
  return settleOutcome(desk, claim, async () => {
    const said = await whatItSays(opened, sender, desk);
    const judgement = await judge(opened, said, desk);
    return outcomeOf(opened, sender, said, judgement, bytes, desk);
  });
}

/** A letter with its files read as what they are. */
interface Opened extends OpenLetter {
  readonly number: string;
  readonly came: Came;
  readonly read: readonly ReadFile[];
  readonly sheets: readonly Sheet[];
  /** What was seen on pages that nobody has explained. */
  readonly pictures: Pictures;
  readonly texts: readonly AttachedText[];
}

async function open(
  { letter: number, receivedAt, letInAs: from }: Claim,
  bytes: Uint8Array,
  desk: Desk,
): Promise<Opened> {
  const { editions, catalogue } = desk;
  const found = await openLetter(withLists(desk.reader, desk), bytes, String(number));
  const opened = from === undefined ? found : { ...found, letter: { from, ...found.letter } };
  // A letter that waited is judged by the day on which it came.
  const today = dateIn(receivedAt, desk.timeZone);
  const judged = opened.files.map((file) => judgeOpened(file, { editions, catalogue, today }));
  const { date } = opened.letter;
  const { files: read, sheets } = besideLists({
    files: judged.map(({ file }) => file),
    sheets: judged.flatMap(({ sheet }) => sheet ?? []),
  });
  return {
    ...opened,
    number: String(number),
    came: { receivedAt, ...(date === undefined ? {} : { dated: date }) },
    read,
    sheets,
    pictures: picturesOf(judged),
    texts: textsOf(opened.files),
  };
}

/** Who sent a letter, and what forbids an answer whatever the letter says. */
interface Sender {
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
}

/** One of our own people vouches for the sender. */
function letInAs(buyer: string): Sender {
  return { proof: "not asked", forwarded: { kind: "no" }, letIn: buyer, manages: [] };
}

async function whoSent({ letter }: Opened, bytes: Uint8Array, desk: Desk): Promise<Sender> {
  const { rules } = desk;
  const { from } = letter;
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
      ? await forwardedByManager(letter, bytes, rules)
      : { forwarded: await forwardedBy(rules, { from, bytes }, proof) };
  return { proof, ...forwarded, manages, ...(refusal === undefined ? {} : { refusal }) };
}

/** Whose orders a letter touches, and what it replies to. `why` says why a person must look first. */
interface Understood extends Said {
  readonly reply: boolean;
  /** The answer of ours that it replies to, if its sender may know of it. */
  readonly quoted?: Quoted;
  /** Keys of its lines that stood in earlier letters of its sender. */
  readonly furniture: ReadonlySet<LineKey>;
  /** A reply without the references that it gives: they say no more than which answer it is about. */
  readonly unreferenced?: Letter;
  readonly why?: string;
  /** As whom its sender answers our questions. */
  readonly as: { readonly party: boolean; readonly manager: boolean };
  /** Who of our managers wrote or forwarded it, and whom the answer goes to besides, or instead. */
  readonly manager?: { readonly name: string; readonly says: string; readonly to?: string };
}

/** The names under which lines of a letter are remembered: its sender's, and his company's. */
function sendersOf({ from }: Letter, { rules }: Desk): string[] {
  const domain = from?.split("@").at(-1);
  if (from === undefined || domain === undefined) return [];
  return rules.sharedDomains.includes(domain) ? [from] : [from, domain];
}

async function whatItSays(
  { letter, texts, sheets }: Opened,
  sender: Sender,
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
  const answered = inThread.length > 0 ? inThread : referred.answered;
  // A letter that a person must see first replies to nothing, and confirms no word.
  const ours = why === undefined && !isForwarded ? answered : [];
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
  return {
    ...said,
    as: { party: isParty || managed === undefined, manager: managed !== undefined },
    ...(await managerIn(said.party, { ...sender, why, isWord: managed !== undefined }, desk)),
    reply: answered.length > 0,
    ...(ours.length === 0 ? {} : { quoted: await answerWords({ letter, answered: ours }, desk) }),
    furniture,
    ...(answered.length === 0 ? {} : { unreferenced: referred.letter }),
    ...(why === undefined ? {} : { why }),
  };
}

/** Whom the answer to a letter of a manager goes to, and what it says of the manager. */
async function managerIn(
  { buyer }: Party,
  {
    manages,
    forwarded,
    why,
    isWord,
  }: Sender & { readonly why: string | undefined; readonly isWord: boolean },
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

/** A report, and the state that it was made from. */
interface Judgement {
  readonly report: Report;
  readonly state: BuyerState;
  readonly answering: Answering;
  /** Numbers of the orders that the letter is about. */
  readonly about: readonly string[];
}

/** What a letter answers of our questions, and what else it says that a person has to read. */
function wordsTaken(
  { letter: whole, number, came, read, texts, sheets }: Opened,
  said: Understood,
  state: BuyerState,
  catalogue: Desk["catalogue"],
): Answering {
  const { furniture, quoted, unreferenced: letter = whole } = said;
  const replied = { ...said, sheets, at: { number, came } };
  return answeringIn(letter, replied, state, (understood) =>
    statementsBeside(letter, {
      files: read,
      texts,
      sheets,
      earlier: state.orders.flatMap((order) => order.sheets),
      catalogue,
      furniture,
      quoted: quoted === undefined ? [] : [quoted],
      understood,
    }),
  );
}

/** What a letter that brings sheets tells of others to come. */
function announcedBy(letter: Letter): { readonly announced?: string } {
  const announced = announcedIn(letter);
  return announced === undefined ? {} : { announced };
}

async function judge(opened: Opened, said: Understood, desk: Desk): Promise<Judgement> {
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
  const { answers, settles, decides, late, statements } = answering;
  const isOpen = (question: number): boolean => !late.includes(question);
  const kept = held ? [] : [...(await desk.store.buyers.keptWords(party.buyer)), ...answering.kept];
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
      answers: { yes: [...answers.yes].filter(isOpen), no: [...answers.no].filter(isOpen) },
      answersLate: late,
      withdraws: [...answers.withdraws],
      about,
      statements,
      ...announcedBy(opened.letter),
    },
    withKept(desk.catalogue, kept),
    state,
  );
  return { report, state, answering, about };
}

/** What is stored of a letter: its answer, or why it gets none. */
async function outcomeOf(
  { letter, texts, read: files, links, unsafe, pictures }: Opened,
  { proof, refusal, letIn }: Sender,
  { party, why, manager, as }: Understood,
  { report, state, answering, about }: Judgement,
  bytes: Uint8Array,
  desk: Desk,
): Promise<Outcome> {
  const { from } = letter;
  const numbers = numbersIn(report);
  const alarm = alarmOf(report);
  const outcome = {
    letter,
    report,
    buyer: party.buyer,
    version: state.version,
    changes: changesOf(report, state, (problem) => numbers.get(problem) ?? 0),
    kept: answering.kept,
    settles: answering.settles,
    ...(manager === undefined || answering.decides.length === 0
      ? {}
      : { decides: answering.decides, by: manager.name }),
    proof,
    thread: await threadOf(letter, desk.store),
    about,
    forPerson: needsPerson(report),
    ...(alarm === undefined ? {} : { alarm }),
    lines: { senders: sendersOf(letter, desk), keys: lineKeysOf(allWords({ letter, texts })) },
    ...(party.domain === undefined ? {} : { domain: party.domain }),
    ...(why === undefined ? {} : { why }),
  };
  if (from === undefined || refusal !== undefined || !party.mayAnswer) {
    const seen = { letter, bytes, files, links, unsafe };
    const isSilent = refusal !== undefined && (await staysSilent({ ...seen, refusal }, desk));
    return { ...outcome, state: isSilent ? "silent" : "held" };
  }
  // A manager's word is told to whoever wrote last about the order.
  const [order] = as.manager && !as.party ? about : [];
  const last = order === undefined ? undefined : await desk.store.orders.lastWriter(party.buyer, order);
  const to = manager?.to ?? last?.recipient;
  const by = manager?.says;
  const answer = await answerTo(
    {
      bytes,
      letter: { ...letter, from },
      party,
      report,
      pictures,
      letIn: letIn !== undefined,
      ...(to === undefined ? {} : { to }),
      ...(by === undefined ? {} : { by }),
    },
    desk,
  );
  return { ...outcome, state: "ready", answer };
}

import type { Revision } from "../judging/changes.ts";
import type { Report } from "../judging/report.ts";
import type { BuyerState } from "../judging/state.ts";
import type { Audited } from "../trade/audited.ts";
import type { Confirmation } from "../trade/confirmation.ts";
import type { KeptWord } from "../trade/kept-word.ts";
import type { Letter } from "../trade/letter.ts";
import type { Problem, Verdict } from "../trade/problem.ts";
import type { QuestionOf } from "../trade/question.ts";
import type { LetterRecord, LetterState, OpenOrder, OrderRecord } from "../trade/record.ts";
import type { Released } from "../trade/released.ts";
import type { SenderProof } from "../trade/sender-proof.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";
import type { Accounts } from "./accounts.ts";
import type { Leases } from "./leases.ts";

export interface Received {
  readonly letter: number;
  readonly state: LetterState;
  /** The same letter, by its content, was in the record already. */
  readonly again: boolean;
}

/** A letter that one worker has to itself for a while. Whoever has lost it can write nothing of it any more. */
export interface Claim {
  readonly letter: number;
  readonly receivedAt: Date;
  readonly state: LetterState;
  /** Grows each time that the letter changes hands. */
  readonly fence: number;
  /** Times that it was opened; times that sending its answer was begun. */
  readonly opened: number;
  readonly tries: number;
  /** How often its answer was sent without knowing whether it went out. */
  readonly unsure?: number;
  /** Since when it waits for its turn. */
  readonly waitsSince?: Date;
  /** A letter of a sender, or what one of our own people has put into the record. */
  readonly kind: "letter" | "note";
  /** Whose letter it counts as, if one of our own people has let it in. */
  readonly letInAs?: string;
}

/** When answers were made, oldest first. */
export interface RecentAnswers {
  readonly toOne: readonly Date[];
  readonly toAll: readonly Date[];
  readonly inThread: readonly Date[];
  /** Letters of this sender that wait for their turn. */
  readonly waiting: number;
}

/** How often a letter is opened while the letters behind it in its lane wait for it. */
export const opensInTurn = 3;

/** What proves that a letter is still in the same hands. */
export type Hold = Pick<Claim, "letter" | "fence">;

/** Thrown when a claim has run out and somebody else has taken the letter up. */
export class ClaimLost extends Error {}

/** Thrown when the buyer's state has moved since the report was made: it has to be made again. */
export class StateMoved extends Error {}

export interface StoredAnswer {
  readonly letter: number;
  readonly messageId: string;
  readonly recipient: string;
  /** Who gets a copy. */
  readonly copies?: readonly string[];
  readonly bytes: Uint8Array;
}

/** What the buyer of an order was reminded of; "person": that somebody has to call. */
export interface Reminded {
  readonly order: string;
  readonly what: "remind" | "last" | "person";
}

/** That a letter or a note touches orders that were released. */
export type Alarm = readonly {
  readonly order: string;
  readonly on: string;
  readonly says: readonly string[];
  /** The engraving room, which was told to stop, can go on. */
  readonly holds?: true;
}[];

/** Everything that reading and checking a letter has led to; stored in one piece or not at all. */
export interface Outcome {
  readonly letter: Letter;
  readonly report: Report;
  /** Whom the letter's orders belong to. */
  readonly buyer: string;
  /** The version of the buyer's state that the report was made from. It must still be the same. */
  readonly version: number;
  /** What the letter changes in that state. */
  readonly changes: readonly Revision[];
  /** The domain that vouches for the buyer, where there is one. */
  readonly domain?: string;
  /** What was known of who sent the letter, and the thread that it belongs to. */
  readonly proof?: SenderProof | "not asked";
  readonly thread?: string;
  /** Numbers of the buyer's orders that the letter replies about, whether or not it changes them. */
  readonly about?: readonly string[];
  /** Keys of its lines, and the names under which they are remembered. Later letters are read against them. */
  readonly lines?: { readonly senders: readonly string[]; readonly keys: readonly string[] };
  /** Absent when nothing is to be sent; `why` then says the reason. */
  readonly answer?: Omit<StoredAnswer, "letter"> & { readonly subject: string };
  /** Without an answer: held for a person, or silent since nobody wants one. */
  readonly state: Extract<LetterState, "ready" | "held" | "silent">;
  readonly why?: string;
  /** Questions that the letter answers: it is meant so. */
  readonly settles?: readonly QuestionOf[];
  /** What one of our own people has decided, and who, where the letter is a note. */
  readonly decides?: readonly QuestionOf[];
  readonly by?: string;
  /** What is handed to engraving, or engraved, of orders by their numbers. */
  readonly released?: Readonly<Record<string, Released>>;
  /** What its buyer is reminded of, where it is a note of the calendar. */
  readonly reminded?: Reminded;
  /** What the engraving room has to be told at once. */
  readonly alarm?: Alarm;
  /** It releases an order, whose package is still to be written. */
  readonly isToPack?: true;
  /** Letters of which a note says that all they said is dealt with. */
  readonly dealtWith?: readonly number[];
  /** Something in it needs a person. */
  readonly forPerson?: boolean;
  /** Words that the letter confirms. They are written only with an answer that says so. */
  readonly kept?: readonly KeptWord[];
}

/** A letter that got an answer, and whom its orders belong to. */
export interface Answered extends LetterRecord {
  readonly buyer: string;
}

/** How far a mailbox has been handled: every letter up to `uid` under this UIDVALIDITY. */
export interface MailboxMark {
  readonly validity: string;
  readonly uid: number;
}

/** Which of our own people does something, and why. */
export interface By {
  readonly name: string;
  readonly why: string;
}

/** One thing that happened. */
export interface HistoryLine {
  readonly at: Date;
  /** "burin", or which of our own people. */
  readonly actor: string;
  readonly what: string;
  readonly words: string;
}

/** Letters, and in whose hands they are. */
export interface Letters {
  /**
   * Keeps the bytes and opens a row under the content key, unless that letter is there already. Letters of one lane
   * are taken up oldest first, one after the other.
   */
  readonly receive: (
    key: string,
    bytes: Uint8Array,
    receivedAt: Date,
    lane?: string,
    kind?: Claim["kind"],
  ) => Promise<Received>;
  /** Waits until another worker takes a letter in, or for so many milliseconds, or for the signal. */
  readonly arrival: (ms: number, signal: AbortSignal) => Promise<void>;
  /** Whether a letter or a note with this key is in the record. */
  readonly isKnown: (key: string) => Promise<boolean>;
  /** Takes one letter up, unless it is done with, not due yet, or in somebody's hands, or another of its lane is. */
  readonly claim: (letter: number, now: Date, until: Date) => Promise<Claim | undefined>;
  /**
   * Takes up the oldest letter that is due and of whose lane none is in hand. Letters that were opened before come
   * last. If a lane is named, the next that waits there for its turn.
   */
  readonly claimDue: (now: Date, until: Date, lane?: string) => Promise<Claim | undefined>;
  /** Counts that a letter is opened, before it is opened. So a letter that ends the program is counted too. */
  readonly opening: (claim: Claim) => Promise<Claim>;
  /** Lets a letter wait for its turn. It was not opened, and its sender stands in the record from now on. */
  readonly letWait: (
    claim: Hold,
    wait: { readonly sender: string; readonly why: string; readonly until: Date },
    now: Date,
  ) => Promise<void>;
  /** Keeps a letter in the same hands for longer, never for less. Throws ClaimLost when it is in others already. */
  readonly renew: (claim: Hold, until: Date) => Promise<void>;
  /** Throws ClaimLost, or StateMoved when the buyer's state is not the one that the report was made from. */
  readonly settle: (claim: Hold, outcome: Outcome, now: Date) => Promise<void>;
  /** Writes where a letter stands. With `dueAt` it is let go, and not taken up before then. */
  readonly mark: (
    claim: Hold,
    state: Exclude<LetterState, "sent">,
    words: string,
    now: Date,
    dueAt?: Date,
  ) => Promise<void>;
  /** Writes that an answer went out, and who of its copies was not reached with it: somebody has to tell them. */
  readonly sent: (claim: Hold, words: string, unreached: string | undefined, now: Date) => Promise<void>;
  /** Lets a letter go, so that whoever asks next can take it up. */
  readonly release: (claim: Hold) => Promise<void>;
  /**
   * Lets in a letter that was held. A copy of it is judged as a letter of that sender, in his lane, and answered. Gives
   * the copy's number; undefined if it was let in before.
   */
  readonly letIn: (
    letter: number,
    as: { readonly sender: string; readonly lane?: string },
    by: By,
    now: Date,
  ) => Promise<number | undefined>;
  /** Writes that one of our own people has dealt with all that a letter said. A held one is never answered then. */
  readonly putAside: (letter: number, by: By, now: Date) => Promise<void>;
  /** Writes that a copy of the answer to a letter came back, so that a person tells whoever should have had it. */
  readonly copyReturned: (letter: number, why: string, now: Date) => Promise<void>;
  /** Writes that the answer to a letter came back, so that a person sees it. False if that was known already. */
  readonly returned: (letter: number, why: string, now: Date) => Promise<boolean>;
  /**
   * Has the answer to a letter sent once more, as it is, at the wish of one of our own people. False where there is
   * none, or where it is still on its way.
   */
  readonly sendAgain: (letter: number, by: By, now: Date) => Promise<boolean>;
  /** What happened to a letter, from the first on. */
  readonly history: (letter: number) => Promise<readonly HistoryLine[]>;
  /** Throws when there is no such letter. */
  readonly read: (letter: number) => Promise<LetterRecord>;
  /** Letters received from `from` on and before `to`, oldest first. */
  readonly between: (from: Date, to: Date) => Promise<readonly LetterRecord[]>;
  /** Letters of senders a page at a time, the latest first: those before `before`, if it is given. */
  readonly list: (most: number, before?: number) => Promise<readonly LetterRecord[]>;
  readonly bytesOf: (letter: number) => Promise<Uint8Array>;
  /** How many letters stand in each state. */
  readonly states: () => Promise<Readonly<Partial<Record<LetterState, number>>>>;
  /** The same of letters that are not done with: by us, or by a person where one is needed. It costs what they are. */
  readonly unfinished: () => Promise<Readonly<Partial<Record<LetterState, number>>>>;
}

/** Answers, and what is needed to make and to find them. */
export interface Answers {
  readonly of: (letter: number) => Promise<StoredAnswer | undefined>;
  /** The letters to which answers of these Message-IDs were made, oldest first. */
  readonly answered: (messageIds: readonly string[]) => Promise<readonly Answered[]>;
  /** Answers made since then, of each the latest `most`: to the letters of one sender, in one thread, and to all. */
  readonly since: (moment: Date, sender: string, thread: string, most: number) => Promise<RecentAnswers>;
  /** The thread in which answers of these Message-IDs were made, the oldest; undefined if none was. */
  readonly threadOf: (messageIds: readonly string[]) => Promise<string | undefined>;
  /** A secret with which Message-IDs of answers are made. */
  readonly secret: () => Promise<string>;
}

/** What is known of buyers and senders. */
export interface Buyers {
  /** What judging a letter of this buyer depends on: the orders named, and his latest others to compare with. */
  readonly stateOf: (buyer: string, numbers: readonly string[]) => Promise<BuyerState>;
  /** What this buyer has kept; projects are given by their keys. */
  readonly keptWords: (buyer: string) => Promise<readonly KeptWord[]>;
  /** Which of some lines stood in earlier letters of any of these senders. */
  readonly linesSeen: (senders: readonly string[], lines: readonly string[]) => Promise<ReadonlySet<string>>;
  /** The latest letters of a buyer that wait for a person and name no order of the record, thirty at most. */
  readonly lettersOfNoOrder: (buyer: string) => Promise<readonly number[]>;
  /** Who first had an order of this number, and the domain that was proved then. */
  readonly ownerOf: (
    number: string,
  ) => Promise<{ readonly buyer: string; readonly domain?: string } | undefined>;
  /** Whether anybody has an order of one of these numbers, given as they are compared (`numberKey`). */
  readonly numbersKnown: (keys: readonly string[]) => Promise<boolean>;
  /** Whether a letter of this sender was answered before. */
  readonly knows: (sender: string) => Promise<boolean>;
  /**
   * Whether a letter of this sender was ever proved to be his. If the domain is one company's, any proved letter of
   * it counts.
   */
  readonly proved: (sender: string) => Promise<boolean>;
}

/** Which orders are listed. */
export interface Sought {
  readonly verdicts?: readonly Verdict[];
  /** Only those of which something waits for one of us. */
  readonly forPerson?: boolean;
  /** Only those that were handed to engraving, or only those that were not. */
  readonly released?: boolean;
  /** Beginnings of words: number, project, people, telephone, station, legend. */
  readonly search?: string;
  /** Only those listed behind this place. */
  readonly before?: number;
  readonly most: number;
}

/** An order in a list. No verdict: nothing is left of it. */
export interface ListedOrder {
  readonly number: string;
  readonly buyer: string;
  readonly project?: string;
  readonly verdict?: Verdict;
  readonly changedAt: Date;
  /** The letter by which it changed last, if it was one. */
  readonly letter?: number;
  readonly isReleased: boolean;
  /** Where the list goes on. */
  readonly place: number;
}

/** An order, and what happened to it in some time. */
export interface OrderWeek {
  readonly order: OrderRecord;
  /** A letter or a note about it came. */
  readonly isMoved: boolean;
  /** What it was asked, or told to mend, for the first time. */
  readonly slips: readonly Problem[];
}

/** A letter that nobody has read yet and that may concern an order. */
export interface Unread {
  readonly letter: number;
  readonly from?: string;
  /** It waits to be judged, it is held, or a person has to read what it says. */
  readonly how: "waits" | "held" | "unread";
  /** What it says was taken for words about other orders, or somebody wrote it who was no party to the order before. */
  readonly isOfOthers: boolean;
}

/** Orders and their sheets, to read. */
export interface Orders {
  /** Those that changed last first. */
  readonly list: (sought: Sought) => Promise<readonly ListedOrder[]>;
  readonly named: (number: string) => Promise<readonly OrderRecord[]>;
  /** Sheets by their ids, whether they count or not; ids of other files are passed over. */
  readonly sheets: (ids: readonly FileId[]) => Promise<readonly Sheet[]>;
  /** The order in which a sheet stands; undefined if it stands in none. */
  readonly holding: (
    sheet: FileId,
  ) => Promise<{ readonly buyer: string; readonly number: string } | undefined>;
  /** The orders in which a letter has left something open that still is. */
  readonly carrying: (
    letter: number,
  ) => Promise<readonly { readonly buyer: string; readonly number: string }[]>;
  /** The bytes of files as they came, by their ids. Throws when one is not in the record. */
  readonly originals: (ids: readonly FileId[]) => Promise<ReadonlyMap<FileId, Uint8Array>>;
  /** What was confirmed of an order, by whom and when, as its questions are numbered. */
  readonly confirmed: (buyer: string, number: string) => Promise<readonly Confirmation[]>;
  /** The latest revision of each of this buyer's orders of these numbers; 0 for an order that is new. */
  readonly revisionsOf: (buyer: string, numbers: readonly string[]) => Promise<ReadonlyMap<string, number>>;
  /** Orders that wait for their buyers: not passed, not for a person, not released. */
  readonly waiting: () => Promise<readonly OrderRecord[]>;
  /** Orders that have passed and not changed since a moment, and were never released. */
  readonly passed: (until: Date) => Promise<readonly { readonly buyer: string; readonly number: string }[]>;
  /** Orders that were released before a moment, and whose packages are not known to be written. */
  readonly toPack: (until: Date) => Promise<readonly { readonly buyer: string; readonly number: string }[]>;
  /** Says that the package of a released order is written. */
  readonly packed: (buyer: string, number: string) => Promise<void>;
  /** Letters that nobody has read yet and that may concern an order. `lane`: that of its buyer. */
  readonly unreadBeside: (
    order: { readonly buyer: string; readonly number: string },
    lane: string | undefined,
  ) => Promise<readonly Unread[]>;
  /** In which lane letters about an order are judged: that of the last. Undefined if none is known. */
  readonly laneOf: (buyer: string, number: string) => Promise<string | undefined>;
  /** Whom the last letter about an order was answered to, and the Message-ID of that letter. */
  readonly lastWriter: (
    buyer: string,
    number: string,
  ) => Promise<{ readonly recipient: string; readonly messageId?: string } | undefined>;
  /**
   * Orders about which a letter or a note came between two moments, and those that were open then or are now; of each,
   * what it was newly asked or told to mend meanwhile.
   */
  readonly week: (from: Date, until: Date) => Promise<readonly OrderWeek[]>;
  /** Orders that had not passed when that moment came, as they stood then. */
  readonly openAt: (moment: Date) => Promise<readonly OpenOrder[]>;
}

/** What waits for a person, and who was told. */
export interface People {
  /**
   * Letters that wait for a person, oldest first. Those whose answer was refused or cannot be found are among them.
   */
  readonly waiting: (now: Date, most?: number) => Promise<readonly LetterRecord[]>;
  /**
   * Orders that are not done with and have open questions, or words of a letter that somebody has to read, or whose
   * buyer does not answer.
   */
  readonly orders: (most?: number) => Promise<readonly OrderRecord[]>;
  /**
   * Takes the letters for a person of which nobody was told yet, and marks them as told; notes that nobody answers
   * for an order are among them. There are none within an hour of the last notice. Letters of the one who is told are
   * left out.
   */
  readonly takeNotice: (now: Date, told: string) => Promise<readonly LetterRecord[]>;
  /** Takes the letters of which the engraving room has to be told, and marks them as told. */
  readonly takeAlarms: (
    now: Date,
  ) => Promise<readonly { readonly letter: number; readonly from?: string; readonly alarm: Alarm }[]>;
  /** Takes back that the engraving room was told of a letter. */
  readonly dropAlarm: (letter: number) => Promise<void>;
  /** Takes back that people were told, for all that was taken at that moment. */
  readonly dropNotice: (taken: Date) => Promise<void>;
}

/** How far each mailbox has been handled. */
export interface Mailboxes {
  readonly markOf: (mailbox: string) => Promise<MailboxMark | undefined>;
  readonly setMark: (mailbox: string, mark: MailboxMark) => Promise<void>;
}

/** Whose letters and orders are erased: all, or only what nothing has come for since a moment. */
export interface EraseScope {
  /** The buyer's address; "" for letters of nobody who is known. */
  readonly address: string;
  /** Only what is older. Where something else is in the way, the rest goes. */
  readonly before?: Date;
  /** Orders that are not done with are given up and go too. */
  readonly givesUp?: boolean;
}

/** Why something is not erased. */
export interface InTheWay {
  /** "order BW-2207", "letter 12". */
  readonly what: string;
  readonly why: string;
}

/** What an erasing takes. */
export interface ErasePlan {
  readonly orders: readonly string[];
  readonly letters: readonly {
    readonly letter: number;
    readonly receivedAt: Date;
    readonly from?: string;
    readonly subject: string;
  }[];
  readonly inTheWay: readonly InTheWay[];
  /** Letters of the same address in orders of others. They stay, and go with those. */
  readonly elsewhere: readonly { readonly letter: number; readonly buyer: string }[];
}

/** What an erasing has deleted besides what stands in the tables. */
export interface Deleted {
  readonly bytes: number;
  /** Folders of packages that were deleted, and those that were not found where packages are put. */
  readonly packages: readonly string[];
  readonly notFound: readonly string[];
  /** The record's file is free of what was erased. False while somebody else reads in it. */
  readonly isFree: boolean;
}

/** Erases letters and whose they were, and keeps what is counted. */
export interface Erasures {
  readonly plan: (scope: EraseScope, now: Date) => Promise<ErasePlan>;
  /**
   * Erases what the plan says; nothing, if what was asked for is in the way. Gives what stands for the person from then
   * on, if anything was erased.
   */
  readonly erase: (
    scope: EraseScope,
    by: By,
    now: Date,
  ) => Promise<ErasePlan & { readonly standIn?: string }>;
  /** Whoever has something that is older than a moment. */
  readonly due: (before: Date) => Promise<readonly string[]>;
  /**
   * Deletes what erasings have left to delete, and makes the record's file free of it. What a death has left undone is
   * done by the next. `remove` deletes a package by its name and says whether it was there.
   */
  readonly finish: (remove: (name: string) => Promise<boolean>) => Promise<Deleted>;
}

/** How many events an erasing took what they said, by whom and when. */
export interface ErasedEvents {
  readonly at: Date;
  readonly by: string;
  readonly events: number;
}

/** What checking the record against itself came to. */
export interface Verified {
  readonly events: number;
  /** The first event whose hash does not fit, counted from 1. */
  readonly broken?: number;
  readonly erased: readonly ErasedEvents[];
  /** Orders that were made again of the events, and those that came out otherwise, by buyer and number. */
  readonly orders: number;
  readonly differ: readonly string[];
  /** Orders that are older than what events keep. */
  readonly older: number;
}

/** The record. */
export interface Store {
  readonly letters: Letters;
  readonly answers: Answers;
  readonly buyers: Buyers;
  readonly orders: Orders;
  readonly people: People;
  readonly mailboxes: Mailboxes;
  readonly leases: Leases;
  readonly accounts: Accounts;
  readonly erasures: Erasures;
  /** What is known of the time from `from` on and before `to`, as it stood at its end. */
  readonly audited: (from: Date, to: Date) => Promise<Audited>;
  /** Recounts the chain of events, and makes the orders again of them, to compare. Changes nothing. */
  readonly verify: () => Promise<Verified>;
  /** What time it is where the record is; absent where that is this machine. */
  readonly time?: () => Promise<Date>;
  /** Bytes for which there is room yet. */
  readonly room: () => Promise<number>;
  readonly close: () => Promise<void>;
}

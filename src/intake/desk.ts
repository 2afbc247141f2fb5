import type { Calendar } from "../calendar/business-days.ts";
import type { Catalogue } from "../catalogue/catalogue.ts";
import type { Reminding } from "../judging/reminders.ts";
import type { Clock } from "../ports/clock.ts";
import type { Log } from "../ports/log.ts";
import type { Reader } from "../ports/reader.ts";
import type { Sender } from "../ports/sender.ts";
import type { Store } from "../ports/store.ts";
import type { Edition } from "../reading/edition.ts";
import type { Manager, Managing } from "../trade/manager.ts";
import type { Put } from "./release.ts";

/** All that the intake works with. */
export interface Desk {
  readonly store: Store;
  readonly reader: Reader;
  readonly sender: Sender;
  readonly clock: Clock;
  readonly log: Log;
  /** Between 0 and 1, for spreading retries. */
  readonly chance: () => number;
  readonly catalogue: Catalogue;
  readonly editions: readonly Edition[];
  /** Where a day begins at midnight: an IANA name. */
  readonly timeZone: string;
  /** Who the answers come from. */
  readonly from: { readonly name: string; readonly address: string };
  /** Message-IDs of answers are made with it. Nobody outside knows it. */
  readonly secret: string;
  readonly rules: Rules;
}

/** How this desk deals with letters and answers. */
export interface Rules {
  /** The addresses at which letters are received, in small letters. */
  readonly ours: readonly string[];
  /** Whether the mailbox's server writes Return-Path. Only then does its absence mean something. */
  readonly returnPathWritten: boolean;
  /** The name under which our mail server writes Authentication-Results; absent where it writes none. */
  readonly authority?: string;
  /** The name servers to ask about senders, where it writes none. An empty list means those of the system. */
  readonly nameServers?: readonly string[];
  /** How many Received lines our own servers write on top of a letter. */
  readonly receivedLines: number;
  /** Domains that many unrelated people share. Whoever shares one is no party to another's order. */
  readonly sharedDomains: readonly string[];
  /** Senders, as addresses or domains, that are believed although nothing proves their letters. */
  readonly known: readonly string[];
  /** Addresses of our own staff, who forward letters of buyers. */
  readonly staff: readonly string[];
  /** Who manages which orders. */
  readonly managing: readonly Managing[];
  /** How many answers go out before letters wait for their turn. */
  readonly mostAnswers: MostAnswers;
  /** Who is told each business day how the last one went, from what time on, such as "07:00". */
  readonly dayLetter?: {
    readonly at: string;
    readonly to: readonly Manager[];
    readonly calendar: Calendar;
  };
  /** Whom to tell of letters that wait for a person. */
  readonly notice?: string;
  /** When buyers are reminded of orders that wait for them; absent where nobody is. */
  readonly reminding?: Reminding;
  /** Whose orders are released by themselves, so many hours after they passed, and where their packages go. */
  readonly releasing?: {
    readonly afterHours: number;
    /** Addresses, or domains. */
    readonly buyers: readonly string[];
    readonly put: Put;
  };
  /** Where packages of released orders go that whoever released them has not written. */
  readonly packages?: Put;
  /** After how many days what is done with is erased, and how a package of a released order is deleted. */
  readonly erasing?: {
    readonly afterDays?: number;
    /** Whether it was there. */
    readonly remove?: (name: string) => Promise<boolean>;
  };
  /** Where buyers can answer questions on a page, and for how many days; absent where answers name none. */
  readonly links?: { readonly address: string; readonly days: number };
  /** Whom to tell at once of what touches a released order: the engraving room. */
  readonly room?: string;
  /** How long a letter stays with a worker that gives no sign of life, in seconds. */
  readonly lease: number;
  /** How long a server has after the last byte of an answer, in seconds. */
  readonly patience: number;
  /** How long after an unsure send its answer is looked for, in seconds. */
  readonly grace: number;
}

/** The most answers: within an hour to one sender and to all, within a day to one sender and in one thread. */
export interface MostAnswers {
  readonly toOne: number;
  readonly toAll: number;
  readonly toOneADay: number;
  readonly inThreadADay: number;
}

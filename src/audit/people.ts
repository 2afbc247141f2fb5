import { fileChecks, letterChecks } from "../checks/catalogue.ts";
import { letterSaysMore } from "../checks/letter/letter-says-more.ts";
import { noSheet } from "../checks/letter/no-sheet.ts";
import { sharedLink } from "../checks/letter/shared-link.ts";
import { deviceWithoutPlate } from "../checks/order/device-without-plate.ts";
import { orderNumberNearMiss } from "../checks/order/order-number-near-miss.ts";
import { stationMarkInNotes } from "../checks/order/station-mark-in-notes.ts";
import { stationMarkNearMiss } from "../checks/order/station-mark-near-miss.ts";
import { wordsOf } from "../checks/run.ts";
import { isForPerson } from "../judging/for-person.ts";
import { isReturned } from "../judging/reminders.ts";
import { isAsReleased } from "../orders/piece.ts";
import type { LetterRecord, OrderRecord } from "../trade/record.ts";
import type { FileId } from "../trade/sheet.ts";

/** One thing that waits for somebody. */
export interface Waiting {
  readonly what: /** An answer that did not arrive, or of which nobody knows. */
    | "undelivered"
    /** An answer whose copy did not reach a manager. */
    | "copy"
    /** A letter that was not taken. Its sender may have been told that a person reads it. */
    | "held"
    /** What one of our own people did, and what could not be taken. */
    | "note"
    /** An order that has points for a person. */
    | "order"
    /** A letter about no order. */
    | "letter";
  readonly since: Date;
  /** The letters that it is about. */
  readonly letters: readonly number[];
  readonly order?: string;
  readonly project?: string;
  /** Whom to call: "Ines Calloway, 312-555-0117, ines@brightwire.example". */
  readonly contacts: readonly string[];
  readonly points: readonly Point[];
}

/**
 * A point that somebody has to settle, under the number that answers gave it. One without number and letter is about
 * the order as a whole, which was released.
 */
export interface Point {
  readonly number?: number;
  /** Which letter said it, where it is no question of the order. */
  readonly letter?: number;
  readonly says: string;
  /** Where it is asked, of an order's question: "T-9", "S-104 position 2". One answer holds for all of them. */
  readonly places?: readonly string[];
  /** The order has to be released once more. */
  readonly isToRelease?: true;
  /** Sheets that may belong elsewhere. */
  readonly sheets?: readonly FileId[];
}

const rank = { undelivered: 0, held: 1, note: 1, order: 2, copy: 3, letter: 4 } as const satisfies Record<
  Waiting["what"],
  number
>;
/** Checks that ask about a sheet which may belong elsewhere. */
const aboutPlace: ReadonlySet<string> = new Set(
  [stationMarkNearMiss, stationMarkInNotes, orderNumberNearMiss, deviceWithoutPlate].map(({ id }) => id),
);
/** Checks whose words orders keep. */
const keptByOrders: ReadonlySet<string> = new Set([letterSaysMore, noSheet, sharedLink].map(({ id }) => id));
const aboutLetter = new Set([...fileChecks, ...letterChecks].map(({ id }) => id));

/**
 * All that waits for somebody, first things first: senders who have no answer, then orders, then other letters; the
 * oldest first. `letters` wait for a person, and `orders` have open points for one.
 */
export function peopleList(letters: readonly LetterRecord[], orders: readonly OrderRecord[]): Waiting[] {
  const copies = letters.flatMap(waitingCopy);
  const taken = letters.filter(
    (letter) => unansweredWhy(letter) === undefined && (waitingCopy(letter).length === 0 || saysMore(letter)),
  );
  const ofOrders = orders.map((order) => waitingOrder(order, taken));
  const told = new Set(ofOrders.flatMap((one) => one.letters));
  const rest = taken.filter((letter) => !told.has(letter.letter) && waitsBesides(letter));
  const apart = letters.filter((letter) => unansweredWhy(letter) !== undefined);
  return [
    ...apart.map(waitingUnanswered),
    ...copies,
    ...ofOrders.filter(({ points }) => points.length > 0),
    ...rest.map(waitingLetter),
  ].toSorted((a, b) => rank[a.what] - rank[b.what] || a.since.getTime() - b.since.getTime());
}

function waitingOrder(order: OrderRecord, letters: readonly LetterRecord[]): Waiting {
  const questions = order.questions.filter(({ problem }) => isForPerson(problem));
  const own = letters.filter(({ orders }) => orders.includes(order.number));
  const words = order.carried.flatMap((one): Point[] => {
    if (one.what !== "words") return [];
    const { letter, text, by } = one;
    return [{ letter: Number(letter), says: by === undefined ? `“${text}”` : `${by} writes “${text}”` }];
  });
  const said = own.flatMap(besidesWords);
  // Words of an earlier letter stand among the points under their letter.
  const asked = askedPoints(questions.filter(({ problem }) => problem.check !== "letter-still-open"));
  const silence = unanswered(order);
  const since = [
    ...questions.map(({ openedAt }) => openedAt),
    ...own.map(({ receivedAt }) => receivedAt),
    order.changedAt,
  ];
  return {
    what: "order",
    since: new Date(Math.min(...since.map((moment) => moment.getTime()))),
    letters: [
      ...new Set([
        ...own.map(({ letter }) => letter),
        ...[...words, ...silence].flatMap(({ letter }) => letter ?? []),
      ]),
    ],
    order: order.number,
    ...(order.project === undefined ? {} : { project: order.project }),
    contacts: contactsIn(order),
    points: [...asked, ...words, ...said, ...silence, ...unreleased(order)],
  };
}

/** Questions as points. Those that read the same under one number are one point. */
function askedPoints(questions: OrderRecord["questions"]): Point[] {
  const alike = Map.groupBy(questions, ({ number, problem }) => `${number} ${wordsOf(problem).says}`);
  return [...alike.values()].flatMap((some) => {
    const [first] = some;
    if (first === undefined) return [];
    const places = [...new Set(some.flatMap(placesOf))];
    const about = some.flatMap(({ problem }) => (aboutPlace.has(problem.check) ? problem.spots : []));
    const sheets = [...new Set(about.map(({ file }) => file))];
    return {
      number: first.number,
      says: wordsOf(first.problem).says,
      ...(places.length === 0 ? {} : { places }),
      ...(sheets.length === 0 ? {} : { sheets }),
    };
  });
}

function placesOf({ station, position }: OrderRecord["questions"][number]): string[] {
  if (station === undefined || station === "") return [];
  return [position === undefined ? station : `${station} position ${position}`];
}

/** So many places of a point are named. */
const mostPlaces = 6;

/** "T-1, T-2 and 4 more: ", or nothing. */
export function placesIn({ places = [] }: Point): string {
  const more = places.length - mostPlaces;
  const named = places.slice(0, mostPlaces).join(", ");
  return named === "" ? "" : `${named}${more > 0 ? ` and ${more} more` : ""}: `;
}

/**
 * That an order cannot be cut as it was released: what has changed is settled, and the engraving room does not have it
 * yet, or its buyer has to mend something, of which nobody reminds him.
 */
function unreleased({ verdict, released, sheets, problems }: OrderRecord): Point[] {
  if (released === undefined || verdict === undefined) return [];
  if (verdict === "pass")
    return isAsReleased(sheets, released)
      ? []
      : [
          {
            says: `changed since its release on ${released.on}, and all of that is settled: it has to be released once more`,
            isToRelease: true,
          },
        ];
  if (verdict === "person") return [];
  const says = problems
    .filter((problem) => problem.verdict !== "pass" && !isForPerson(problem))
    .map((problem) => wordsOf(problem).says);
  return [
    {
      says: `released on ${released.on}, and now waits for its buyer, who is not reminded (${verdict}): ${[...new Set(says)].join(" ")}`,
    },
  ];
}

/** That reminders came to nothing or were too late, if nothing has happened since. It is put aside by the note that found it. */
function unanswered(order: OrderRecord): Point[] {
  const { reminders, changedAt, missing } = order;
  const found = reminders.find(
    ({ what, at, isDealtWith }) => what === "person" && at >= changedAt && !isDealtWith,
  );
  if (found === undefined) return [];
  const awaited = missing.length === 0 ? "" : `; still to come: ${missing.length} of its sheets`;
  const isReminded = reminders.some(({ what, at }) => what !== "person" && at >= changedAt);
  const silence = isReminded
    ? "nobody answers, and the last reminder has gone"
    : "nothing has come for long; it was too late for a reminder";
  const why = isReturned(order) ? "our last letter did not arrive, so nobody is reminded" : silence;
  return [{ letter: found.letter, says: `${why}${awaited}` }];
}

function waitingLetter(record: LetterRecord): Waiting {
  const { letter, receivedAt, from, subject } = record;
  const points = letterPoints(record);
  const forPerson = record.problems
    .filter(isForPerson)
    .map((problem) => ({ letter, says: wordsOf(problem).says }));
  return {
    what: "letter",
    since: receivedAt,
    letters: [letter],
    contacts: from === undefined ? [] : [from],
    points: [{ letter, says: `“${subject}”` }, ...(points.length > 0 ? points : forPerson)],
  };
}

function waitingUnanswered(record: LetterRecord): Waiting {
  const { letter, receivedAt, from, subject, orders, state, isNote } = record;
  const [order] = orders;
  const what =
    state === "held" && isNote === true
      ? "note"
      : state === "held" || state === "sent"
        ? "held"
        : "undelivered";
  return {
    what,
    since: receivedAt,
    letters: [letter],
    ...(order === undefined ? {} : { order }),
    contacts: from === undefined ? [] : [from],
    points: [{ letter, says: `“${subject}”: ${unansweredWhy(record) ?? ""}` }],
  };
}

/** A manager who was not reached with a copy. */
function waitingCopy({ letter, receivedAt, orders, answer }: LetterRecord): Waiting[] {
  if (answer?.unreached === undefined) return [];
  const [order] = orders;
  const says = `the copy of its answer was not delivered: ${answer.unreached}`;
  return [
    {
      what: "copy",
      since: receivedAt,
      letters: [letter],
      ...(order === undefined ? {} : { order }),
      contacts: [],
      points: [{ letter, says }],
    },
  ];
}

/** Whether a letter waits although none of its orders waits for what it says. */
function waitsBesides(letter: LetterRecord): boolean {
  return letter.orders.length === 0 || besidesWords(letter).length > 0;
}

/** Whether a letter needs a person besides. */
function saysMore(record: LetterRecord): boolean {
  return record.problems.some(isForPerson);
}

/** Why a letter has no answer to what it says; undefined for one that was taken. */
function unansweredWhy({ state, why }: LetterRecord): string | undefined {
  if (state === "refused") return "the answer could not be delivered";
  if (state === "unknown") return "nobody can see whether its answer went out";
  return state === "held" || why !== undefined ? (why ?? "it was not taken") : undefined;
}

/** What a letter says or brings beside its sheets that needs a person. */
function letterPoints({ letter, problems }: LetterRecord): Point[] {
  const own = problems.filter((problem) => aboutLetter.has(problem.check) && isForPerson(problem));
  return own.map((problem) => ({ letter, says: wordsOf(problem).says }));
}

/** The points of a letter without its words, which stay with its orders until they are settled. */
function besidesWords(letter: LetterRecord): Point[] {
  return letterPoints({
    ...letter,
    problems: letter.problems.filter(({ check }) => !keptByOrders.has(check)),
  });
}

/** Whom to call about an order: "Ines Calloway, 312-555-0117, ines@brightwire.example". Of one without sheets its buyer. */
export function contactsIn({ sheets, buyer }: Pick<OrderRecord, "sheets" | "buyer">): string[] {
  if (sheets.length === 0) return [buyer];
  const contacts = sheets.map(({ contact: { name, phone, email } }) =>
    [name, phone, email].filter((part) => part !== undefined).join(", "),
  );
  return [...new Set(contacts)].filter((contact) => contact !== "");
}

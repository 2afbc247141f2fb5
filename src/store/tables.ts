import type { Generated } from "kysely";

/** Times are ISO 8601 in UTC; JSON is text; truth is 0 or 1. */
export interface Tables {
  letters: {
    id: Generated<number>;
    key: string;
    /** "" where the letter is erased. */
    bytes_sha: string;
    received_at: string;
    state: string;
    why: string | null;
    sender: string | null;
    buyer: string | null;
    subject: string | null;
    message_id: string | null;
    verdict: string | null;
    /** What its own Date field says. */
    dated_at: Generated<string | null>;
    /** Letters of one lane are judged oldest first. */
    lane: Generated<string | null>;
    /** When customer service was told that it waits for a person. */
    noticed_at: Generated<string | null>;
    /** The state that it was in then. */
    noticed_as: Generated<string | null>;
    /** What was known of who sent it: a SenderProof, or "not asked". */
    proof: Generated<string | null>;
    /** The Message-ID with which the letters of its thread began. */
    thread: Generated<string | null>;
    /** "letter"; "let-in", the copy of a held one; or "note", what one of our own people has put into the record. */
    kind: Generated<string>;
    /** Whether something in it needs a person, and when one has dealt with all of it. */
    for_person: Generated<number>;
    dealt_with_at: Generated<string | null>;
    /** What the engraving room has to be told of it, as JSON, and when it was told. */
    alarm: Generated<string | null>;
    alarmed_at: Generated<string | null>;
    /** Whether it releases an order whose package is not written yet. */
    to_pack: Generated<number>;
    /** Whose letter it counts as, if one of our own people has let it in. */
    let_in_as: Generated<string | null>;
  };
  /** What is to be done for a letter, and in whose hands it is. */
  jobs: {
    id: Generated<number>;
    letter: number;
    /** Until when one worker has it to itself, and how often it has changed hands. */
    claimed_until: Generated<string | null>;
    fence: Generated<number>;
    /** Times that the letter was opened; times that sending its answer was begun. */
    opened: Generated<number>;
    tries: Generated<number>;
    /** How often its answer was sent without knowing whether it went out. */
    unsure: Generated<number>;
    /** Not to be taken up again before. */
    due_at: Generated<string | null>;
    /** Since when it waits, because its sender has had enough answers for now. */
    waits_since: Generated<string | null>;
  };
  /** What one worker at a time does or watches, who that is, and until when others leave it to him. */
  leases: { what: string; holder: string; until: string };
  /** What nobody outside may know; made once, when it is first asked for. */
  secrets: { name: string; value: string };
  /** Words that a letter confirms for a project of its buyer's. The project stands here by its key. */
  kept_words: { buyer: string; project: string; word: string; letter: number; kept_at: string };
  /** Lines, by their keys, that may stand in every letter of a sender or of his company. */
  lines: { sender: string; line: string };
  /** How far each mailbox has been handled. */
  marks: { mailbox: string; validity: string; uid: number };
  attachments: { id: string; letter: number; file: string; kind: string; bytes_sha: string };
  /** `shape` is the number of the shape in which the content is stored. */
  sheets: {
    id: string;
    letter: number;
    buyer: string;
    order_key: string;
    kind: string;
    edition: string;
    station: string | null;
    position: number | null;
    verdict: string;
    shape: number;
    content: string;
    /** Its legends as they are cut. */
    cut: Generated<string>;
  };
  problems: {
    id: Generated<number>;
    letter: number;
    order_key: string | null;
    check: string;
    wording: string;
    severity: string;
    verdict: string;
    shape: number;
    facts: string;
    spots: string;
  };
  /** Grows with each change to what a buyer has ordered. */
  buyers: { buyer: string; version: number };
  /** Whose an order number is: the first buyer's who named it. */
  numbers: { key: string; buyer: string; domain: string | null };
  /** The key is "" for what a buyer has sent without a number. */
  orders: {
    id: Generated<number>;
    buyer: string;
    key: string;
    number: string;
    project: string | null;
    opened_at: string;
    /** Its latest revision, and what that came to. */
    latest: number | null;
    verdict: Generated<string | null>;
    /** Whether something of it waits for one of our own people. */
    for_person: Generated<number>;
    /** What of it was handed to engraving last (`Released`), as JSON. */
    released: Generated<string | null>;
    /** When all of it was erased but what counts need. */
    erased_at: Generated<string | null>;
  };
  /** What an order consisted of after one thing happened to it. No verdict: nothing was left of it. */
  revisions: {
    id: Generated<number>;
    order_id: number;
    /** Counted from 1 within its order. */
    number: number;
    at: string;
    cause: string;
    letter: number | null;
    verdict: string | null;
    missing: string;
    carried: string;
    /** Ids of the sheets that its letter has withdrawn. */
    withdrawn: Generated<string>;
    shape: number;
    problems: string;
  };
  revision_sheets: { revision: number; sheet: string };
  questions: {
    id: Generated<number>;
    order_id: number;
    key: string;
    shape: number;
    problem: string;
    station: string | null;
    position: number | null;
    opened_at: string;
    opened_by: number;
    closed_at: Generated<string | null>;
    closed_by: Generated<number | null>;
    /** Counted within its order. */
    number: number;
    /** When somebody said that it is meant so, and in which letter. */
    settled_at: Generated<string | null>;
    settled_by: Generated<number | null>;
    /** Which of our own people decided it; null if its sender settled it. */
    decided_by: Generated<string | null>;
  };
  /** Reminders that the buyer of an order got, and that somebody has to call; by the notes that say so. */
  reminders: { order_id: number; letter: number; what: string; at: string };
  /** Letters that changed an order, and those that are about it and leave it as it is. */
  order_letters: { order_id: number; letter: number };
  answers: {
    letter: number;
    message_id: string;
    recipient: string;
    subject: string;
    bytes_sha: string;
    made_at: string;
    sent_at: string | null;
    words: string | null;
    /** Who gets a copy, as JSON; and what became of copies that were refused. */
    copies: Generated<string>;
    unreached: Generated<string | null>;
  };
  /** Who may come in to the desk's page. No password: somebody else vouches for him. */
  accounts: { user: string; name: string; role: string; password: string | null; is_shut: number };
  /** Who is in, by the hash of a secret that his browser keeps. */
  sessions: { hash: string; user: string; until: string };
  /** Words by which an order is found: of its number, project, people and legends; in capitals. */
  order_terms: { order_id: number; term: string };
  events: {
    id: Generated<number>;
    at: string;
    /** "burin", or who did it. */
    actor: string;
    subject: string;
    subject_id: number | null;
    what: string;
    words: string;
    /** What the tables of orders follow from, as JSON. */
    content: string | null;
    /** Makes the digest one that nobody can guess by trying names. It goes with what was said. */
    salt: string | null;
    /** Stands for actor, words and content in the chain, so that they can be erased. */
    digest: string;
    /** The event that erased what was said. */
    erased_by: Generated<number | null>;
    /** Takes in the hash of the event before. */
    hash: string;
  };
  /** What an erasing has still to delete outside the tables ("bytes", "package"); "traces" until the file holds none. */
  to_delete: { what: string; name: string };
}

import type { Generated } from "kysely";

/** Times are ISO 8601 in UTC; JSON is text; truth is 0 or 1. */
export interface Tables {
  letters: {
    id: Generated<number>;
    key: string;
    bytes_sha: string;
    received_at: string;
    state: string;
    why: string | null;
    sender: string | null;
    buyer: string | null;
    subject: string | null;
    message_id: string | null;
    verdict: string | null;
  };
  attachments: { id: string; letter: number; file: string; kind: string; bytes_sha: string };
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
    counts: number;
    content: string;
  };
  problems: {
    id: Generated<number>;
    letter: number;
    order_key: string | null;
    check: string;
    wording: string;
    severity: string;
    verdict: string;
    facts: string;
    spots: string;
  };
  orders: {
    id: Generated<number>;
    buyer: string;
    key: string;
    number: string;
    project: string | null;
    verdict: string | null;
    missing: string;
    opened_at: string;
    changed_at: string;
  };
  /** What each letter made of an order (no verdict: nothing is left of it), so that a past day can be counted again. */
  order_letters: { order_id: number; letter: number; verdict: string | null; missing: string };
  answers: {
    letter: number;
    message_id: string;
    recipient: string;
    subject: string;
    bytes_sha: string;
    made_at: string;
    sent_at: string | null;
    words: string | null;
  };
  events: { id: Generated<number>; at: string; letter: number; what: string; words: string };
}

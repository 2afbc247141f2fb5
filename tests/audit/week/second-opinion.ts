import { DatabaseSync } from "node:sqlite";

/** The figures of some days, counted by plain SQL over the tables of a record. */
export interface Counted {
  readonly letters: number;
  readonly sheets: number;
  /** "pass 2, fail 1": letters that were taken and answered, by verdict. */
  readonly verdicts: string;
  readonly held: number;
  readonly silent: number;
  readonly opened: number;
  readonly right: number;
  /** Of orders that passed: letters they took, and seconds from the first, from the least to the most. */
  readonly rounds: string;
  readonly seconds: string;
  /** Seconds to each answer, from the least to the most. */
  readonly answers: string;
  /** "spelling 3 in 2": slips and their orders, by check; by buyer alike. */
  readonly checks: string;
  readonly buyers: string;
  /** "spelling yes 1, spelling open 2". */
  readonly questions: string;
  readonly waits: number;
  readonly pairs: number;
}

/** A slip is what an order was asked or told to mend, however often: it was not open when the days began. */
const isSlip = `opened_at >= :a AND opened_at < :b
  AND json_extract(problem, '$.check') NOT IN ('manager-word', 'letter-still-open')
  AND NOT EXISTS (SELECT 1 FROM questions AS e WHERE e.order_id = q.order_id AND e.key = q.key
    AND e.opened_at < :a AND (e.closed_at IS NULL OR e.closed_at >= :a))`;

/** :a is the first moment of the days and :b the first after them. Each query says what it takes as true. */
const queries = {
  letters: `SELECT count(*) FROM letters WHERE kind = 'letter' AND received_at >= :a AND received_at < :b`,
  // What was judged by then has its sheets.
  sheets: `SELECT count(*) FROM sheets JOIN letters ON letters.id = sheets.letter
    WHERE letters.kind = 'letter' AND received_at >= :a AND received_at < :b AND ${judgedBefore("letters.id")}`,
  // Whatever was not taken has a reason beside it.
  verdicts: `SELECT group_concat(words, ', ') FROM (
    SELECT verdict || ' ' || count(*) AS words FROM letters
    WHERE kind = 'letter' AND why IS NULL AND received_at >= :a AND received_at < :b AND ${judgedBefore("letters.id")}
    GROUP BY verdict ORDER BY verdict)`,
  held: `SELECT count(*) FROM letters WHERE kind = 'letter' AND why IS NOT NULL AND state <> 'silent'
    AND received_at >= :a AND received_at < :b`,
  silent: `SELECT count(*) FROM letters WHERE kind = 'letter' AND state = 'silent'
    AND received_at >= :a AND received_at < :b`,
  opened: `SELECT count(*) FROM orders WHERE key <> '' AND opened_at >= :a AND opened_at < :b`,
  // Not right: a letter before the first pass left it failing, asking or for a person, and not for a manager's word alone.
  right: `SELECT count(*) FROM orders WHERE key <> '' AND opened_at >= :a AND opened_at < :b AND NOT EXISTS (
    SELECT 1 FROM revisions AS r WHERE r.order_id = orders.id AND r.at < :b AND r.cause = 'letter'
      AND r.number < coalesce((SELECT min(number) FROM revisions WHERE order_id = orders.id AND verdict = 'pass' AND at < :b), 999)
      AND (r.verdict IN ('fail', 'confirm')
        OR r.verdict = 'person' AND r.problems NOT LIKE '%manager-word%'))`,
  rounds: `SELECT group_concat(n, ' ') FROM (
    SELECT (SELECT count(*) FROM revisions WHERE order_id = p.order_id AND number <= p.number AND cause = 'letter') AS n
    FROM (${firstPasses()}) AS p WHERE p.at >= :a ORDER BY n)`,
  seconds: `SELECT group_concat(n, ' ') FROM (
    SELECT round((julianday(p.at) - julianday(opened_at)) * 86400) AS n
    FROM (${firstPasses()}) AS p JOIN orders ON orders.id = p.order_id WHERE p.at >= :a ORDER BY n)`,
  answers: `SELECT group_concat(n, ' ') FROM (
    SELECT round((julianday(sent_at) - julianday(received_at)) * 86400) AS n FROM letters JOIN answers ON answers.letter = letters.id
    WHERE kind = 'letter' AND received_at >= :a AND received_at < :b AND sent_at < :b ORDER BY n)`,
  checks: tally(`json_extract(problem, '$.check')`),
  buyers: tally(`(SELECT buyer FROM orders WHERE orders.id = q.order_id)`),
  questions: `SELECT group_concat(words, ', ') FROM (
    SELECT kind || ' ' || ending || ' ' || count(*) AS words FROM (
      SELECT json_extract(problem, '$.check') AS kind, CASE
        WHEN settled_at < :b AND decided_by IS NULL THEN 'yes'
        WHEN settled_at < :b THEN 'decided'
        WHEN closed_at IS NULL OR closed_at >= :b THEN 'open'
        WHEN (SELECT withdrawn FROM revisions WHERE id = closed_by) <> '[]' THEN 'withdrawn'
        ELSE 'corrected' END AS ending
      FROM questions AS q WHERE ${isSlip} AND json_extract(problem, '$.severity') = 'asks')
    GROUP BY kind, ending ORDER BY words)`,
  // Held letters that nobody let in, open questions that need a person, and words that an order still carries.
  waits: `SELECT (SELECT count(*) FROM letters WHERE kind = 'letter' AND why IS NOT NULL AND state <> 'silent'
      AND received_at < :b AND (dealt_with_at IS NULL OR dealt_with_at >= :b))
    + (SELECT count(*) FROM questions WHERE opened_at < :b AND (closed_at IS NULL OR closed_at >= :b)
      AND json_extract(problem, '$.verdict') = 'person' AND json_extract(problem, '$.check') <> 'letter-still-open')
    + (SELECT count(*) FROM revisions AS r WHERE at < :b AND carried LIKE '%"words"%'
      AND NOT EXISTS (SELECT 1 FROM revisions WHERE order_id = r.order_id AND number > r.number AND at < :b))`,
  pairs: `SELECT count(DISTINCT order_id || ' ' || letter) FROM order_letters JOIN letters ON letters.id = letter
    WHERE kind <> 'note' AND received_at >= :a AND received_at < :b AND ${judgedBefore("letters.id")}`,
} as const;

function judgedBefore(letter: string): string {
  return `EXISTS (SELECT 1 FROM events WHERE subject = 'letter' AND subject_id = ${letter}
    AND what IN ('ready', 'held', 'silent') AND at < :b)`;
}

function firstPasses(): string {
  return `SELECT order_id, number, at FROM revisions WHERE verdict = 'pass' AND at < :b
    AND number = (SELECT min(number) FROM revisions AS f WHERE f.order_id = revisions.order_id AND f.verdict = 'pass')
    AND order_id IN (SELECT id FROM orders WHERE key <> '')`;
}

/** Slips and their orders, by something of them. */
function tally(of: string): string {
  return `SELECT group_concat(words, ', ') FROM (
    SELECT ${of} || ' ' || count(DISTINCT order_id || ' ' || key) || ' in ' || count(DISTINCT order_id) AS words
    FROM questions AS q WHERE ${isSlip} GROUP BY ${of} ORDER BY words)`;
}

/** Counts from one moment to another. */
export function secondOpinion(file: string, from: string, to: string): Counted {
  const db = new DatabaseSync(file, { readOnly: true });
  const one = (query: string): unknown => {
    const statement = db.prepare(query);
    statement.setAllowUnknownNamedParameters(true);
    return Object.values(statement.get({ a: from, b: to }) ?? {})[0] ?? "";
  };
  const counted = Object.fromEntries(Object.entries(queries).map(([name, query]) => [name, one(query)]));
  db.close();
  return counted as unknown as Counted;
}

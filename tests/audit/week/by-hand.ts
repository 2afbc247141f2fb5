import type { Counted } from "./second-opinion.ts";

/** Days of the script, from the first to the last, and what they come to. */
export interface Expected extends Counted {
  readonly first: string;
  readonly last: string;
}

// Worked out by hand from the script alone. An answer goes out twenty seconds after its letter where nothing is said.
// Orders pass with a letter, so the seconds from the first letter's revision to the pass are those between the letters,
// but for m7 (ten minutes) and m8 (two minutes).
const hour = 3600;

function list(...numbers: readonly number[]): string {
  return numbers.map((one) => one.toFixed(1)).join(" ");
}

const twenties = (n: number): number[] => Array<number>(n).fill(20);

/** The days of the week one by one, and the week as a whole. */
export const byHand: readonly Expected[] = [
  {
    first: "2026-11-16",
    last: "2026-11-16",
    letters: 8, // m1 to m8
    sheets: 9, // m5 and m7 have two; m8 is not read by midnight
    verdicts: "confirm 2, fail 1, pass 2, waiting 1", // m2 m7, m3, m1 m4, m5
    held: 1, // m6: a stranger names an order of Greta's
    silent: 0,
    opened: 5, // FM-1001 FM-2002 OM-11 BH-21 IS-31; OM-52 after midnight
    right: 2, // FM-1001, BH-21 so far
    rounds: "1 2", // FM-1001 with its first letter, OM-11 with its second
    seconds: list(0, hour),
    answers: list(...twenties(6), 600), // the stranger has an answer too
    checks: "character-not-cuttable 1 in 1, spelling 3 in 2", // m3; m2 and both of m7
    buyers: "greta@fallowmere.example 1 in 1, jo@oakmoor.example 1 in 1, ray@ishcombe.example 2 in 1",
    questions: "spelling open 3", // what stops is no question
    waits: 1, // m6
    pairs: 6, // m1 to m5, m7: the stranger's letter is about no order
  },
  {
    first: "2026-11-17",
    last: "2026-11-17",
    letters: 8, // t1 to t8
    sheets: 6, // t2 t4 t6 t8 one, t5 two
    verdicts: "confirm 2, fail 1, pass 3, person 1", // t3 t4, t5, t1 t2 t7, t6
    held: 1, // t8: its sender is a program
    silent: 0,
    opened: 3, // OM-52 (of m8), FM-3003, MB-61
    right: 2, // OM-52; MB-61 waits for its manager's word, which is no fault of the letter
    rounds: "1 1 2 2", // OM-52, MB-61 (the manager's YES is no letter of the buyer), FM-2002, BH-21
    seconds: list(0, 2 * hour, 20 * hour, 22.5 * hour), // OM-52, MB-61 13 to 15, BH-21 13 to 9, FM-2002 9:30 to 8
    answers: list(...twenties(7)), // t8 has none
    checks: "character-not-cuttable 1 in 1", // t5; t4 repeats what m7 was asked
    buyers: "greta@fallowmere.example 1 in 1",
    questions: "",
    waits: 2, // m6, t8
    pairs: 7, // t1 to t7
  },
  {
    first: "2026-11-18",
    last: "2026-11-18",
    letters: 5, // w1 to w5
    sheets: 4, // w1, two of w3, w4
    verdicts: "fail 1, pass 2, waiting 1", // w4, w1 w2, w3
    held: 0,
    silent: 1, // w5: an absence note
    opened: 1, // OM-73
    right: 0, // what completes it in w4 is wrong
    rounds: "4", // IS-31: m7 t3 t4 w1
    seconds: list(33.5 * hour - 600 + 20), // Monday 23:40:00 to Wednesday 9:00:20
    answers: list(...twenties(4)),
    checks: "character-not-cuttable 1 in 1", // w4
    buyers: "jo@oakmoor.example 1 in 1",
    questions: "",
    waits: 2, // m6, t8
    pairs: 4, // w1 to w4
  },
  {
    first: "2026-11-19",
    last: "2026-11-19",
    letters: 4, // h1 to h4
    sheets: 4,
    verdicts: "confirm 1, pass 2, person 1", // h2, h1 h4, h3
    held: 0,
    silent: 0,
    opened: 3, // BH-82, IS-93, FM-4004 when t8 is let in
    right: 2, // IS-93, FM-4004
    rounds: "1 1 1 3", // BH-82 (we said yes), IS-93, FM-4004, OM-73 (w3 w4 h1)
    seconds: list(0, 0, hour, 24 * hour), // IS-93, FM-4004, BH-82 10:30 to 11:30, OM-73
    answers: list(...twenties(4)),
    checks: "order-released 1 in 1, spelling 1 in 1", // h3 changes what is released; h2
    buyers: "greta@fallowmere.example 1 in 1, nell@brackenholt.example 1 in 1",
    questions: "order-released open 1, spelling decided 1",
    waits: 2, // m6, FM-1001
    pairs: 4,
  },
  {
    first: "2026-11-20",
    last: "2026-11-20",
    letters: 6, // f1 to f6
    sheets: 8, // f1 f2 f3 one, f4 two, f6 three
    verdicts: "confirm 1, fail 2, pass 1, person 2", // f1, f2 f6, f4, f3 f5
    held: 0,
    silent: 0,
    opened: 5, // FM-5505 MB-72 OM-84 OM-95 BH-93
    right: 2, // OM-84 and OM-95; the words of f5 come after OM-84 passed
    rounds: "1 1",
    seconds: list(0, 0),
    answers: list(...twenties(6)),
    checks: "character-not-cuttable 2 in 2, spelling 2 in 2", // f2 f6; f1 f6
    buyers: "greta@fallowmere.example 1 in 1, mia@marrowby.example 1 in 1, nell@brackenholt.example 2 in 1",
    questions: "spelling open 2",
    waits: 4, // m6, FM-1001, MB-72 for its manager's word, the words of f5
    pairs: 7, // f4 is about two orders
  },
  {
    first: "2026-11-16",
    last: "2026-11-20",
    letters: 31, // 8 + 8 + 5 + 4 + 6
    sheets: 32, // the days' 31, and that of m8
    verdicts: "confirm 6, fail 5, pass 11, person 4, waiting 2", // the days' 10 that passed, and m8
    held: 2,
    silent: 1,
    opened: 17, // 5 + 3 + 1 + 3 + 5
    // FM-1001 BH-21 OM-52 MB-61 IS-93 FM-4004 OM-84 OM-95. BH-21 counted on Monday too, OM-73 never did.
    right: 8,
    rounds: "1 1 1 1 1 1 1 1 2 2 2 3 4",
    // Six orders at once, OM-11 and BH-82 within an hour, MB-61, BH-21, FM-2002, OM-73, IS-31.
    seconds: list(
      ...Array<number>(6).fill(0),
      ...Array<number>(2).fill(hour),
      2 * hour,
      20 * hour,
      22.5 * hour,
      24 * hour,
      33.5 * hour - 600 + 20,
    ),
    answers: list(...twenties(27), 120, 600), // all but t8 and w5
    // Four days had letters that cannot be cut: m3 t5 w4 f2 f6. Words: m2, both of m7, h2 f1 f6.
    checks: "character-not-cuttable 5 in 5, order-released 1 in 1, spelling 6 in 5",
    buyers:
      "greta@fallowmere.example 4 in 4, jo@oakmoor.example 2 in 2, mia@marrowby.example 1 in 1, nell@brackenholt.example 3 in 2, ray@ishcombe.example 2 in 1",
    // m2 was answered with YES, T-2 of m7 withdrawn and T-1 mended, h2 decided by us, f1 and f6 are open.
    questions:
      "order-released open 1, spelling corrected 1, spelling decided 1, spelling open 2, spelling withdrawn 1, spelling yes 1",
    waits: 4,
    pairs: 30, // the days' 28, m8, and t8 that was let in
  },
];

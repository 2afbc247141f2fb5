import * as fc from "fast-check";
import { type Legend, type Number, spots, type Typed, type Who } from "./ledger.ts";
import type { Step } from "./steps.ts";

const who = fc.constantFrom<Who>("buyer", "buyer", "colleague", "stranger");

const order = fc.constantFrom<Number>("BW-2207", "BW-2207", "KF-31");

const spot = fc.constantFrom(...spots);

const typed: fc.Arbitrary<Typed> = fc.record({
  spot,
  legend: fc.constantFrom<Legend>(
    "ENTRY",
    "LOUNGE",
    "STAIRS",
    "ENTRY",
    "LOUNGE",
    "SALONA",
    "MAIN SW",
    "A VERY LONG LEGEND",
  ),
  badPhone: fc.constantFrom(false, false, false, false, true),
});

const few = fc.constantFrom(false, false, false, true);

const pick = fc.nat(5);

/** One thing that a buyer, a colleague, a stranger or one of our own people does. */
export const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 5,
    arbitrary: fc.record({
      kind: fc.constant("send" as const),
      who,
      order,
      sheets: fc.array(typed, { maxLength: 4 }),
      scan: few,
      words: few,
      inReply: fc.boolean(),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      kind: fc.constant("answer" as const),
      who,
      order,
      pick,
      says: fc.constantFrom("YES" as const, "YES" as const, "NO" as const),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant("cancel" as const),
      who,
      order,
      what: fc.constantFrom(...spots, "S-1" as const, "K-40" as const, "order" as const),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      kind: fc.constant("settle" as const),
      order,
      pick,
      does: fc.constantFrom("yes" as const, "yes" as const, "waive" as const, "no" as const, "say" as const),
    }),
  },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant("read" as const), pick }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant("place" as const), order, pick, spot, to: order }) },
  {
    weight: 3,
    arbitrary: fc.record({
      kind: fc.constant("release" as const),
      order,
      how: fc.constantFrom("person" as const, "person" as const, "itself" as const, "torn" as const),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record(
      {
        kind: fc.constant("cut" as const),
        order,
        mark: fc.constantFrom("S-1" as const, "K-40" as const, "T-9" as const, "L-60" as const),
      },
      { requiredKeys: ["kind", "order"] },
    ),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant("let in" as const), pick }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant("put aside" as const), pick }) },
);

/** An order that is released, perhaps cut, changed or sent as it was, perhaps cancelled, settled and released again. */
export const again: fc.Arbitrary<Step[]> = fc
  .record({
    order,
    how: fc.constantFrom("person" as const, "itself" as const, "torn" as const),
    isCut: fc.boolean(),
    isCancelled: few,
    legend: fc.constantFrom<Legend>("ENTRY", "LOUNGE", "STAIRS", "SALONA"),
    settles: fc.nat(3),
  })
  .map(({ order: number, how, isCut, isCancelled, legend, settles }): Step[] => {
    const cut: Step = { kind: "cut", order: number };
    const spot = number === "KF-31" ? "L-60 alone" : "T-9 alone";
    const cancel: Step = { kind: "cancel", who: "buyer", order: number, what: spot };
    return [
      { kind: "release", order: number, how },
      ...(isCut ? [cut] : []),
      {
        kind: "send",
        who: "buyer",
        order: number,
        sheets: [{ spot, legend, badPhone: false }],
        scan: false,
        words: false,
        inReply: true,
      },
      ...(isCancelled ? [cancel] : []),
      ...Array.from(
        { length: settles },
        (): Step => ({ kind: "settle", order: number, pick: 0, does: "yes" }),
      ),
      { kind: "release", order: number, how: "person" },
      cut,
    ];
  });

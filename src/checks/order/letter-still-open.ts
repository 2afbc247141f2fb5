import type { Problem } from "../../trade/problem.ts";
import { defineOrderCheck } from "../check.ts";
import { subject } from "../sample.ts";

export const letterStillOpen = defineOrderCheck({
  id: "letter-still-open",
  title: "Words of an earlier letter wait for a person",
  severity: "asks",
  verdict: "person",
  source: { kind: "house" },
  why: "What a buyer writes in words may change the order. Until a person has read it, no later sheet makes the order pass.",
  wordings: {
    open: {
      says: "An earlier letter about this order says: “{words}”",
      fix: "Nothing to do. A person reads it and writes to you.",
    },
    manager: {
      says: "{by}, who manages this order, has written: “{words}”",
      outside: "{by}, who manages this order, has written to us about it before.",
      fix: "Nothing to do. A person reads it.",
    },
  },
  passing: [{ shows: "an order of sheets alone", given: ({ completeOrder }) => subject(completeOrder()) }],
  failing: [
    {
      shows: "a wish",
      given: ({ completeOrder }) => ({
        ...subject(completeOrder()),
        carried: [{ letter: "1", what: "words", text: "Do not cut yet." }],
      }),
      wording: "open",
      says: "An earlier letter about this order says: “Do not cut yet.”",
    },
    {
      shows: "words of its manager",
      given: ({ completeOrder }) => ({
        ...subject(completeOrder()),
        carried: [{ letter: "1", what: "words", text: "Do not cut yet.", by: "Ana Reyes" }],
      }),
      wording: "manager",
      says: "Ana Reyes, who manages this order, has written: “Do not cut yet.”",
    },
  ],
  *find({ carried = [] }, _, say) {
    for (const one of carried) {
      if (one.what !== "words") continue;
      const { text: words, by } = one;
      yield by === undefined ? say("open", { words }, []) : say("manager", { by, words }, []);
    }
  },
});

/** What the next letter is told of words that this one leaves open. */
export function stillOpen({ text: words, by }: { readonly text: string; readonly by?: string }): Problem {
  const { id: check, severity, verdict = "person" } = letterStillOpen;
  return by === undefined
    ? { check, wording: "open", severity, verdict, facts: { words }, spots: [] }
    : { check, wording: "manager", severity, verdict, facts: { by, words }, spots: [] };
}

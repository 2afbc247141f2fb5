import { piecesKey } from "../../orders/managed.ts";
import { isAsReleased, pieceKey } from "../../orders/piece.ts";
import { defineOrderCheck } from "../check.ts";
import { type Sample, subject } from "../sample.ts";

const manager = { name: "Ana Reyes", address: "ana@quillgate.example" };
const released = (sample: Sample) => ({
  revision: 1,
  at: "2026-11-09T15:00:00.000Z",
  on: "2026-11-09",
  by: "Rosa Imhoff",
  pieces: sample.completeOrder().map((sheet) => ({ sheet: sheet.id, key: pieceKey(sheet), engraved: false })),
});

export const managerWord = defineOrderCheck({
  id: "manager-word",
  title: "An order waits for the word of its manager",
  severity: "asks",
  verdict: "person",
  source: { kind: "house" },
  why: "The settings name a manager for such orders, without whose word none of them is cut. The word holds for the order as it stood; what changes afterwards needs it anew.",
  wordings: {
    waits: {
      says: "This order waits for the word of {name}, who manages it.",
      fix: "{name} replies to this letter with this number and YES, or NO.",
    },
  },
  passing: [
    { shows: "an order without a manager", given: ({ completeOrder }) => subject(completeOrder()) },
    {
      shows: "an order as it was released",
      given: (sample) => ({
        ...subject(sample.completeOrder()),
        awaits: manager,
        released: released(sample),
      }),
    },
  ],
  failing: [
    {
      shows: "a complete order of a manager who has not spoken",
      given: ({ completeOrder }) => ({ ...subject(completeOrder()), awaits: manager }),
      wording: "waits",
      says: "This order waits for the word of Ana Reyes, who manages it.",
      fix: "Ana Reyes replies to this letter with this number and YES, or NO.",
    },
  ],
  *find({ order, released, awaits }, _, say) {
    if (awaits === undefined || (released !== undefined && isAsReleased(order.sheets, released))) return;
    const problem = say("waits", { name: awaits.name }, []);
    // The pieces make it another question when the order has changed.
    yield { ...problem, facts: { ...problem.facts, pieces: piecesKey(order.sheets) } };
  },
});

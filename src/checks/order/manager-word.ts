import { createHash } from "node:crypto";
import { pieceKey } from "../../orders/piece.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { defineOrderCheck } from "../check.ts";
import { subject } from "../sample.ts";

const manager = { name: "Joan Mercer", address: "joan@quillgate.example" };
const managed = { manager, waits: true };

export const managerWord = defineOrderCheck({
  id: "manager-word",
  title: "An order waits for its manager's word",
  severity: "asks",
  verdict: "person",
  source: { kind: "house" },
  why: "Some projects are watched over by one of us, who knows what was promised on the site. What the manager has not seen is not cut. The word holds for the order as it stands: a change needs it anew.",
  wordings: {
    waits: {
      says: "This order, as it stands now (state {state}), waits for the word of {manager}, who manages it for us.",
      fix: "{manager} has a copy of this letter and answers it. You need do nothing.",
    },
  },
  passing: [
    { shows: "an order that nobody manages", given: ({ completeOrder }) => subject(completeOrder()) },
    {
      shows: "a manager who only gets copies",
      given: ({ completeOrder }) => ({ ...subject(completeOrder()), managed: { manager, waits: false } }),
    },
  ],
  failing: [
    {
      shows: "an order of a project whose manager has to agree",
      given: ({ completeOrder }) => ({ ...subject(completeOrder()), managed }),
      wording: "waits",
      says: "This order, as it stands now (state 84C63E), waits for the word of Joan Mercer, who manages it for us.",
      fix: "Joan Mercer has a copy of this letter and answers it. You need do nothing.",
    },
  ],
  *find({ order, managed: by }, _, say) {
    if (by?.waits !== true) return;
    yield say("waits", { manager: by.manager.name, state: stateOf(order.sheets) }, []);
  },
});

/** A short name for what an order consists of: another for every change to what would be cut. */
function stateOf(sheets: readonly Sheet[]): string {
  const keys = sheets.map(pieceKey).toSorted();
  return createHash("sha256").update(keys.join("\n")).digest("hex").slice(0, 6).toUpperCase();
}

import { leftOutIn } from "../../orders/left-out.ts";
import { pieceKey } from "../../orders/piece.ts";
import { at, defineOrderCheck, type OrderSubject } from "../check.ts";
import { type Sample, subject } from "../sample.ts";

const list = { file: "stations.xlsx", row: 3, cells: {}, unread: [] } as const;

/** An order of a list, of which a row came again when another had come for a device alone. */
function cameAgain(sample: Sample, alone: "left" | "added"): OrderSubject {
  const [old, now] = [sample.deviceAt(2, { list }), sample.deviceAt(2, { list, id: "2/1" })];
  const other = sample.aloneDevice({ list, id: alone === "left" ? "1/9" : "2/9" });
  return { ...subject([sample.plate(), now, other]), replaced: [{ old, now, how: "place" }] };
}

export const rowLeftOut = defineOrderCheck({
  id: "row-left-out",
  title: "A list came again without a row that it had",
  severity: "asks",
  sender: "settles",
  source: { kind: "house" },
  why: "Whoever deletes a row of a list or changes its station mark, and sends the list again, may no longer want what the row ordered. Whoever sends only the rows that he has corrected wants it all the same.",
  wordings: {
    gone: {
      says: "An earlier list ordered this, and the list that came after it leaves it out. It would still be made.",
      fix: "If it is not wanted, reply “CANCEL” and its station mark.",
      stays: true,
    },
  },
  passing: [
    { shows: "sheets that came as sheets", given: ({ completeOrder }) => subject(completeOrder()) },
    { shows: "a row that was added", given: (sample) => cameAgain(sample, "added") },
  ],
  failing: [
    {
      shows: "a row that was deleted",
      given: (sample) => cameAgain(sample, "left"),
      wording: "gone",
    },
  ],
  *find({ order: { sheets }, replaced = [], late = [] }, _, say) {
    for (const sheet of leftOutIn({ sheets, replaced, late })) {
      const problem = say("gone", {}, at(sheet));
      // The piece makes it another question once something else would be cut.
      yield { ...problem, facts: { piece: pieceKey(sheet) } };
    }
  },
});

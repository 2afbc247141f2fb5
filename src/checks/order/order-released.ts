import { contentKey } from "../../orders/keys.ts";
import { pieceKey } from "../../orders/piece.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { at, defineOrderCheck, type OrderSubject } from "../check.ts";
import { type Sample, subject } from "../sample.ts";

const released = (sample: Sample, cut: readonly string[] = []) =>
  ({
    revision: 1,
    at: "2026-11-09T15:00:00.000Z",
    on: "2026-11-09",
    by: "Rosa Imhoff",
    pieces: sample
      .completeOrder()
      .map((sheet) => ({ sheet: sheet.id, key: pieceKey(sheet), engraved: cut.includes(sheet.id) })),
  }) as const;
const again = (sample: Sample) =>
  sample.deviceAt(2, { id: "2/1", file: "again.pdf", finish: sample.otherFinish });
const changed = (sample: Sample, cut: readonly string[] = []): OrderSubject => {
  const old = sample.deviceAt(2);
  const sheets = sample.completeOrder().map((sheet) => (sheet.id === old.id ? again(sample) : sheet));
  return {
    ...subject(sheets),
    replaced: [{ old, now: again(sample), how: "place" }],
    released: released(sample, cut),
  };
};

export const orderReleased = defineOrderCheck({
  id: "order-released",
  title: "An order changes after it was released to engraving",
  severity: "asks",
  verdict: "person",
  source: { kind: "house" },
  why: "What is released may lie under the cutter already. Whatever touches it then has to reach the engraving room at once, and somebody has to say which pieces are void.",
  wordings: {
    different: {
      says: "This order was released to engraving on {on}. Different now: {files}.",
      fix: "A person reads it, stops the engraving if there is time, and writes to you.",
    },
    engraved: {
      says: "This order was released to engraving on {on}, and some of it is engraved already. Different now: {files}.",
      fix: "A person reads it and writes to you. What is engraved cannot be changed; a new piece has to be made.",
    },
    less: {
      says: "This order was released to engraving on {on}. Since then it has lost {count:sheet}.",
      fix: "A person reads it, stops the engraving if there is time, and writes to you.",
    },
  },
  passing: [
    { shows: "an order that was not released", given: ({ completeOrder }) => subject(completeOrder()) },
    {
      shows: "an order as it was released",
      given: (sample) => ({ ...subject(sample.completeOrder()), released: released(sample) }),
    },
  ],
  failing: [
    {
      shows: "another sheet for a place",
      given: (sample) => changed(sample),
      wording: "different",
      says: "This order was released to engraving on 2026-11-09. Different now: again.pdf.",
    },
    {
      shows: "another sheet for a device that is engraved",
      given: (sample) => changed(sample, [sample.deviceAt(2).id]),
      wording: "engraved",
      says: "This order was released to engraving on 2026-11-09, and some of it is engraved already. Different now: again.pdf.",
    },
    {
      shows: "a sheet less",
      given: (sample) => ({ ...subject(sample.completeOrder().slice(0, -1)), released: released(sample) }),
      wording: "less",
      says: "This order was released to engraving on 2026-11-09. Since then it has lost 1 sheet.",
    },
  ],
  *find({ order, released }, _, say) {
    if (released === undefined) return;
    const { on, pieces, revision } = released;
    const [was, is] = [new Set(pieces.map(({ key }) => key)), new Set(order.sheets.map(pieceKey))];
    const came = order.sheets.filter((sheet) => !was.has(pieceKey(sheet)));
    const gone = pieces.filter(({ key }) => !is.has(key));
    const files = came.map(({ file }: Sheet) => file);
    const spots = came.flatMap((sheet) => at(sheet));
    if (came.length + gone.length === 0) return;
    const problem =
      came.length > 0
        ? say(gone.some(({ engraved }) => engraved) ? "engraved" : "different", { on, files }, spots)
        : say(
            "less",
            { on, count: gone.length },
            order.sheets.slice(0, 1).flatMap((sheet) => at(sheet)),
          );
    // Whoever has decided one difference has not decided another, though it may read the same.
    const differs = contentKey({
      revision,
      came: came.map(pieceKey).toSorted(),
      gone: gone.map(({ key }) => key).toSorted(),
    });
    yield { ...problem, facts: { ...problem.facts, differs } };
  },
});

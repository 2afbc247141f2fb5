import { at, defineOrderCheck, type OrderSubject } from "../check.ts";
import { type Sample, subject } from "../sample.ts";

const crossed = (sample: Sample): OrderSubject => {
  const sheets = sample.completeOrder();
  return { ...subject(sheets), crossed: sheets.slice(0, 1).map((sheet) => ({ sheet, cancelledBy: 2 })) };
};

export const sheetAfterCancellation = defineOrderCheck({
  id: "sheet-after-cancellation",
  title: "A sheet crossed with the letter that cancels its place",
  severity: "asks",
  sender: "settles",
  source: { kind: "house" },
  why: "A sheet that comes after its place was cancelled is wanted again, as a rule. Where its letter was written before the cancellation and came behind it, its sender may never have wanted it again. Nor may whoever sends a whole set anew for the sake of another sheet, or a sheet that stands elsewhere by now.",
  wordings: {
    crossed: {
      says: "{file} came after you had cancelled it, but its letter bears the earlier date.",
      fix: "If it is not wanted, cancel it once more in a reply to this letter.",
    },
    again: {
      says: "{file} came again as it was, although it had been cancelled or put elsewhere before.",
      fix: "If it is not wanted, cancel it once more in a reply to this letter.",
    },
  },
  passing: [
    {
      shows: "sheets of places that nobody has cancelled",
      given: ({ completeOrder }) => subject(completeOrder()),
    },
  ],
  failing: [
    {
      shows: "a sheet that was under way when its place was cancelled",
      given: crossed,
      wording: "crossed",
      says: "S-104 plate.pdf came after you had cancelled it, but its letter bears the earlier date.",
    },
    {
      shows: "a cancelled sheet in a set that came whole once more",
      given: (sample) => {
        const { crossed: some = [], ...order } = crossed(sample);
        return { ...order, crossed: some.map((one) => ({ ...one, again: true })) };
      },
      wording: "again",
      says: "S-104 plate.pdf came again as it was, although it had been cancelled or put elsewhere before.",
    },
  ],
  *find({ crossed: sheets = [] }, _, say) {
    for (const { sheet, cancelledBy, again = false } of sheets) {
      const problem = say(again ? "again" : "crossed", { file: sheet.file }, at(sheet));
      // Cancelled once more, it is another question.
      yield { ...problem, facts: { ...problem.facts, cancelledBy } };
    }
  },
});

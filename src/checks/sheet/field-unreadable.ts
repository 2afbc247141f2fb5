import { at, defineSheetCheck, labelOf } from "../check.ts";
import { plate, without } from "../sample.ts";

export const fieldUnreadable = defineSheetCheck({
  id: "field-unreadable",
  title: "Something typed cannot be understood",
  severity: "stops",
  source: { kind: "house" },
  why: "Where the sheet wants a choice or a number, a guess at what was meant would be cut as surely as the right answer.",
  wordings: {
    unread: {
      says: "{field} says “{typed}”; it wants {wants}.",
      fix: "Write {wants} there.",
    },
  },
  passing: [{ shows: "a number where one is wanted", given: plate() }],
  failing: [
    {
      shows: "a word where a number is wanted",
      given: without(
        plate({ unread: [{ place: "gangs", typed: "double", wants: "a number from 2 to 6" }] }),
        "gangs",
      ),
      wording: "unread",
    },
  ],
  *find(sheet, _catalogue, say) {
    for (const { place, typed, wants } of sheet.unread)
      yield say("unread", { field: labelOf(sheet, place), typed, wants }, at(sheet, place));
  },
});

import { at, defineSheetCheck, labelOf } from "../check.ts";
import { without } from "../sample.ts";

export const fieldUnreadable = defineSheetCheck({
  id: "field-unreadable",
  title: "Something typed cannot be understood",
  severity: "stops",
  source: { kind: "house" },
  why: "Where the sheet wants a choice or a number, a guess at what was meant would be cut as surely as the right answer.",
  wordings: {
    unread: {
      says: "“{field}” says “{typed}”, which cannot be understood.",
      fix: "It wants {wants}.",
    },
    position: {
      says: "“{field}” says “{typed}”, which is no position.",
      fix: "It wants {wants}. For a device standing alone leave it empty.",
    },
  },
  passing: [{ shows: "a number where one is wanted", given: ({ plate }) => plate() }],
  failing: [
    {
      shows: "a word where a number is wanted",
      given: ({ plate }) =>
        without(
          plate({ unread: [{ place: "gangs", typed: "double", wants: "a number from 2 to 6" }] }),
          "gangs",
        ),
      wording: "unread",
      says: "“Gangs of the plate” says “double”, which cannot be understood.",
      fix: "It wants a number from 2 to 6.",
    },
    {
      shows: "a quantity where the position is wanted",
      given: ({ device }) =>
        without(
          device({ unread: [{ place: "position", typed: "1 pc", wants: "a number such as 2, or 2 of 4" }] }),
          "position",
          "standing",
        ),
      wording: "position",
      says: "“Position” says “1 pc”, which is no position.",
      fix: "It wants a number such as 2, or 2 of 4. For a device standing alone leave it empty.",
    },
  ],
  *find(sheet, _catalogue, say) {
    for (const { place, typed, wants } of sheet.unread) {
      const mayStandAlone = sheet.kind === "device" && sheet.standing !== "in-plate";
      yield say(
        place === "position" && mayStandAlone ? "position" : "unread",
        { field: labelOf(sheet, place), typed, wants },
        at(sheet, place),
      );
    }
  },
});

import { at, defineSheetCheck, labelOf } from "../check.ts";
import { isBlank, isMissing } from "../required.ts";
import { unprinted } from "../sample.ts";

const ways = ["contact.email", "contact.phone"] as const;

export const noWayToReachYou = defineSheetCheck({
  id: "no-way-to-reach-you",
  title: "Neither e-mail nor phone is given",
  severity: "stops",
  waivable: true,
  source: { kind: "house" },
  why: "The sheet goes to the engraver without the letter; who cuts it must be able to ask.",
  wordings: {
    neither: {
      says: "There is no way to reach you: nothing is filled in at {ways|or}.",
      fix: "Fill in {ways|or}.",
    },
  },
  passing: [
    {
      shows: "a phone number alone",
      given: ({ device }) => device({ contact: { name: "Ines Calloway", phone: "312-555-0117" } }),
    },
    {
      shows: "a form that asks for neither",
      given: ({ device }) => unprinted(device({ contact: { name: "Ines Calloway" } }), ...ways),
    },
  ],
  failing: [
    {
      shows: "a name alone",
      given: ({ device }) => device({ contact: { name: "Ines Calloway" } }),
      wording: "neither",
      says: "There is no way to reach you: nothing is filled in at “E-mail” or “Phone”.",
      fix: "Fill in “E-mail” or “Phone”.",
    },
  ],
  *find(sheet, _catalogue, say) {
    if (isBlank(sheet)) return;
    const printed = ways.filter((place) => sheet.prints[place] !== undefined);
    if (printed.length > 0 && printed.every((place) => isMissing(sheet, place)))
      yield say(
        "neither",
        { ways: printed.map((place) => `“${labelOf(sheet, place)}”`) },
        at(sheet, ...printed),
      );
  },
});

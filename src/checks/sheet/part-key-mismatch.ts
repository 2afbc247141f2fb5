import { isUnchecked, keyReadsRight, partKeyOf, plainKey } from "../../catalogue/part-key.ts";
import { at, defineSheetCheck, labelOf } from "../check.ts";
import { swapped, without } from "../sample.ts";

export const partKeyMismatch = defineSheetCheck({
  id: "part-key-mismatch",
  title: "The part key is not that of the choices",
  severity: "stops",
  waivable: true,
  source: { kind: "house" },
  why: "The key follows from size or layout, finish and lettering. A sound key that says something else means that one of the two is not what is wanted.",
  wordings: {
    other: {
      says: "“{field}” says “{typed}”, but the choices on this sheet give {key}.",
      fix: "Correct the key or the choices, whichever is wrong.",
    },
  },
  passing: [
    { shows: "the key of the choices", given: ({ device, key }) => device({ partKey: key }) },
    {
      shows: "a mistyped key, which has a check of its own",
      given: ({ device, key }) => device({ partKey: swapped(key) }),
    },
    {
      shows: "a key beside a finish not chosen",
      given: ({ device, otherKey }) => without(device({ partKey: otherKey }), "finish"),
    },
  ],
  failing: [
    {
      shows: "the key of another layout",
      given: ({ device, otherKey }) => device({ partKey: otherKey }),
      wording: "other",
      says: "“Part key” says “D2/OAT/INK-Q”, but the choices on this sheet give D4/OAT/INK-V.",
    },
  ],
  *find(sheet, catalogue, say) {
    const typed = sheet.partKey;
    const key = partKeyOf(sheet, catalogue);
    if (typed === undefined || key === undefined || keyReadsRight(typed) !== true) return;
    // Without its check character a key may by chance end in one that fits.
    if (plainKey(typed) !== plainKey(key) && !isUnchecked(typed, key))
      yield say("other", { field: labelOf(sheet, "part-key"), typed, key }, at(sheet, "part-key"));
  },
});

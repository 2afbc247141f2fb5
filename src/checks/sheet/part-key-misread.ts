import { isUnchecked, keyReadsRight, partKeyOf } from "../../catalogue/part-key.ts";
import { at, defineSheetCheck, labelOf } from "../check.ts";
import { swapped, without } from "../sample.ts";

export const partKeyMisread = defineSheetCheck({
  id: "part-key-misread",
  title: "The part key is mistyped",
  severity: "stops",
  waivable: true,
  source: { kind: "standard", name: "ISO/IEC 7064 MOD 37-36" },
  why: "The last character of a part key is worked out from the others. Where it does not fit, one of them is wrong, and it cannot be told which.",
  wordings: {
    misread: {
      says: "“{field}” says “{typed}”, which is mistyped: its last character does not fit the rest.",
      fix: "Write {key}, which your choices give, or clear the field; we work the key out ourselves.",
    },
    unchecked: {
      says: "“{field}” says “{typed}”, without the last character, which is worked out from the others. The rest is what your choices give.",
      fix: "Nothing to do; the whole key is {key}.",
      // A wrong character may belong to other choices. One that is left out says nothing against these.
      severity: "notes",
    },
    alone: {
      says: "“{field}” says “{typed}”, which is mistyped: its last character does not fit the rest.",
      fix: "Copy it again, or clear the field; we work the key out ourselves.",
    },
  },
  passing: [
    { shows: "the right key", given: ({ device, key }) => device({ partKey: key }) },
    {
      shows: "the right key without its separators",
      given: ({ device, key }) => device({ partKey: key.toLowerCase().replace(/[/-]/g, " ") }),
    },
    { shows: "no key", given: ({ device }) => device() },
  ],
  failing: [
    {
      shows: "two letters swapped",
      given: ({ device, key }) => device({ partKey: swapped(key) }),
      wording: "misread",
      says: "“Part key” says “4D/OAT/INK-V”, which is mistyped: its last character does not fit the rest.",
      fix: "Write D4/OAT/INK-V, which your choices give, or clear the field; we work the key out ourselves.",
    },
    {
      shows: "a key of one character",
      given: ({ device }) => device({ partKey: "4" }),
      wording: "misread",
      says: "“Part key” says “4”, which is mistyped: its last character does not fit the rest.",
      fix: "Write D4/OAT/INK-V, which your choices give, or clear the field; we work the key out ourselves.",
    },
    {
      shows: "a wrong key beside a finish not chosen",
      given: ({ device, key }) => without(device({ partKey: swapped(key) }), "finish"),
      wording: "alone",
      says: "“Part key” says “4D/OAT/INK-V”, which is mistyped: its last character does not fit the rest.",
    },

    {
      shows: "the key of the choices without its last character",
      given: ({ device, key }) => device({ partKey: key.slice(0, -2).toLowerCase() }),
      wording: "unchecked",
      says: "“Part key” says “d4/oat/ink”, without the last character, which is worked out from the others. The rest is what your choices give.",
      fix: "Nothing to do; the whole key is D4/OAT/INK-V.",
    },
    {
      shows: "the key of another layout without its last character",
      given: ({ device, otherKey }) => device({ partKey: otherKey.slice(0, -2) }),
      wording: "misread",
      says: "“Part key” says “D2/OAT/INK”, which is mistyped: its last character does not fit the rest.",
      fix: "Write D4/OAT/INK-V, which your choices give, or clear the field; we work the key out ourselves.",
    },
    {
      shows: "a zero for a letter",
      given: ({ device, key }) =>
        device({ partKey: key.replace(/^./, (first) => (first === "0" ? "1" : "0")) }),
      wording: "misread",
      fix: "Write D4/OAT/INK-V, which your choices give, or clear the field; we work the key out ourselves.",
      says: "“Part key” says “04/OAT/INK-V”, which is mistyped: its last character does not fit the rest.",
    },
  ],
  *find(sheet, catalogue, say) {
    const typed = sheet.partKey;
    if (typed === undefined) return;
    const facts = { field: labelOf(sheet, "part-key"), typed };
    const key = partKeyOf(sheet, catalogue);
    if (key !== undefined && isUnchecked(typed, key))
      yield say("unchecked", { ...facts, key }, at(sheet, "part-key"));
    else if (keyReadsRight(typed) === true) return;
    else if (key === undefined) yield say("alone", facts, at(sheet, "part-key"));
    else yield say("misread", { ...facts, key }, at(sheet, "part-key"));
  },
});

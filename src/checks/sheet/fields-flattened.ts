import { at, defineSheetCheck } from "../check.ts";
import { isDoubted } from "../doubted.ts";
import { device } from "../sample.ts";

export const fieldsFlattened = defineSheetCheck({
  id: "fields-flattened",
  title: "Fields that no longer show",
  severity: "notes",
  source: { kind: "house" },
  why: "Some viewers turn the fields into plain drawing when they print, and leave what they held in the file. That is read, since it is what was typed.",
  wordings: {
    flattened: {
      says: "The fields of this sheet no longer show on its page, but the file still holds what was typed, and that was read.",
      fix: "Nothing to do. To change anything, fill in a fresh copy: this one takes no more typing.",
    },
  },
  passing: [{ shows: "a sheet with its fields", given: device() }],
  failing: [
    {
      shows: "a sheet flattened by a viewer",
      given: device({ doubts: [{ what: "flattened" }] }),
      wording: "flattened",
    },
  ],
  *find(sheet, _catalogue, say) {
    if (isDoubted(sheet, "flattened")) yield say("flattened", {}, at(sheet));
  },
});

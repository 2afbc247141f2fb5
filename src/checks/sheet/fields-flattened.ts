import { at, defineSheetCheck } from "../check.ts";

export const fieldsFlattened = defineSheetCheck({
  id: "fields-flattened",
  title: "Fields that no longer show",
  severity: "notes",
  seen: true,
  source: { kind: "house" },
  why: "Some viewers turn the fields into plain drawing when they print, and leave what they held in the file. That is read, since it is what was typed.",
  wordings: {
    flattened: {
      says: "The fields of this sheet no longer show on its page, but the file still holds what was typed, and that was read.",
      fix: "Nothing to do. To change anything, fill in a fresh copy: this one takes no more typing.",
    },
    uncompared: {
      says: "The fields of this sheet no longer show on its page. The file still holds what was typed, but whether the page says the same could not be told.",
      fix: "One of us looks at it. It is quicker to fill in a fresh copy of the sheet and send that.",
      severity: "asks",
      verdict: "person",
    },
  },
  passing: [{ shows: "a sheet with its fields", given: ({ device }) => device() }],
  failing: [
    {
      shows: "a sheet flattened by a viewer",
      given: ({ device }) => device({ doubts: [{ what: "flattened", seen: { page: 1 } }] }),
      wording: "flattened",
    },
    {
      shows: "one on a form of which there is no blank to compare with",
      given: ({ device }) => device({ doubts: [{ what: "flattened" }] }),
      wording: "uncompared",
    },
  ],
  *find(sheet, _catalogue, say) {
    const flattened = sheet.doubts.find(({ what }) => what === "flattened");
    if (flattened === undefined) return;
    yield say(flattened.seen === undefined ? "uncompared" : "flattened", {}, at(sheet));
  },
});

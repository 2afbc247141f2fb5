import { at, defineSheetCheck } from "../check.ts";

export const outdatedEdition = defineSheetCheck({
  id: "outdated-edition",
  title: "The sheet is of an edition no longer accepted",
  severity: "stops",
  waivable: true,
  source: { kind: "house" },
  why: "An old edition offers what is no longer made and does not ask for all that is needed now.",
  wordings: {
    outdated: {
      says: "This is “{edition}”, which is no longer accepted.",
      fix: "Fill in “{use}” and send that instead.",
    },
    leaving: {
      says: "This is “{edition}”, which is accepted until {until} only.",
      fix: "Nothing to do for this sheet. For the next one use “{use}”.",
      severity: "notes",
    },
  },
  passing: [{ shows: "the edition in use", given: ({ device }) => device() }],
  failing: [
    {
      shows: "last year's edition",
      given: ({ device }) =>
        device({
          edition: {
            name: "device-25a",
            title: "Device sheet, edition 25a",
            replacedBy: "Device sheet, edition 26c",
          },
        }),
      wording: "outdated",
      says: "This is “Device sheet, edition 25a”, which is no longer accepted.",
      fix: "Fill in “Device sheet, edition 26c” and send that instead.",
    },
    {
      shows: "last year's edition, while it is still accepted",
      given: ({ device }) =>
        device({
          edition: {
            name: "device-25a",
            title: "Device sheet, edition 25a",
            accepted: { until: "2026-12-31", use: "Device sheet, edition 26c" },
          },
        }),
      wording: "leaving",
      says: "This is “Device sheet, edition 25a”, which is accepted until 2026-12-31 only.",
      fix: "Nothing to do for this sheet. For the next one use “Device sheet, edition 26c”.",
    },
  ],
  *find(sheet, _catalogue, say) {
    const { title: edition, replacedBy, accepted } = sheet.edition;
    if (replacedBy !== undefined) yield say("outdated", { edition, use: replacedBy }, at(sheet));
    else if (accepted !== undefined) yield say("leaving", { edition, ...accepted }, at(sheet));
  },
});

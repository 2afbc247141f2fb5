import { at, defineSheetCheck } from "../check.ts";
import { device } from "../sample.ts";

export const outdatedEdition = defineSheetCheck({
  id: "outdated-edition",
  title: "The sheet is of an edition no longer accepted",
  severity: "stops",
  source: { kind: "house" },
  why: "An old edition offers what is no longer made and does not ask for all that is needed now.",
  wordings: {
    outdated: {
      says: "This sheet is edition {edition}, which is no longer accepted.",
      fix: "Fill in edition {use} and send that instead.",
    },
  },
  passing: [{ shows: "the edition in use", given: device() }],
  failing: [
    {
      shows: "last year's edition",
      given: device({ edition: { name: "device-25a", replacedBy: "device-26b" } }),
      wording: "outdated",
    },
  ],
  *find(sheet, _catalogue, say) {
    const { name: edition, replacedBy: use } = sheet.edition;
    if (use !== undefined) yield say("outdated", { edition, use }, at(sheet));
  },
});

import { defineFileCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

export const sheetLocked = defineFileCheck({
  id: "sheet-locked",
  title: "A PDF that opens only with a password",
  severity: "stops",
  source: { kind: "house" },
  why: "What cannot be opened cannot be checked, and a password does not belong in a letter.",
  wordings: {
    refused: {
      says: "This PDF opens only with a password.",
      fix: "Save it without a password and send it again.",
    },
  },
  passing: [{ shows: "a sheet", given: fileAs("sheet") }],
  failing: [{ shows: "a locked PDF", given: fileAs("locked"), wording: "refused" }],
  *find({ id, kind }, _, say) {
    if (kind === "locked") yield say("refused", {}, [{ file: id }]);
  },
});

import { defineFileCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

export const archiveLocked = defineFileCheck({
  id: "archive-locked",
  title: "An archive that cannot be unpacked",
  severity: "stops",
  source: { kind: "house" },
  why: "What cannot be unpacked cannot be checked, and a password does not belong in a letter.",
  wordings: {
    refused: {
      says: "This archive opens only with a password.",
      fix: "Attach the sheets themselves, or pack them without a password.",
    },
  },
  passing: [{ shows: "a sheet", given: fileAs("sheet") }],
  failing: [{ shows: "sheets packed with a password", given: fileAs("archive-locked"), wording: "refused" }],
  *find({ id, kind }, _, say) {
    if (kind === "archive-locked") yield say("refused", {}, [{ file: id }]);
  },
});

import { defineFileCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

export const attachmentUnreadable = defineFileCheck({
  id: "attachment-unreadable",
  title: "An attachment that is no PDF",
  severity: "notes",
  source: { kind: "house" },
  why: "Only filled sheets are read. Pictures and documents beside them are kept with the letter, but nothing in them reaches the order.",
  wordings: {
    refused: {
      says: "This file is not a PDF, so the program did not read it.",
      fix: "Nothing in it is taken into an order; what matters must stand on the sheets.",
    },
  },
  passing: [{ shows: "a sheet", given: fileAs("sheet") }],
  failing: [{ shows: "a photograph", given: fileAs("other"), wording: "refused" }],
  *find({ id, kind }, _, say) {
    if (kind === "other") yield say("refused", {}, [{ file: id }]);
  },
});

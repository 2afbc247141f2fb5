import { defineFileCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

export const attachmentTooLarge = defineFileCheck({
  id: "attachment-too-large",
  title: "A file that is too large",
  severity: "stops",
  source: { kind: "house" },
  why: "A filled sheet is small. A file far beyond that holds pictures or other things, and opening it would hold up everybody else.",
  wordings: {
    refused: {
      says: "This file is too large, or one too many for a single letter, and was not read.",
      fix: "Send sheets as they were saved: a filled sheet takes less than one megabyte. Spread very many over several letters; leave out what is no sheet.",
    },
  },
  passing: [{ shows: "a sheet", given: fileAs("sheet") }],
  failing: [{ shows: "a video of the site", given: fileAs("too-large"), wording: "refused" }],
  *find({ id, kind }, _, say) {
    if (kind === "too-large") yield say("refused", {}, [{ file: id }]);
  },
});

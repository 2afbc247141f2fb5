import { defineFileCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

export const attachmentUnreadable = defineFileCheck({
  id: "attachment-unreadable",
  title: "An attachment that was not read",
  severity: "notes",
  source: { kind: "house" },
  why: "Only filled sheets are read. What else comes is kept with the letter, but nothing in it reaches the order.",
  wordings: {
    refused: {
      says: "This file is not a PDF, so the program did not read it.",
      fix: "Nothing in it is taken into an order; what matters must stand on the sheets.",
    },
    unsafe: {
      says: "This file could not be opened safely.",
      fix: "Fill in a fresh copy of the sheet, save it, and send that. If this is no sheet, leave it out.",
      severity: "stops",
    },
    late: {
      says: "The files of this letter took so long to open that this one was not read.",
      fix: "Send it again in a letter of its own.",
      severity: "stops",
    },
  },
  passing: [
    { shows: "a sheet", given: fileAs("sheet") },
    { shows: "an archive, whose files stand beside it", given: fileAs("archive") },
  ],
  failing: [
    { shows: "a drawing of the building", given: fileAs("other"), wording: "refused" },
    { shows: "a file that the program choked on", given: fileAs("unsafe"), wording: "unsafe" },
    { shows: "a file behind many that took long", given: fileAs("late"), wording: "late" },
  ],
  *find({ id, kind }, _, say) {
    if (kind === "other") yield say("refused", {}, [{ file: id }]);
    if (kind === "late") yield say("late", {}, [{ file: id }]);
    if (kind === "unsafe") yield say("unsafe", {}, [{ file: id }]);
  },
});

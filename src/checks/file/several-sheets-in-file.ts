import { defineFileCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

export const severalSheetsInFile = defineFileCheck({
  id: "several-sheets-in-file",
  title: "Several sheets in one file",
  severity: "stops",
  source: { kind: "house" },
  why: "Programs that put PDF files together rename the fields of one sheet, join them with those of another, or leave them out. What stood on which sheet can then no longer be told for certain.",
  wordings: {
    refused: {
      says: "This file holds {sheets} sheets put together, so none of them was read.",
      fix: "Send each as a file of its own, as you saved it after filling it in: print nothing and combine nothing, use “Save As”.",
    },
    copy: {
      says: "This file holds the same {sheets} sheets as {files}, beside it. Each counts once.",
      fix: "Nothing to do.",
      severity: "notes",
    },
  },
  passing: [{ shows: "a sheet", given: fileAs("sheet") }],
  failing: [
    {
      shows: "a plate sheet and its two device sheets, combined",
      given: { ...fileAs("several-sheets"), sheets: 3 },
      wording: "refused",
      says: "This file holds 3 sheets put together, so none of them was read.",
    },
    {
      shows: "two sheets, combined, beside the same sheets",
      given: { ...fileAs("several-sheets"), sheets: 2, copyOf: ["S-104.pdf", "S-110.pdf"] },
      wording: "copy",
      says: "This file holds the same 2 sheets as S-104.pdf and S-110.pdf, beside it. Each counts once.",
    },
  ],
  *find({ id, kind, sheets = 2, copyOf = [] }, _, say) {
    if (kind !== "several-sheets") return;
    if (copyOf.length > 0) yield say("copy", { sheets: copyOf.length, files: copyOf }, [{ file: id }]);
    else yield say("refused", { sheets }, [{ file: id }]);
  },
});

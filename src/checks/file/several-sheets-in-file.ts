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
  },
  passing: [{ shows: "a sheet", given: fileAs("sheet") }],
  failing: [
    {
      shows: "a plate sheet and its two device sheets, combined",
      given: { ...fileAs("several-sheets"), sheets: 3 },
      wording: "refused",
      says: "This file holds 3 sheets put together, so none of them was read.",
    },
  ],
  *find({ id, kind, sheets = 2 }, _, say) {
    if (kind === "several-sheets") yield say("refused", { sheets }, [{ file: id }]);
  },
});

import { defineFileCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

export const sheetDamaged = defineFileCheck({
  id: "sheet-damaged",
  title: "A damaged PDF",
  severity: "stops",
  source: { kind: "house" },
  why: "A file cut short on its way can show an earlier state of the sheet, so nothing in it is trusted.",
  wordings: {
    refused: {
      says: "This PDF is damaged or incomplete and cannot be read.",
      fix: "Open the original on your computer, save it under a new name, and send that. If it does not open, fill in a new sheet.",
    },
  },
  passing: [{ shows: "a sheet", given: fileAs("sheet") }],
  failing: [{ shows: "a PDF cut short", given: fileAs("damaged"), wording: "refused" }],
  *find({ id, kind }, _, say) {
    if (kind === "damaged") yield say("refused", {}, [{ file: id }]);
  },
});

import { defineFileCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

export const printedSheet = defineFileCheck({
  id: "printed-sheet",
  title: "A sheet that was printed",
  severity: "stops",
  source: { kind: "common practice" },
  why: "A printed or flattened sheet is a picture of the typing. Copied off by eye or by machine, a legend could come out wrong, and it is cut exactly as it is read.",
  wordings: {
    refused: {
      says: "This sheet was printed to PDF or flattened: its fields are gone, and what they held cannot be read.",
      fix: "Fill in the sheet on screen and save it, but not with “Print” or “Save as PDF” of the print dialog; then attach the saved file.",
    },
  },
  passing: [{ shows: "a sheet", given: fileAs("sheet") }],
  failing: [{ shows: "a sheet printed to PDF", given: fileAs("printed"), wording: "refused" }],
  *find({ id, kind }, _, say) {
    if (kind === "printed") yield say("refused", {}, [{ file: id }]);
  },
});

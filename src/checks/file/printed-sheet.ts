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
    copy: {
      says: "This is a print of {files}, beside it. What is cut stands in the fields of the sheet, not on the print.",
      fix: "A person looks at the print, in case something was written on it.",
      severity: "asks",
      verdict: "person",
    },
  },
  passing: [{ shows: "a sheet", given: fileAs("sheet") }],
  failing: [
    { shows: "a sheet printed to PDF", given: fileAs("printed"), wording: "refused" },
    {
      shows: "a print beside its sheet",
      given: { ...fileAs("printed"), copyOf: ["S-110.pdf"] },
      wording: "copy",
      says: "This is a print of S-110.pdf, beside it. What is cut stands in the fields of the sheet, not on the print.",
    },
  ],
  *find({ id, kind, copyOf = [] }, _, say) {
    if (kind !== "printed") return;
    if (copyOf.length > 0) yield say("copy", { files: copyOf }, [{ file: id }]);
    else yield say("refused", {}, [{ file: id }]);
  },
});

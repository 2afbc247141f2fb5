import { defineFileCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

export const scannedSheet = defineFileCheck({
  id: "scanned-sheet",
  title: "A scan",
  severity: "stops",
  source: { kind: "common practice" },
  why: "What is engraved must be typed. Copied off a picture by eye or by machine, a legend could come out wrong, and it is cut exactly as it is read.",
  wordings: {
    refused: {
      says: "The pages of this PDF are pictures of paper, and nothing on them can be read as typed.",
      fix: "Fill in the sheet on screen, save it, and attach the saved file. If this is no sheet, leave it out.",
    },
  },
  passing: [{ shows: "a sheet", given: fileAs("sheet") }],
  failing: [{ shows: "a sheet that went through a scanner", given: fileAs("scanned"), wording: "refused" }],
  *find({ id, kind }, _, say) {
    if (kind === "scanned") yield say("refused", {}, [{ file: id }]);
  },
});

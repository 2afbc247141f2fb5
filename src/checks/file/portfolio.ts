import { defineFileCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

export const portfolio = defineFileCheck({
  id: "portfolio",
  title: "A PDF that is a folder of files",
  severity: "stops",
  source: { kind: "house" },
  why: "A portfolio holds other files, and what is in it cannot be told apart as it could be beside the letter.",
  wordings: {
    refused: {
      says: "This PDF is a portfolio, a folder of other files, and they were not read.",
      fix: "Take the sheets out of it and attach each as a file of its own.",
    },
  },
  passing: [{ shows: "a sheet", given: fileAs("sheet") }],
  failing: [{ shows: "sheets bundled in a portfolio", given: fileAs("portfolio"), wording: "refused" }],
  *find({ id, kind }, _, say) {
    if (kind === "portfolio") yield say("refused", {}, [{ file: id }]);
  },
});

import { defineFileCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

export const officeDocument = defineFileCheck({
  id: "office-document",
  title: "An office document",
  severity: "asks",
  verdict: "person",
  source: { kind: "house" },
  why: "Lists and letters often come beside the sheets. What they say may be about the order, and the program reads the words of no table and of no older format.",
  wordings: {
    refused: {
      says: "This is an office document, and the program cannot read it.",
      fix: "A person opens it. What matters must stand on the sheets, or in a station list of ours.",
    },
  },
  passing: [{ shows: "a sheet", given: fileAs("sheet") }],
  failing: [
    { shows: "a list of stations as a spreadsheet", given: fileAs("office-document"), wording: "refused" },
  ],
  *find({ id, kind }, _, say) {
    if (kind === "office-document") yield say("refused", {}, [{ file: id }]);
  },
});

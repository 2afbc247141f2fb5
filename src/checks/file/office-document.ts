import { defineFileCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

export const officeDocument = defineFileCheck({
  id: "office-document",
  title: "An office document",
  severity: "notes",
  source: { kind: "house" },
  why: "Lists and letters often come beside the sheets. What they say is not taken into the order, and the sender should know it.",
  wordings: {
    refused: {
      says: "This is an office document, so the program did not read it.",
      fix: "Nothing in it is taken into an order; what matters must stand on the sheets, or in a station list of ours.",
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

import { defineFileCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

export const notAForm = defineFileCheck({
  id: "not-a-form",
  title: "A PDF that is not a sheet",
  severity: "notes",
  source: { kind: "house" },
  why: "Drawings and purchase orders often come beside the sheets. What they say is not taken into the order, and the sender should know it. A person gets what a note asks for, and what a paper says against a station.",
  wordings: {
    refused: {
      says: "This PDF has no fields to fill, so it is no sheet.",
      fix: "Nothing in it is taken into an order; what matters must stand on the sheets.",
    },
  },
  passing: [{ shows: "a sheet", given: fileAs("sheet") }],
  failing: [{ shows: "a drawing", given: fileAs("no-form"), wording: "refused" }],
  *find({ id, kind }, _, say) {
    if (kind === "no-form") yield say("refused", {}, [{ file: id }]);
  },
});

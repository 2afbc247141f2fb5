import { defineFileCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

export const savedBlank = defineFileCheck({
  id: "saved-blank",
  title: "A sheet that was saved empty",
  severity: "stops",
  source: { kind: "common practice" },
  why: "Of a sheet filled in within a browser, the download button may save the empty original, and nothing on the way shows it.",
  wordings: {
    refused: {
      says: "This sheet arrived empty: not one of its fields is filled in. The download button of a browser may have saved the empty original.",
      fix: "Open the sheet in a PDF program, fill it in and save it there; a browser may ask whether to save with your changes: yes. Do not use “Save as PDF” of the print dialog: that destroys the fields. Open the saved file again, see that it shows what you typed, and attach that one.",
    },
    spare: {
      says: "This plate sheet is blank. No plate of your order is missing, so it was put aside.",
      fix: "Nothing to do. To order one more plate, fill it in and send it.",
      severity: "notes",
    },
  },
  passing: [{ shows: "a sheet", given: fileAs("sheet") }],
  failing: [
    { shows: "the blank form itself", given: fileAs("saved-blank"), wording: "refused" },
    {
      shows: "a plate's blank beside an order that lacks nothing",
      given: { ...fileAs("saved-blank"), blank: "plate", spare: true },
      wording: "spare",
    },
  ],
  *find({ id, kind, spare }, _, say) {
    if (kind === "saved-blank") yield say(spare === true ? "spare" : "refused", {}, [{ file: id }]);
  },
});

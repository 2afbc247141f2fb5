import { defineFileCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

export const textBeside = defineFileCheck({
  id: "text-beside",
  title: "A text that is attached",
  severity: "notes",
  source: { kind: "house" },
  why: "Remarks and calendar entries come as files as well. Their words are read as the letter's own are, and a person gets what asks for something; but they change no sheet.",
  wordings: {
    read: {
      says: "The program read this text as it reads a letter.",
      fix: "Nothing in it is taken into an order; what matters must stand on the sheets.",
    },
  },
  passing: [{ shows: "a sheet", given: fileAs("sheet") }],
  failing: [{ shows: "a text", given: fileAs("text"), wording: "read" }],
  *find({ id, kind }, _, say) {
    if (kind === "text") yield say("read", {}, [{ file: id }]);
  },
});

import { defineFileCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

export const recording = defineFileCheck({
  id: "recording",
  title: "A recording",
  severity: "asks",
  verdict: "person",
  source: { kind: "house" },
  why: "Whoever sends a spoken message or a film beside the sheets says something with it. The program cannot hear it, and what it asks for would reach nobody.",
  wordings: {
    unheard: {
      says: "This file is a recording. The program cannot hear or see what is in it.",
      fix: "A person plays it. What a sheet has a field for, write on the sheet.",
    },
  },
  passing: [
    { shows: "a sheet", given: fileAs("sheet") },
    { shows: "a picture, which has no voice", given: fileAs("picture") },
  ],
  failing: [{ shows: "a spoken message", given: fileAs("recording"), wording: "unheard" }],
  *find({ id, kind }, _, say) {
    if (kind === "recording") yield say("unheard", {}, [{ file: id }]);
  },
});

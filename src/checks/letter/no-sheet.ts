import { defineLetterCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

export const noSheet = defineLetterCheck({
  id: "no-sheet",
  title: "A letter without an order sheet",
  severity: "asks",
  verdict: "person",
  source: { kind: "house" },
  why: "Without a sheet there is nothing to check. The letter may be a question or an order in plain words; a person reads it.",
  wordings: {
    nothing: {
      says: "Nothing is attached to this letter.",
      fix: "To order, attach the filled sheets as PDF files. A person will read what you wrote.",
    },
    others: {
      says: "No order sheet is among the attached files: {files}.",
      fix: "To order, attach the filled sheets as PDF files. A person will look at what you sent.",
    },
  },
  passing: [
    { shows: "a sheet", given: { files: [fileAs("sheet")], orders: [], held: false } },
    {
      shows: "a file that is refused already",
      given: { files: [fileAs("locked"), fileAs("other")], orders: [], held: false },
    },
  ],
  failing: [
    { shows: "no attachment", given: { files: [], orders: [], held: false }, wording: "nothing" },
    {
      shows: "a drawing and a photograph",
      given: { files: [fileAs("no-form"), fileAs("other")], orders: [], held: false },
      wording: "others",
    },
  ],
  *find({ files }, _, say) {
    // A file that was meant as a sheet says by itself how to send it right.
    if (files.some(({ kind }) => kind !== "no-form" && kind !== "other")) return;
    const spots = files.map(({ id }) => ({ file: id }));
    if (files.length === 0) yield say("nothing", {}, []);
    else yield say("others", { files: files.map(({ file }) => file) }, spots);
  },
});

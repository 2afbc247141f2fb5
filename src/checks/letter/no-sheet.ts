import { defineLetterCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

const bare = { files: [], orders: [], held: false, reply: false } as const;

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
      says: "No order sheet is among the attached files.",
      fix: "To order, attach the filled sheets as PDF files. A person will look at what you sent.",
    },
    reply: {
      says: "Thank you. A person reads your reply.",
      fix: "You will hear from us.",
    },
  },
  passing: [
    { shows: "a sheet", given: { ...bare, files: [fileAs("sheet")] } },
    {
      shows: "a file that is refused already",
      given: { ...bare, files: [fileAs("locked"), fileAs("other")] },
    },
  ],
  failing: [
    { shows: "no attachment", given: bare, wording: "nothing" },
    {
      shows: "a drawing and a photograph",
      given: { ...bare, files: [fileAs("no-form"), fileAs("other")] },
      wording: "others",
    },
    { shows: "an answer to our question", given: { ...bare, reply: true }, wording: "reply" },
  ],
  *find({ files, reply }, _, say) {
    // A file that was meant as a sheet says by itself how to send it right.
    if (files.some(({ kind }) => kind !== "no-form" && kind !== "other")) return;
    yield say(reply ? "reply" : files.length === 0 ? "nothing" : "others", {}, []);
  },
});

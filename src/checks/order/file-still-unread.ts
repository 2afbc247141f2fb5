import { defineOrderCheck } from "../check.ts";
import { subject } from "../sample.ts";

export const fileStillUnread = defineOrderCheck({
  id: "file-still-unread",
  title: "A file of an earlier letter has not come as a sheet yet",
  severity: "asks",
  source: { kind: "house" },
  why: "A scan or a locked file may hold a sheet that the order needs. Without it an order could look complete that is not.",
  wordings: {
    open: {
      says: "{file}, sent before, could not be read, and it is not clear whether its sheet has come since.",
      fix: "Send it as a filled-in sheet under that name; or reply that nothing of it is missing.",
    },
  },
  passing: [
    { shows: "an order of sheets alone", given: ({ completeOrder }) => subject(completeOrder()) },
    {
      shows: "words that a person reads",
      given: ({ completeOrder }) => ({
        ...subject(completeOrder()),
        carried: [{ letter: "1", what: "words", text: "Call me." }],
      }),
    },
  ],
  failing: [
    {
      shows: "a scan",
      given: ({ completeOrder }) => ({
        ...subject(completeOrder()),
        carried: [{ letter: "1", what: "file", text: "scan.pdf" }],
      }),
      wording: "open",
      says: "scan.pdf, sent before, could not be read, and it is not clear whether its sheet has come since.",
    },
  ],
  *find({ carried = [] }, _, say) {
    for (const { what, text } of carried) if (what === "file") yield say("open", { file: text }, []);
  },
});

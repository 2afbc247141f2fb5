import type { FileKind, ReadFile } from "../../trade/attachment.ts";
import { defineLetterCheck, type LetterSubject } from "../check.ts";
import { fileAs, subject } from "../sample.ts";

const bare = { files: [], orders: [], held: false, reply: false, links: [] } as const;

/** What comes beside sheets, and is none. */
const beside: readonly FileKind[] = ["no-form", "recording", "office-document", "text", "archive", "other"];

function attachedTo({ files }: LetterSubject): readonly ReadFile[] {
  return files.filter(({ kind }) => kind !== "decoration");
}

/** Whether a letter brings no sheet, nor anything that was meant as one. */
export function hasNoSheet(letter: LetterSubject): boolean {
  if (letter.withdraws === true) return false;
  // A letter of words about orders that we know is told how they stand.
  if (letter.orders.length > 0 && attachedTo(letter).length === 0) return false;
  // A file that was meant as a sheet says by itself how to send it right, and so does a link.
  return attachedTo(letter).every(({ kind }) => beside.includes(kind)) && letter.links.length === 0;
}

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
    unsafe: {
      says: "This letter could not be opened safely, so nothing in it was read.",
      fix: "Send the sheets again, attached to a new letter as PDF files. A person will look at this one.",
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
    {
      shows: "a reply in words about an order that we know",
      given: ({ completeOrder }) => ({ ...bare, reply: true, orders: [subject(completeOrder()).order] }),
    },
    {
      shows: "a reply that withdraws all that an order had",
      given: { ...bare, reply: true, withdraws: true },
    },
    {
      shows: "a link to files",
      given: { ...bare, links: ["https://share.brightwire.example/f/8c1b2d90a7"] },
    },
  ],
  failing: [
    { shows: "no attachment", given: bare, wording: "nothing" },
    {
      shows: "a drawing and a photograph",
      given: { ...bare, files: [fileAs("no-form"), fileAs("other")] },
      wording: "others",
    },
    { shows: "a logo", given: { ...bare, files: [fileAs("decoration")] }, wording: "nothing" },
    { shows: "a letter that opening does harm", given: { ...bare, unsafe: true }, wording: "unsafe" },
    { shows: "an answer to our question", given: { ...bare, reply: true }, wording: "reply" },
  ],
  *find(letter, _, say) {
    if (!hasNoSheet(letter)) return;
    const { reply, unsafe = false } = letter;
    const attached = attachedTo(letter);
    yield say(unsafe ? "unsafe" : reply ? "reply" : attached.length === 0 ? "nothing" : "others", {}, []);
  },
});

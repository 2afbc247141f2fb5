import { defineLetterCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

const bare = { files: [], orders: [], held: false, reply: false, links: [] } as const;
const link = "https://share.brightwire.example/f/8c1b2d90a7";

export const sharedLink = defineLetterCheck({
  id: "shared-link",
  title: "A link instead of an attachment",
  severity: "asks",
  verdict: "person",
  source: { kind: "house" },
  why: "What lies behind a link can change or vanish after it was checked, and opening strangers' links is not safe. The record keeps what was attached.",
  wordings: {
    instead: {
      says: "This letter links to files kept elsewhere. The program opens no links, so it has read none of them.",
      fix: "Attach the filled sheets themselves as PDF files. A person will look at your letter.",
    },
    beside: {
      says: "This letter also links to files kept elsewhere. The program opens no links, so it has read none of them.",
      fix: "Attach what is a sheet. Nothing else behind the links is taken into an order.",
      severity: "notes",
      verdict: "pass",
    },
  },
  passing: [{ shows: "sheets attached", given: { ...bare, files: [fileAs("sheet")] } }],
  failing: [
    { shows: "a link and nothing else", given: { ...bare, links: [link] }, wording: "instead" },
    {
      shows: "a link beside a sheet",
      given: { ...bare, files: [fileAs("sheet")], links: [link] },
      wording: "beside",
    },
  ],
  *find({ files, links }, _, say) {
    if (links.length === 0) return;
    yield say(files.some(({ kind }) => kind === "sheet") ? "beside" : "instead", {}, []);
  },
});

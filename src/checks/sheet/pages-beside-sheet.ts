import { at, defineSheetCheck } from "../check.ts";

export const pagesBesideSheet = defineSheetCheck({
  id: "pages-beside-sheet",
  title: "More pages than the sheet has",
  severity: "notes",
  seen: true,
  source: { kind: "house" },
  why: "A scanned sheet or a drawing in the same file is easily missed. What stands on such a page is not taken into the order, and the sender should know it.",
  wordings: {
    words: {
      says: "{pages} of this file holds no field of the sheet, so the program did not read it.",
      fix: "Nothing there is taken into the order; what matters must stand on the sheet.",
    },
    pictures: {
      says: "{pages} of this file is a picture or a drawing, and nothing on it was read.",
      fix: "If it is a sheet, fill that in on screen and send it as a file of its own. If not, reply that it may be left aside.",
      severity: "asks",
    },
    beyond: {
      says: "{pages} of this file was not looked at: it has too many pages for a sheet.",
      fix: "Send the sheet as a file of its own. Or reply that no other sheet is in this file.",
      severity: "asks",
    },
  },
  passing: [{ shows: "a sheet with no page beside it", given: ({ device }) => device() }],
  failing: [
    {
      shows: "terms of business behind the sheet",
      given: ({ device }) => device({ doubts: [{ what: "pages-beside", pages: [2] }] }),
      wording: "words",
      says: "Page 2 of this file holds no field of the sheet, so the program did not read it.",
    },
    {
      shows: "two scanned pages behind the sheet",
      given: ({ device }) => device({ doubts: [{ what: "pictures-beside", pages: [2, 3] }] }),
      wording: "pictures",
      says: "Each of pages 2 and 3 of this file is a picture or a drawing, and nothing on it was read.",
    },
    {
      shows: "a sheet in front of a manual",
      given: ({ device }) => device({ doubts: [{ what: "pages-beyond", pages: [21, 80] }] }),
      wording: "beyond",
      says: "Each of pages 21 to 80 of this file was not looked at: it has too many pages for a sheet.",
    },
  ],
  *find(sheet, _, say) {
    for (const { what, pages = [] } of sheet.doubts) {
      if (what === "pages-beside") yield say("words", { pages: pagesIn(pages, "and") }, at(sheet));
      if (what === "pictures-beside") yield say("pictures", { pages: pagesIn(pages, "and") }, at(sheet));
      if (what === "pages-beyond") yield say("beyond", { pages: pagesIn(pages, "to") }, at(sheet));
    }
  },
});

/** "Page 2", "Each of pages 2 and 3". */
function pagesIn(pages: readonly number[], last: "and" | "to"): string {
  const numbers = [...new Set(pages)];
  if (numbers.length < 2) return `Page ${numbers.join("")}`;
  return `Each of pages ${numbers.slice(0, -1).join(", ")} ${last} ${numbers.at(-1)}`;
}

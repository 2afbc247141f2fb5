import { defineLetterCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

const bare = { files: [], orders: [], held: false, reply: false, links: [] } as const;

export const photographedSheet = defineLetterCheck({
  id: "photographed-sheet",
  title: "A picture instead of a sheet, or beside one",
  severity: "stops",
  source: { kind: "common practice" },
  why: "Sheets are photographed and sent as pictures. Copied off by eye or by machine, a legend could come out wrong, and it is cut exactly as it is read. Beside sheets a picture may show a mark or a wish that stands on none of them.",
  wordings: {
    alone: {
      says: "This is a picture, and nothing on it can be read as typed.",
      fix: "If it shows a sheet, fill that sheet in on screen, save it, and attach the saved file.",
    },
    beside: {
      says: "This is a picture, and the program reads none.",
      fix: "A person looks at it before anything is cut. If it shows one more sheet, fill that sheet in on screen, save it, and attach the saved file.",
      severity: "asks",
      verdict: "person",
    },
    small: {
      says: "This is a small picture and was not read.",
      fix: "If it shows anything of the order, write that on a sheet, and send the sheet.",
      severity: "notes",
    },
  },
  passing: [
    { shows: "a sheet", given: { ...bare, files: [fileAs("sheet")] } },
    { shows: "the logo under a letter", given: { ...bare, files: [fileAs("decoration")] } },
  ],
  failing: [
    { shows: "a photograph alone", given: { ...bare, files: [fileAs("picture")] }, wording: "alone" },
    {
      shows: "a photograph of the site beside a sheet",
      given: { ...bare, files: [fileAs("sheet"), fileAs("picture")] },
      wording: "beside",
    },
    {
      shows: "a logo that came as a file",
      given: { ...bare, files: [fileAs("sheet"), fileAs("small-picture")] },
      wording: "small",
    },
  ],
  *find({ files }, _, say) {
    const isBeside = files.some(({ kind }) => kind === "sheet");
    for (const { id, kind } of files) {
      if (kind === "picture") yield say(isBeside ? "beside" : "alone", {}, [{ file: id }]);
      if (kind === "small-picture") yield say(isBeside ? "small" : "alone", {}, [{ file: id }]);
    }
  },
});

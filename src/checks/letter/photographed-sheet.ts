import { defineLetterCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

const bare = { files: [], orders: [], held: false, reply: false, links: [] } as const;

export const photographedSheet = defineLetterCheck({
  id: "photographed-sheet",
  title: "A picture instead of a sheet",
  severity: "stops",
  source: { kind: "common practice" },
  why: "Sheets are photographed and sent as pictures. Copied off by eye or by machine, a legend could come out wrong, and it is cut exactly as it is read.",
  wordings: {
    alone: {
      says: "This is a picture, and nothing on it can be read as typed.",
      fix: "If it shows a sheet, fill that sheet in on screen, save it, and attach the saved file.",
    },
    beside: {
      says: "This is a picture and was not read.",
      fix: "If it shows one more sheet, fill that sheet in on screen, save it, and attach the saved file.",
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
  ],
  *find({ files }, _, say) {
    const wording = files.some(({ kind }) => kind === "sheet") ? "beside" : "alone";
    for (const { id, kind } of files) if (kind === "picture") yield say(wording, {}, [{ file: id }]);
  },
});
